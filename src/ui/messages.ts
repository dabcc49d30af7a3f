import type { PlaybackProblem } from '../app/playback.ts';
import { unreachable } from '../core/result.ts';
import type { SavingStatus } from '../state/autosave.ts';

/** Why nothing sounds, and what to do. */
export function scoreSentence(problem: PlaybackProblem): string {
  switch (problem.kind) {
    case 'nothing-to-play':
      return 'There is nothing to play yet: put a section with chords into the form, on Map.';
    case 'nothing-playable':
      return `No hands fit ${problem.chord} within the span and range set on Hands. Widen them, or change the chord.`;
    case 'no-sound':
      return `The browser gave no sound (${problem.reason}). Check that an output is connected, then press Play again.`;
    default:
      return unreachable(problem);
  }
}
