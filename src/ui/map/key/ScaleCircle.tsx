import type { Chord } from '../../../core/harmony/chord.ts';
import type { Key, MinorForm } from '../../../core/harmony/key.ts';
import { formatPitchClass } from '../../../core/harmony/pitch.ts';
import { MusicText } from '../../parts/song/ChordName.tsx';
import { circleChord, circleNotes, placeOnCircle, RADII } from './circleDrawing.ts';

function percent(part: number): string {
  return `${(100 * part).toFixed(2)}%`;
}

/** The notes of the sounding chord that the scale does not have, at their places between its notes. */
function ForeignNotes({ foreign }: Pick<ReturnType<typeof circleChord>, 'foreign'>) {
  return foreign.map(({ note, at }) => {
    const name = formatPitchClass(note);
    return (
      <span
        key={name}
        className="keypanel-foreign"
        aria-hidden="true"
        style={{ left: percent(at.x), top: percent(at.y) }}
      >
        <MusicText text={name} />
      </span>
    );
  });
}

/**
 * The scale as a circle of its seven notes, the tonic at the top and the steps as long as they sound;
 * the chord that was heard last is drawn into it. A note that is tapped stands for its step.
 */
export function ScaleCircle({
  of,
  minorForm,
  chord,
  onStep,
}: {
  readonly of: Key;
  readonly minorForm: MinorForm;
  readonly chord: Chord | undefined;
  readonly onStep: (step: number) => void;
}) {
  const notes = circleNotes(of, minorForm);
  const drawn = chord && circleChord(chord, of, minorForm);
  return (
    <div className="keypanel-circle" role="group" aria-label="Scale in a circle">
      <svg viewBox="0 0 1 1" aria-hidden="true" focusable="false">
        {notes.map(({ above, toNext, arc }) => (
          <path key={above} d={arc} data-step={toNext} />
        ))}
        {drawn && (
          <>
            <polygon points={drawn.outline} />
            <circle cx={drawn.root.x} cy={drawn.root.y} r={0.02} />
          </>
        )}
      </svg>
      {notes.map(({ note, above }, step) => {
        const { x, y } = placeOnCircle(above, RADII.ring);
        const name = formatPitchClass(note);
        return (
          <button
            type="button"
            key={above}
            className="keypanel-circle-note"
            style={{ left: percent(x), top: percent(y) }}
            title={`Hear the triad on ${name}`}
            onClick={() => onStep(step)}
          >
            <MusicText text={name} />
            <small>{step + 1}</small>
          </button>
        );
      })}
      {drawn && <ForeignNotes foreign={drawn.foreign} />}
    </div>
  );
}
