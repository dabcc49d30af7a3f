import type { KeyboardEvent, MouseEvent } from 'react';
import type { PatternId } from '../../../core/ids.ts';
import type { Pattern } from '../../../core/rhythm/pattern.ts';
import type { HandName } from '../../../core/voicing/voicing.ts';
import type { Scope } from '../../../state/edits/hits.ts';
import { useParts } from '../tool/parts.ts';
import { hitRepeated } from './drawnHits.ts';
import { placeOf } from './gridCells.ts';
import { type GridAction, gridActionOf } from './gridKeys.ts';
import { chosenAt, type Place, placeAfter, rowAt } from './gridPlace.ts';
import { type HitChange, hitAdded, hitChange, strokePulled } from './hitChanges.ts';
import { handBeside } from './rowLayout.ts';

type Known = {
  readonly patternId: PatternId;
  readonly scope: Scope;
  readonly shown: Pattern;
  readonly goTo: (place: Place) => void;
  readonly onDivide: (place: Place) => void;
  readonly onOpenHit: () => void;
};

/** What the keys of the grid do, and a press by a screen reader, which comes as a click without a pointer. */
export function useGridKeys({ patternId, scope, shown, goTo, onDivide, onOpenHit }: Known) {
  const { store } = useParts();

  function make(made: HitChange | undefined, row: string): void {
    if (!made) return;
    store.edit(made.edit, { label: made.label });
    goTo({ row, column: made.column });
  }

  function pull(at: Place, hand: HandName): void {
    const chosen = chosenAt(shown, at);
    if (chosen?.kind !== 'stroke') return;
    const { edit, label } = strokePulled(patternId, chosen.source, chosen.stroke, hand);
    store.edit(edit, { label });
  }

  function act(at: Place): void {
    const row = rowAt(shown, at);
    if (row?.kind === 'counts') onDivide(at);
    if (row?.kind === 'source') pull(at, handBeside(row.source.part));
    if (row?.kind !== 'hand') return;
    const chosen = chosenAt(shown, at);
    const begins = chosen?.kind === 'hit' && chosen.column === at.column;
    if (begins) onOpenHit();
    else make(hitAdded({ patternId, scope, shown, hand: row.hand, column: at.column }), at.row);
  }

  function change(action: GridAction, at: Place): void {
    const row = rowAt(shown, at);
    if (row?.kind === 'source' && action.kind === 'pull') pull(at, action.hand);
    if (row?.kind !== 'hand') return;
    const place = { patternId, scope, shown, hand: row.hand, column: at.column };
    make(action.kind === 'again' ? hitRepeated(place) : hitChange(place, action), at.row);
  }

  function press(event: KeyboardEvent): void {
    const at = placeOf(event.target);
    const action = gridActionOf(event);
    if (!at || !action) return;
    event.preventDefault();
    if (action.kind === 'go' || action.kind === 'go-to') goTo(placeAfter(shown, at, action));
    else if (action.kind === 'act') act(at);
    else change(action, at);
  }

  function click(event: MouseEvent): void {
    const at = placeOf(event.target);
    if (at && (at.row === 'counts' || event.detail === 0)) act(at);
  }

  return { onKeyDown: press, onClick: click };
}
