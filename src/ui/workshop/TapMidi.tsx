import { useParts } from '../parts.ts';
import { instrumentNames, midiSentence, useMidiState } from '../shell/midiHeard.ts';

/** What else can be tapped on: a MIDI keyboard once it was asked for, and why it is not heard. */
export function TapMidi() {
  const { midi } = useParts();
  const state = useMidiState();
  if (state.status === 'open' && state.names.length > 0)
    return (
      <p className="desk-note" role="status">
        Or tap on any key of {instrumentNames(state.names)}: how hard and how long is heard as well.
      </p>
    );
  return (
    <div className="desk-line">
      {(state.status === 'closed' || state.status === 'refused') && (
        <button type="button" onClick={() => void midi.open()}>
          {state.status === 'closed' ? 'Tap on a MIDI keyboard' : 'Ask for MIDI again'}
        </button>
      )}
      <p className="desk-note" role="status">
        {midiSentence(state)}
      </p>
    </div>
  );
}
