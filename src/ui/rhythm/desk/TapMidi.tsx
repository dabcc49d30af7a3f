import { instrumentNames, midiSentence, useMidiState } from '../../parts/input/midiHeard.ts';
import { useParts } from '../../parts/tool/parts.ts';

/** What can be tapped on: pads, two keys, and a MIDI keyboard once one is heard; or why it is not. */
export function TapsOn() {
  const midi = useMidiState();
  if (midi.status === 'open' && midi.names.length > 0)
    return (
      <>
        Use the pads, the keys F and J, or any key of {instrumentNames(midi.names)}, which tells how
        hard it is struck, too.
      </>
    );
  return <>Use the pads, or the keys F and J. {midiSentence(midi)}</>;
}

/** Asks for MIDI, as long as nobody has or it was refused. */
export function MidiButton() {
  const { midi } = useParts();
  const { status } = useMidiState();
  if (status !== 'closed' && status !== 'refused') return null;
  return (
    <button type="button" onClick={() => void midi.open()}>
      {status === 'closed' ? 'Tap on a MIDI keyboard' : 'Ask for MIDI again'}
    </button>
  );
}
