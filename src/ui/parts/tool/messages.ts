import type { KeptAppState } from '../../../app/keptApp.ts';
import type { PlaybackProblem } from '../../../app/playbackState.ts';
import { unreachable } from '../../../core/result.ts';
import type { SavingStatus } from '../../../state/autosave.ts';
import type { UnreadableProject } from '../../../state/storage.ts';

/** Why nothing sounds, and what to do. */
export function scoreSentence(problem: PlaybackProblem): string {
  switch (problem.kind) {
    case 'nothing-to-play':
      return 'There is nothing to play yet: put a section with chords into the form, on Map.';
    case 'nothing-playable':
      return `No hands fit ${problem.chord} within the span and range set on Hands. Widen them, or change the chord.`;
    case 'no-sound':
      return `The browser gave no sound (${problem.reason}). Check that an output is connected, then press Start again.`;
    case 'interrupted':
      return 'The device took the sound away (a call, another app, or an output that went). What was played until then counts; press Start to begin again.';
    default:
      return unreachable(problem);
  }
}

/** That the song is not being kept, why, and what to do; undefined while all is well. */
export function savingSentence(saving: SavingStatus): string | undefined {
  if (saving.kind !== 'failed') return undefined;
  switch (saving.error.kind) {
    case 'unavailable':
      return 'This browser keeps nothing here (a private window, or storage switched off): the song is gone when the page is closed.';
    case 'newer-version':
      return 'A newer Vampwright is open in another tab and has taken over the songs. Reload this page to go on.';
    case 'full':
      return 'The song could not be saved: this device has no room left. Free some, then make any change to save again.';
    case 'failed':
      return `The song could not be saved (${saving.error.reason}). Make any change to try again.`;
    default:
      return unreachable(saving.error.kind);
  }
}

/** That the song opened last did not come up, that it is still there, and what to do. */
export function leftClosedSentence(title: string): string {
  return `The page stood still or failed when “${title}” was opened, so it was left closed this time. It is kept as it is; open it from the songs to try again. The first song is open instead.`;
}

/** That the kept song can't be read, that it is still there, and what to do. */
export function unreadableSentence(song: UnreadableProject): string {
  const { error } = song;
  const place = 'path' in error && error.path !== '' ? ` (at ${error.path})` : '';
  return `The song “${song.title}” can't be read any more${place}. It is still kept as it is; save its file to have it repaired. The first song is open instead.`;
}

/** Whether the tool opens here without a network, and what to do where it does not. */
export function keptAppSentence(kept: KeptAppState): string {
  switch (kept.kind) {
    case 'kept':
      return 'Vampwright is kept on this device, sounds and all: it opens and plays without a network.';
    case 'keeping':
      return 'Vampwright is being kept on this device. Leave this page open with a network until that is done.';
    case 'impossible':
      return 'Here Vampwright needs its address to be within reach each time it is opened: this browser keeps no pages, or only from addresses that begin with https.';
    case 'failed':
      return `Vampwright could not be kept on this device (${kept.reason}). Open it again while there is a network and room on the device.`;
    default:
      return unreachable(kept);
  }
}
