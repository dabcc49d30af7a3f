import { type MouseEvent, type PointerEvent, type RefObject, useRef } from 'react';
import type { PatternId } from '../../../core/ids.ts';
import type { Project } from '../../../core/project.ts';
import { type Hit, type Pattern, patternTicks, type Step } from '../../../core/rhythm/pattern.ts';
import type { Source, Stroke } from '../../../core/rhythm/sources.ts';
import type { Ticks } from '../../../core/time/ticks.ts';
import type { HandName } from '../../../core/voicing/voicing.ts';
import { moveHit, type Scope, setHitLength } from '../../../state/edits/hits.ts';
import { sourceName } from '../pattern/sourceNames.ts';
import { useParts } from '../tool/parts.ts';
import { hitsDrawn, hitsRubbedOut } from './drawnHits.ts';
import { type Place, strokesOnStep } from './gridPlace.ts';
import {
  END_REACH,
  grippedBy,
  hitUnder,
  lengthDrawnTo,
  type NearStroke,
  nearestColumn,
  type Spot,
  STROKE_MIDDLE,
  spotAt,
  strokeNear,
  tickDrawnTo,
  tiedUnder,
} from './gridSpot.ts';
import { type HitPlace, strokePulled } from './hitChanges.ts';
import { hidePulled, showPulled } from './pulledStroke.ts';
import { MARK_ROOM, type RowLayout, rowKey } from './rowLayout.ts';
import { type Pixels, type System, systemAt, tickX } from './systemLayout.ts';

/**
 * What the pointer is doing since it went down; `base` is the project before it. `reached` is the
 * step, or the length, that it has come to: nothing is done again until it comes to another one.
 */
type Gesture = { readonly id: string; readonly base: Project; readonly reached?: number } & (
  | { readonly kind: 'draw' | 'rub'; readonly from: HitPlace; readonly system: System }
  | { readonly kind: 'move'; readonly hand: HandName; readonly at: Ticks; readonly grip: number }
  | {
      readonly kind: 'lengthen';
      readonly hand: HandName;
      readonly at: Ticks;
      /** How far before what is shown it was struck: a round, where it is held by the end of its tie. */
      readonly agoTicks: Ticks;
    }
  | { readonly kind: 'pull'; readonly source: Source; readonly stroke: Stroke }
);

type Drawing = Extract<Gesture, { readonly kind: 'draw' | 'rub' }>;

/** Buttons that rub out: the mouse's second, and the other end of a pen. */
const RUBBING_BUTTONS: readonly number[] = [2, 5];

/** What the pointer needs to know of the grid it moves over. */
export type PointerGrid = {
  readonly patternId: PatternId;
  readonly scope: Scope;
  readonly shown: Pattern;
  /** The steps of what is shown. */
  readonly steps: readonly Step[];
  readonly systems: readonly System[];
  readonly layout: RowLayout;
  readonly grid: RefObject<HTMLDivElement | null>;
  readonly goTo: (place: Place) => void;
};

/** How near to its end a pointer of this kind holds a hit by it. */
function reachOf({ pointerType }: Pick<PointerEvent, 'pointerType'>): Pixels {
  return pointerType === 'touch' ? END_REACH.coarse : END_REACH.fine;
}

/** A number for each gesture, so that its edits become one entry of the history. */
function useGestureIds(): () => string {
  const count = useRef(0);
  return () => {
    count.current++;
    return `grid gesture ${count.current}`;
  };
}

/**
 * Mouse, pen and touch on the grid: an empty place takes a hit, and drawing on from it along the row
 * writes one on every step at which the hand rests (with Shift it draws that one hit out); a hit is
 * moved by its body and drawn out by its end; a stroke of the band is pulled into a hand. The second
 * button, or the other end of a pen, rubs out what it is drawn over. A finger that turns out to
 * scroll changes nothing.
 */
export function useGridPointer(known: PointerGrid) {
  const { store } = useParts();
  const { patternId, scope, shown, steps, systems, layout, grid, goTo } = known;
  const gesture = useRef<Gesture>(undefined);
  const nextId = useGestureIds();
  const roundTicks = patternTicks(shown);

  function cornersOf(those: readonly System[]): DOMRect[] {
    return those.flatMap(
      ({ firstBar }) =>
        grid.current?.querySelector(`[data-system="${firstBar}"]`)?.getBoundingClientRect() ?? [],
    );
  }

  function spotOf(event: PointerEvent, among = systems): Spot | undefined {
    return spotAt(among, cornersOf(among), layout, { x: event.clientX, y: event.clientY });
  }

  /** The step that a tick lies in. */
  function columnAt(tick: number): number {
    return steps.findLastIndex(({ at }) => at <= tick);
  }

  /** A change counted from the project before the gesture, so that what is only passed over stays. */
  function editFrom(now: Gesture, edit: (project: Project) => Project, label: string): void {
    const next = edit(now.base);
    store.edit(() => next, { label, gesture: now.id });
  }

  /** Whether a gesture has come to another step or length than it had reached. */
  function reaches(now: Gesture, reached: number): boolean {
    if (now.reached === reached) return false;
    gesture.current = { ...now, reached };
    return true;
  }

  function drawTo(now: Drawing, column: number): void {
    if (!reaches(now, column)) return;
    if (now.kind === 'draw') editFrom(now, hitsDrawn(now.from, column), 'add hit');
    else editFrom(now, hitsRubbedOut(now.from, column), 'rub out');
  }

  /** Adds a hit that goes on being drawn out. */
  function addLong(now: Drawing): void {
    const { id, from } = now;
    editFrom(now, hitsDrawn(from, from.column), 'add hit');
    const { at, length } = steps[from.column]!;
    const [base, hand] = [store.snapshot(), from.hand];
    gesture.current = { id, base, kind: 'lengthen', hand, at, agoTicks: 0, reached: length };
  }

  function downOnRest(now: Drawing, event: PointerEvent): void {
    const { hand, column } = now.from;
    gesture.current = now;
    // A finger may yet scroll: its hit is added when it is lifted or has gone on to another step.
    if (event.pointerType === 'touch') return;
    if (event.shiftKey) addLong(now);
    else drawTo(now, column);
    goTo({ row: hand, column });
  }

  /** What is tied over from the round before is held by its end, to be drawn out or in; elsewhere it is chosen. */
  function downOnTie(
    hit: Hit,
    start: Pick<Gesture, 'id' | 'base'>,
    hand: HandName,
    spot: Spot,
    event: PointerEvent,
  ): void {
    goTo({ row: hand, column: columnAt(hit.at) });
    const { at, length } = hit;
    if (grippedBy({ at: at - roundTicks, length }, spot, reachOf(event)) === 'end')
      gesture.current = {
        ...start,
        kind: 'lengthen',
        hand,
        at,
        agoTicks: roundTicks,
        reached: length,
      };
  }

  function downOnHand(hand: HandName, spot: Spot, event: PointerEvent): void {
    const start = { id: nextId(), base: store.snapshot() };
    const { system, tick } = spot;
    const from = { patternId, scope, shown, hand, column: columnAt(tick) };
    if (RUBBING_BUTTONS.includes(event.button)) {
      drawTo({ ...start, kind: 'rub', from, system }, from.column);
      return;
    }
    const hit = hitUnder<Hit>(shown[hand], tick);
    const tied = !hit && scope === 'main' && tiedUnder<Hit>(shown[hand], tick, roundTicks);
    if (tied) {
      downOnTie(tied, start, hand, spot, event);
      return;
    }
    if (!hit) {
      downOnRest({ ...start, kind: 'draw', from, system }, event);
      return;
    }
    const column = columnAt(hit.at);
    goTo({ row: hand, column });
    const held = { ...start, hand, at: hit.at };
    gesture.current =
      grippedBy(hit, spot, reachOf(event)) === 'end'
        ? { ...held, kind: 'lengthen', agoTicks: 0, reached: hit.length }
        : { ...held, kind: 'move', grip: tick - hit.at, reached: column };
  }

  function downOnStroke({ source, stroke }: NearStroke): void {
    const column = nearestColumn(steps, stroke.at);
    goTo({ row: rowKey({ kind: 'source', source }), column });
    gesture.current = { id: nextId(), base: store.snapshot(), kind: 'pull', source, stroke };
  }

  function downOnSource(source: Source, { tick }: Spot): void {
    const column = nearestColumn(steps, tick);
    const stroke = strokesOnStep(source.strokes, steps[column]!, steps)[0];
    if (stroke) downOnStroke({ source, stroke });
    else goTo({ row: rowKey({ kind: 'source', source }), column });
  }

  /** The stroke that a finger means, where it has not come down on a hit of a hand. */
  function strokeUnder(event: PointerEvent, { row, tick, y }: Spot): NearStroke | undefined {
    const onHit = row.kind === 'hand' && y >= MARK_ROOM && hitUnder<Hit>(shown[row.hand], tick);
    if (event.pointerType !== 'touch' || onHit) return undefined;
    return strokeNear(systems, cornersOf(systems), layout, { x: event.clientX, y: event.clientY });
  }

  function down(event: PointerEvent<HTMLDivElement>): void {
    const isMeant = event.button === 0 || RUBBING_BUTTONS.includes(event.button);
    const spot = isMeant ? spotOf(event) : undefined;
    const onCell = event.target instanceof Element && event.target.closest('[data-column]');
    if (!spot || !onCell || spot.row.kind === 'counts') return;
    // Keeps the focus where `goTo` puts it.
    event.preventDefault();
    event.currentTarget.setPointerCapture(event.pointerId);
    const stroke = strokeUnder(event, spot);
    if (stroke) downOnStroke(stroke);
    else if (spot.row.kind === 'hand') downOnHand(spot.row.hand, spot, event);
    else if (event.button === 0) downOnSource(spot.row.source, spot);
  }

  function move(event: PointerEvent): void {
    const now = gesture.current;
    const isDrawing = now?.kind === 'draw' || now?.kind === 'rub';
    const spot = now && spotOf(event, isDrawing ? [now.system] : systems);
    if (!now || !spot) return;
    switch (now.kind) {
      case 'draw':
      case 'rub': {
        const column = columnAt(spot.tick);
        if (now.reached !== undefined || column !== now.from.column) drawTo(now, column);
        break;
      }
      case 'pull': {
        const { source, stroke } = now;
        const system = systemAt(systems, stroke.at) ?? spot.system;
        const hand = spot.row.kind === 'hand' ? spot.row.hand : undefined;
        const x = tickX(system, stroke.at) + STROKE_MIDDLE;
        showPulled(grid.current, event, { name: sourceName(source), x, system, hand });
        break;
      }
      case 'move': {
        const column = nearestColumn(steps, spot.tick - now.grip);
        if (!reaches(now, column)) break;
        const to = steps[column]!.at;
        editFrom(now, moveHit(patternId, now.hand, now.at, to, scope), 'move hit');
        goTo({ row: now.hand, column });
        break;
      }
      case 'lengthen': {
        const tick = now.agoTicks > 0 ? spot.tick + now.agoTicks : tickDrawnTo(steps, spot);
        const length = lengthDrawnTo(steps, now, tick);
        if (!reaches(now, length)) break;
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
    if (now?.kind !== 'draw') return;
    if (now.reached === undefined) editFrom(now, hitsDrawn(now.from, now.from.column), 'add hit');
    goTo({ row: now.from.hand, column: now.reached ?? now.from.column });
  }

  /** The browser has taken the pointer, to scroll: what was moved on the way goes back. */
  function cancel(): void {
    const now = ended();
    if (now && store.snapshot() !== now.base) store.undo();
  }

  /** Over the hands the second button rubs out, and a finger that rests waits to draw. */
  function menu(event: MouseEvent): void {
    if (event.target instanceof Element && event.target.closest('[data-column]'))
      event.preventDefault();
  }

  return {
    onContextMenu: menu,
    onPointerDown: down,
    onPointerMove: move,
    onPointerUp: up,
    onPointerCancel: cancel,
  };
}
