import type { Key, MinorForm } from '../../core/harmony/key.ts';
import { formatPitchClass } from '../../core/harmony/pitch.ts';
import { MusicText } from '../ChordName.tsx';
import { scaleSteps } from './scaleSteps.ts';

/** What a step is called, and its sign between two notes: a straight line, a wedge for half steps. */
const STEP_NAMES: Readonly<Record<number, string>> = {
  1: 'half step',
  2: 'whole step',
  3: 'a step and a half',
};

/** The scale in a line, its notes as far apart as they sound; half steps have a wedge between them. */
export function ScaleLine({ songKey, form }: { readonly songKey: Key; readonly form: MinorForm }) {
  return (
    <ol className="songmap-scale" aria-label="Scale">
      {scaleSteps(songKey, form).map(({ note, above, toNext }, i) => (
        <li
          key={above}
          data-step={toNext}
          style={{ left: `${(100 * above) / 12}%`, width: `${(100 * (toNext ?? 0)) / 12}%` }}
        >
          <span className="songmap-scale-note">
            <MusicText text={formatPitchClass(note)} />
          </span>
          <small>{(i % 7) + 1}</small>
          {toNext !== undefined && (
            <span className="visually-hidden">, {STEP_NAMES[toNext]}, </span>
          )}
        </li>
      ))}
    </ol>
  );
}
