import { formatChordSymbol } from '../../../core/harmony/chordSymbol.ts';
import type { Key, MinorForm } from '../../../core/harmony/key.ts';
import type { KeyChord } from '../../../core/harmony/keyChords.ts';
import { formatNumeral } from '../../../core/harmony/numerals.ts';
import { MusicText } from '../../parts/song/ChordName.tsx';
import { stepOffers } from './stepOffers.ts';

/** A chord of the key with its numeral. */
function Offer({
  offer,
  isChosen,
  onChord,
}: {
  readonly offer: KeyChord;
  readonly isChosen: boolean;
  readonly onChord: (offer: KeyChord) => void;
}) {
  return (
    <button
      type="button"
      className="keypanel-offer"
      aria-current={isChosen ? 'true' : undefined}
      onClick={() => onChord(offer)}
    >
      <span>
        <MusicText text={formatChordSymbol(offer.chord)} />
      </span>
      <small>
        <MusicText text={formatNumeral(offer.numeral)} />
      </small>
    </button>
  );
}

/**
 * The chords of a key, a line for each step: its triad and seventh, the dominant that leads there and
 * what can stand for that dominant. `chosen` is the numeral of the chord that was heard last.
 */
export function KeyChords({
  of,
  minorForm,
  chosen,
  onChord,
}: {
  readonly of: Key;
  readonly minorForm: MinorForm;
  readonly chosen: string | undefined;
  readonly onChord: (offer: KeyChord) => void;
}) {
  return (
    <table className="keypanel-chords">
      <thead>
        <tr>
          <th scope="col">Triad</th>
          <th scope="col">Seventh</th>
          <th scope="col">Led to by</th>
          <th scope="col">or substitute</th>
        </tr>
      </thead>
      <tbody>
        {stepOffers(of, minorForm).map(({ triad, seventh, dominant, substitute }) => (
          <tr key={formatNumeral(triad.numeral)}>
            {[triad, seventh, dominant, substitute].map((offer, column) => (
              // The four columns stay what they are.
              <td key={column}>
                {offer ? (
                  <Offer
                    offer={offer}
                    isChosen={formatNumeral(offer.numeral) === chosen}
                    onChord={onChord}
                  />
                ) : (
                  <span className="visually-hidden">nothing</span>
                )}
              </td>
            ))}
          </tr>
        ))}
      </tbody>
    </table>
  );
}
