import type { Pattern } from '../../../core/rhythm/pattern.ts';
import type { Scope } from '../../../state/edits/hits.ts';
import { PopupButton } from '../../kit/PopupButton.tsx';
import { GRID_KEY_LIST } from '../../parts/grid/gridKeys.ts';
import type { Chosen, Place } from '../../parts/grid/gridPlace.ts';
import { HitButtons } from './HitButtons.tsx';
import { StrokeButtons } from './StrokeButtons.tsx';

type Props = {
  readonly pattern: Pattern;
  readonly scope: Scope;
  readonly shown: Pattern;
  readonly chosen: Chosen | undefined;
  /** Where the cursor goes with a hit that is moved; the focus stays on the button. */
  readonly onPlace: (place: Place) => void;
};

function Hint({ hasBand }: { readonly hasBand: boolean }) {
  return (
    <p className="pattern-hint">
      Tap an empty place for a hit, or draw along the row for one on every step. Tap a hit to change
      it; drag it to move it, drag its end to make it longer. Tap a beat’s number to divide the
      beat.
      {hasBand && ' Drag a stroke of the band into a hand.'}
    </p>
  );
}

/** The list of the grid's keys. */
export function GridKeys() {
  return (
    <PopupButton name="Keys">
      {() => (
        <table className="pattern-keys">
          <tbody>
            {GRID_KEY_LIST.map(([keys, does]) => (
              <tr key={keys}>
                <th scope="row">{keys}</th>
                <td>{does}</td>
              </tr>
            ))}
          </tbody>
        </table>
      )}
    </PopupButton>
  );
}

/** What can be done with what is chosen in the grid, in big buttons. */
export function ChoicePanel({ pattern, scope, shown, chosen, onPlace }: Props) {
  return (
    <section className="pattern-choice-buttons" aria-label="What is chosen">
      {chosen?.kind === 'hit' && (
        <HitButtons
          patternId={pattern.id}
          scope={scope}
          shown={shown}
          chosen={chosen}
          onGo={(column) => onPlace({ row: chosen.hand, column })}
        />
      )}
      {chosen?.kind === 'stroke' && <StrokeButtons patternId={pattern.id} chosen={chosen} />}
      {!chosen && <Hint hasBand={shown.sources.length > 0} />}
    </section>
  );
}
