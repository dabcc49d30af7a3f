import { useState } from 'react';
import { type Pattern, patternSteps } from '../../../core/rhythm/pattern.ts';
import type { WhichHands } from '../../../core/rhythm/patternMoves.ts';
import type { Scope } from '../../../state/edits/hits.ts';
import { reworkPattern } from '../../../state/edits/variations.ts';
import type { Place } from '../../parts/grid/gridPlace.ts';
import { useParts } from '../../parts/tool/parts.ts';
import { CHANGE_SIDES, type ChangeSide, changesAt, type DeskChange } from './changes.ts';

type Props = {
  readonly pattern: Pattern;
  readonly scope: Scope;
  /** What of the pattern is shown: see `shownPattern`. */
  readonly shown: Pattern;
  readonly place: Place | undefined;
};

const HAND_CHOICES: readonly (readonly [WhichHands, string])[] = [
  ['left', 'Left'],
  ['both', 'Both'],
  ['right', 'Right'],
];

const SIDE_NAMES: Readonly<Record<ChangeSide, string>> = {
  places: 'Where they stand',
  playing: 'How they play',
};

/** The hands that the cursor's row means. */
function handsOfRow(row: string | undefined): WhichHands {
  return row === 'left' || row === 'right' ? row : 'both';
}

/** Changes of a beat, a bar or a hand, each one undo entry. */
export function ChangePanel({ pattern, scope, shown, place }: Props) {
  const { store } = useParts();
  const [chosen, setChosen] = useState<WhichHands>();
  const [side, setSide] = useState<ChangeSide>('places');
  const which = chosen ?? handsOfRow(place?.row);
  const steps = patternSteps(shown);
  const step = steps[place?.column ?? 0] ?? steps[0];
  if (!step) return null;
  const make = ({ rule, label }: DeskChange) =>
    store.edit(reworkPattern(pattern.id, rule, scope), { label });
  const { bar, beat } = step.beat;
  return (
    <div className="desk-change">
      <div role="group" aria-label="Which hands" className="pattern-buttons">
        <span className="pattern-caption">
          {shown.bars > 1 && `Bar ${bar + 1}, `}beat {beat + 1}
        </span>
        {HAND_CHOICES.map(([hands, name]) => (
          <button
            key={hands}
            type="button"
            aria-pressed={which === hands}
            onClick={() => setChosen(hands)}
          >
            {name}
          </button>
        ))}
      </div>
      <div role="group" aria-label="What is changed" className="pattern-buttons">
        {CHANGE_SIDES.map((each) => (
          <button
            key={each}
            type="button"
            aria-pressed={side === each}
            onClick={() => setSide(each)}
          >
            {SIDE_NAMES[each]}
          </button>
        ))}
      </div>
      {changesAt(shown, { step, which }, scope === 'ending')[side].map(({ title, changes }) => (
        <div key={title} role="group" aria-label={title} className="pattern-buttons">
          <span className="pattern-caption" aria-hidden="true">
            {title}
          </span>
          {changes.map((change) => (
            <button key={change.name} type="button" onClick={() => make(change)}>
              {change.name}
            </button>
          ))}
        </div>
      ))}
    </div>
  );
}
