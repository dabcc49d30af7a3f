import { useSyncExternalStore } from 'react';
import type { MidiState } from '../../../app/midiDoor.ts';
import { unreachable } from '../../../core/result.ts';
import { useParts } from '../tool/parts.ts';
import { hearingSentence } from './inputWords.ts';

/** Whether MIDI instruments are heard, and which. */
export function useMidiState(): MidiState {
  const { midi } = useParts();
  return useSyncExternalStore(midi.subscribe, midi.state);
}

/** The instruments of a device as they are called in a sentence. */
export function instrumentNames(names: readonly string[]): string {
  return names.map((name) => name || 'an instrument without a name').join(', ');
}

/** Whether an instrument is heard, why not, and what to do; undefined before anybody asked. */
export function midiSentence(state: MidiState): string | undefined {
  switch (state.status) {
    case 'closed':
      return undefined;
    case 'asking':
      return 'The browser may ask whether MIDI may be used: allow it.';
    case 'refused':
      return hearingSentence(state.problem, 'midi');
    case 'open':
      return state.names.length === 0
        ? 'No MIDI instrument is connected. Connect one; it is heard at once.'
        : `Heard: ${instrumentNames(state.names)}.`;
    default:
      return unreachable(state);
  }
}
