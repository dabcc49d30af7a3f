import type { HeardRecording, MonoRecording } from '../signal/heardRecording.ts';
import { hearRecording } from '../signal/hearRecording.ts';

/** What the worker tells: the share of the work that is done, and at last what was heard. */
export type FromHearing =
  | { readonly kind: 'progress'; readonly share: number }
  | { readonly kind: 'heard'; readonly heard: HeardRecording };

function answer(message: FromHearing): void {
  globalThis.postMessage(message, {});
}

/** Hears the one recording that it is given. */
function hearWhatComes(): void {
  globalThis.addEventListener('message', ({ data }: MessageEvent<MonoRecording>) => {
    const onProgress = (share: number) => answer({ kind: 'progress', share });
    answer({ kind: 'heard', heard: hearRecording(data, { onProgress }) });
  });
}

hearWhatComes();
