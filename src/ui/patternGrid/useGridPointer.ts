import { type PointerEvent, type RefObject, useRef } from 'react';
import type { PatternId } from '../../core/ids.ts';
import type { Project } from '../../core/project.ts';
import { type Hit, type Pattern, patternSteps } from '../../core/rhythm/pattern.ts';
import type { Source, Stroke } from '../../core/rhythm/sources.ts';
import type { Ticks } from '../../core/time/ticks.ts';
import type { HandName } from '../../core/voicing/voicing.ts';
import { moveHit, type Scope, setHitLength } from '../../state/edits/hits.ts';
import { useParts } from '../parts.ts';
import { type Place, strokesOnStep } from './gridPlace.ts';
import {
  END_REACH,
  grippedBy,
  hitUnder,
  lengthDrawnTo,
  nearestColumn,
  type Spot,
  spotAt,
} from './gridSpot.ts';
import { hitAdded, strokePulled } from './hitChanges.ts';
import { hidePulled, showPulled } from './pulledStroke.ts';
import { type RowLayout, rowKey } from './rowLayout.ts';
import type { System } from './systemLayout.ts';

/** What the pointer is doing since it went down; `base` is the project before it. */
type Gesture = { readonly id: string; readonly base: Project } & (
  | { readonly kind: 'add'; readonly hand: HandName; readonly column: number }
  | { readonly kind: 'move'; readonly hand: HandName; readonly at: Ticks; readonly grip: number }
  | { readonly kind: 'lengthen'; readonly hand: HandName; readonly at: Ticks }
  | { readonly kind: 'pull'; readonly source: Source; readonly stroke: Stroke }
);

/** What the pointer needs to know of the grid it moves over. */
export type PointerGrid = {
  readonly patternId: PatternId;
  readonly scope: Scope;
  readonly shown: Pattern;
  readonly systems: readonly System[];
  readonly layout: RowLayout;
  readonly grid: RefObject<HTMLDivElement | null>;
  readonly goTo: (place: Place) => void;
};

/** A number for each gesture, so that its edits become one entry of the history. */
function useGestureIds(): () => string {
  const count = useRef(0);
  return () => {
    count.current++;
    return `grid gesture ${count.current}`;
  };
}

/**
 * Mouse, pen and touch on the grid: an empty place takes a hit, which can be drawn out at once; a
 * hit is moved by its body and drawn out by its end; a stroke of the band is pulled into a hand.
 * A finger that turns out to scroll changes nothing.
 */
export function useGridPointer(known: PointerGrid) {
  const { store } = useParts();
  const { patternId, scope, shown, systems, layout, grid, goTo } = known;
  const gesture = useRef<Gesture>(undefined);
  const nextId = useGestureIds();
  const steps = patternSteps(shown);

  function spotOf(event: PointerEvent): Spot | undefined {
    const corners = [...(grid.current?.querySelectorAll('[data-system]') ?? [])].map((element) =>
      element.getBoundingClientRect(),
    );
    return spotAt(systems, corners, layout, { x: event.clientX, y: event.clientY });
  }

  /** A change counted from the project before the gesture, so that what is only passed over stays. */
  function editFrom(now: Gesture, edit: (project: Project) => Project, label: string): void {
    const next = edit(now.base);
    store.edit(() => next, { label, gesture: now.id });
  }

  /** Adds the hit, which the same gesture can then draw out. */
  function add(now: Extract<Gesture, { kind: 'add' }>): void {
    const { id, hand, column } = now;
    const change = hitAdded({ patternId, scope, shown, hand, column });
    if (!change) return;
    editFrom(now, change.edit, change.label);
    gesture.current = {
      id,
      base: store.snapshot(),
      kind: 'lengthen',
      hand,
      at: steps[column]!.at,
    };
    goTo({ row: hand, column });
  }

  function downOnHand(hand: HandName, spot: Spot, event: PointerEvent): void {
    const start = { id: nextId(), base: store.snapshot(), hand };
    const hit = hitUnder<Hit>(shown[hand], spot.tick);
    const column = steps.findLastIndex(({ at }) => at <= (hit?.at ?? spot.tick));
    if (!hit) {
      const now: Gesture = { ...start, kind: 'add', column };
      gesture.current = now;
      // A finger may yet scroll: its hit is added when it is lifted.
      if (event.pointerType !== 'touch') add(now);
      return;
    }
    goTo({ row: hand, column });
    const reach = event.pointerType === 'touch' ? END_REACH.coarse : END_REACH.fine;
    gesture.current =
      grippedBy(hit, spot, reach) === 'end'
        ? { ...start, kind: 'lengthen', at: hit.at }
        : { ...start, kind: 'move', at: hit.at, grip: spot.tick - hit.at };
  }

  function downOnSource(source: Source, spot: Spot): void {
    const column = nearestColumn(steps, spot.tick);
    goTo({ row: rowKey({ kind: 'source', source }), column });
    const stroke = strokesOnStep(source.strokes, steps[column]!, steps)[0];
    const start = { id: nextId(), base: store.snapshot() };
    if (stroke) gesture.current = { ...start, kind: 'pull', source, stroke };
  }

  function down(event: PointerEvent<HTMLDivElement>): void {
    const spot = event.button === 0 ? spotOf(event) : undefined;
    const onCell = event.target instanceof Element && event.target.closest('[data-column]');
    if (!spot || !onCell || spot.row.kind === 'counts') return;
    // Keeps the focus where `goTo` puts it.
    event.preventDefault();
    event.currentTarget.dataset['by'] = 'pointer';
    event.currentTarget.setPointerCapture(event.pointerId);
    if (spot.row.kind === 'hand') downOnHand(spot.row.hand, spot, event);
    else downOnSource(spot.row.source, spot);
  }

  function move(event: PointerEvent): void {
    const now = gesture.current;
    const spot = now && spotOf(event);
    if (!now || !spot) return;
    switch (now.kind) {
      case 'add':
        break;
      case 'pull':
        showPulled(grid.current, event, spot.row.kind === 'hand' ? spot.row.hand : undefined);
        break;
      case 'move': {
        const column = nearestColumn(steps, spot.tick - now.grip);
        const to = steps[column]!.at;
        if (to === now.at && store.snapshot() === now.base) break;
        editFrom(now, moveHit(patternId, now.hand, now.at, to, scope), 'move hit');
        goTo({ row: now.hand, column });
        break;
      }
      case 'lengthen': {
        const length = lengthDrawnTo(steps, now, spot.tick);
        editFrom(now, setHitLength(patternId, now.hand, now.at, length, scope), 'length of hit');
        break;
      }
    }
  }

  function drop(now: Extract<Gesture, { kind: 'pull' }>, event: PointerEvent): void {
    const row = spotOf(event)?.row;
    if (row?.kind !== 'hand') return;
    const { edit, label } = strokePulled(patternId, now.source, now.stroke, row.hand);
    store.edit(edit, { label });
    goTo({ row: row.hand, column: nearestColumn(steps, now.stroke.at) });
  }

  function ended(): Gesture | undefined {
    const now = gesture.current;
    gesture.current = undefined;
    hidePulled(grid.current);
    return now;
  }

  function up(event: PointerEvent): void {
    const now = ended();
    if (now?.kind === 'pull') drop(now, event);
    if (now?.kind !== 'add') return;
    add(now);
    ended();
  }

  /** The browser has taken the pointer, to scroll: what was moved on the way goes back. */
  function cancel(): void {
    const now = ended();
    if (now && store.snapshot() !== now.base) store.undo();
  }

  return {
    onPointerDown: down,
    onPointerMove: move,
    onPointerUp: up,
    onPointerCancel: cancel,
  };
}
