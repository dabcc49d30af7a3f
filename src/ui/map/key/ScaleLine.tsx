import type { Key, MinorForm } from '../../../core/harmony/key.ts';
import { formatPitchClass, type Semitones } from '../../../core/harmony/pitch.ts';
import { MusicText } from '../../parts/song/ChordName.tsx';
import { circleNotes } from './circleDrawing.ts';

/** What a step between two notes of a scale is called, and what is written over it, by its semitones. */
const STEPS: Readonly<Record<Semitones, { readonly words: string; readonly sign: string }>> = {
  1: { words: 'half step', sign: '½' },
  2: { words: 'whole step', sign: '1' },
  3: { words: 'step and a half', sign: '1½' },
};

function left(above: Semitones): string {
  return `${(100 * above) / 12}%`;
}

/** A bow over a whole step, a wedge over a half step, from one note to the next, in semitones across and parts of 10 up. */
function stepPath(above: Semitones, toNext: Semitones): string {
  const [from, middle, to] = [above + 0.18, above + toNext / 2, above + toNext - 0.18];
  return toNext === 1
    ? `M${from} 10L${middle} 3L${to} 10`
    : `M${from} 10Q${middle} ${toNext === 2 ? 0 : -4} ${to} 10`;
}

/** The scale in a line up to its octave, its notes as far apart as they sound, its whole and half steps over them. */
export function ScaleLine({ of, minorForm }: { readonly of: Key; readonly minorForm: MinorForm }) {
  const notes = circleNotes(of, minorForm);
  return (
    <div className="keypanel-line">
      <svg viewBox="0 0 12 10" preserveAspectRatio="none" aria-hidden="true" focusable="false">
        {notes.map(({ above, toNext }) => (
          <path key={above} d={stepPath(above, toNext)} data-step={toNext} />
        ))}
      </svg>
      <ol aria-label="Scale in a line">
        {[...notes, { note: of.tonic, above: 12, toNext: 0 }].map(({ note, above, toNext }) => (
          <li key={above} style={{ left: left(above) }}>
            <MusicText text={formatPitchClass(note)} />
            {STEPS[toNext] && (
              <>
                <span className="visually-hidden">, {STEPS[toNext].words}</span>
                <small
                  aria-hidden="true"
                  data-step={toNext}
                  style={{ left: `calc(${toNext / 2} * var(--keypanel-semitone))` }}
                >
                  {STEPS[toNext].sign}
                </small>
              </>
            )}
          </li>
        ))}
      </ol>
    </div>
  );
}
