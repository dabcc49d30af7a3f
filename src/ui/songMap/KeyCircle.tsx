import type { Chord } from '../../core/harmony/chord.ts';
import { formatChordSymbol } from '../../core/harmony/chordSymbol.ts';
import type { Key } from '../../core/harmony/key.ts';
import { formatNumeral, numeralOf } from '../../core/harmony/numerals.ts';
import { MusicText } from '../ChordName.tsx';
import { CIRCLE, circlePlaces, circlePoint, keyFrame } from './circleLayout.ts';

/** The circle of fifths with the triads of the key in a frame; a chord that is tapped is chosen. */
export function KeyCircle({
  songKey,
  onChord,
}: {
  readonly songKey: Key;
  readonly onChord: (chord: Chord) => void;
}) {
  return (
    <div className="songmap-circle" role="group" aria-label="Circle of fifths">
      <svg viewBox="0 0 1 1" aria-hidden="true" focusable="false">
        <circle cx={0.5} cy={0.5} r={CIRCLE.frameOuter} />
        <circle cx={0.5} cy={0.5} r={(CIRCLE.major + CIRCLE.minor) / 2} />
        <circle cx={0.5} cy={0.5} r={CIRCLE.frameInner} />
        <path className="songmap-circle-key" d={keyFrame(songKey)} />
      </svg>
      {circlePlaces(songKey).map(({ hour, ring, chord, isInKey }) => {
        const { x, y } = circlePoint(hour, CIRCLE[ring]);
        const name = formatChordSymbol(chord);
        const numeral = isInKey ? formatNumeral(numeralOf(chord, songKey)) : undefined;
        return (
          <button
            type="button"
            key={`${ring} ${hour}`}
            className={isInKey ? 'songmap-circle-chord songmap-circle-own' : 'songmap-circle-chord'}
            style={{ left: `${100 * x}%`, top: `${100 * y}%` }}
            onClick={() => onChord(chord)}
          >
            <MusicText text={name} /> {numeral && <small>{numeral}</small>}
          </button>
        );
      })}
    </div>
  );
}
