import { type Cadence, type CadenceKind, cadencesOf } from '../../../core/harmony/cadences.ts';
import { formatChordSymbol } from '../../../core/harmony/chordSymbol.ts';
import type { Key } from '../../../core/harmony/key.ts';
import { formatNumeral } from '../../../core/harmony/numerals.ts';
import { PACES, type Pace } from '../../../core/song/chordRow.ts';
import { Choice } from '../../kit/Choice.tsx';
import { MusicText } from '../../parts/song/ChordName.tsx';

/** What the cadences are called. */
export const CADENCE_NAMES: Readonly<Record<CadenceKind, string>> = {
  perfect: 'Perfect',
  plagal: 'Plagal',
  half: 'Half',
  deceptive: 'Deceptive',
  'two-five-one': 'ii–V–I',
};

const PACE_NAMES: Readonly<Record<Pace, string>> = { bar: 'a bar', 'half-bar': 'half a bar' };

/** The ways in which a phrase can end in a key, and how long each chord of them lasts. */
export function Cadences({
  of,
  chosen,
  pace,
  onPace,
  onCadence,
}: {
  readonly of: Key;
  readonly chosen: CadenceKind | undefined;
  readonly pace: Pace;
  readonly onPace: (pace: Pace) => void;
  readonly onCadence: (cadence: Cadence) => void;
}) {
  return (
    <div className="keypanel-cadences" role="group" aria-label="Cadences">
      <div className="keypanel-cadences-head">
        <span>Cadences, each chord for</span>
        <Choice
          label="Each chord for"
          options={PACES.map((each) => [each, PACE_NAMES[each]] as const)}
          chosen={pace}
          onChoose={onPace}
        />
      </div>
      {cadencesOf(of).map((cadence) => (
        <button
          type="button"
          key={cadence.kind}
          className="keypanel-offer"
          aria-current={cadence.kind === chosen ? 'true' : undefined}
          onClick={() => onCadence(cadence)}
        >
          <span className="keypanel-cadence-name">{CADENCE_NAMES[cadence.kind]}</span>
          {cadence.chords.map(({ chord, numeral }) => (
            <span key={formatNumeral(numeral)} className="keypanel-cadence-chord">
              <MusicText text={formatChordSymbol(chord)} />
              <small>
                <MusicText text={formatNumeral(numeral)} />
              </small>
            </span>
          ))}
        </button>
      ))}
    </div>
  );
}
