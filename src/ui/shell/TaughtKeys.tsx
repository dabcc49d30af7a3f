import { MIDI_COMMANDS, type MidiCommand } from '../../app/midiCommands.ts';
import { midiSentence, useMidiState } from '../parts/input/midiHeard.ts';
import { COMMAND_WORDS, cautionAbout, triggerWords } from './taughtWords.ts';
import { type Teaching, useTeaching } from './useTeaching.ts';

type RowProps = { readonly command: MidiCommand; readonly teaching: Teaching };

function RowButtons({ command, teaching }: RowProps) {
  const words = COMMAND_WORDS[command];
  const isTaught = teaching.taught[command] !== undefined;
  if (teaching.learning === command)
    return (
      <button type="button" onClick={teaching.cancel}>
        Cancel
      </button>
    );
  return (
    <>
      <button
        type="button"
        aria-label={`${isTaught ? 'Teach another' : 'Teach'}: ${words}`}
        onClick={() => teaching.teach(command)}
      >
        {isTaught ? 'Teach another' : 'Teach'}
      </button>
      {isTaught && (
        <button
          type="button"
          aria-label={`Forget: ${words}`}
          onClick={() => teaching.forget(command)}
        >
          Forget
        </button>
      )}
    </>
  );
}

function Row({ command, teaching }: RowProps) {
  const own = teaching.taught[command];
  const isLearning = teaching.learning === command;
  return (
    <li className="taught-row" data-learning={isLearning || undefined}>
      <div>
        <span>{COMMAND_WORDS[command]}</span>
        {isLearning ? (
          <strong role="status">Press a key or a pedal of the instrument now.</strong>
        ) : (
          own && <strong>{triggerWords(own)}</strong>
        )}
        {!isLearning && own && cautionAbout(own) && <small>{cautionAbout(own)}</small>}
      </div>
      <RowButtons command={command} teaching={teaching} />
    </li>
  );
}

/** The commands that keys and pedals of a MIDI instrument can be taught. */
export function TaughtKeys() {
  const teaching = useTeaching();
  const midi = useMidiState();
  return (
    <>
      <p>
        Teach a key, a pad or a pedal of a MIDI instrument what it is to do. Choose what you do not
        play with: the left pedal, the highest key.
      </p>
      <ul className="taught">
        {MIDI_COMMANDS.map((command) => (
          <Row key={command} command={command} teaching={teaching} />
        ))}
      </ul>
      <p role="status" className="taught-says">
        {teaching.says}
      </p>
      <p role="status" className="hint">
        {midiSentence(midi)}
      </p>
    </>
  );
}
