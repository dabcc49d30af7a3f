import { type DecodeError, decodeMono } from '../audio/decode.ts';
import { err, ok, type Result } from '../core/result.ts';
import type { HeardRecording, MonoRecording } from '../signal/heardRecording.ts';
import { recordedBand } from '../signal/recordedBand.ts';
import { type OpenedBand, proposedChoice } from './bandImport.ts';
import type { FromHearing } from './hearingWorker.ts';

/** Why a recording gives nothing: the file, or nothing with a beat is heard in it; or the player thought better of it. */
export type RecordingError =
  | DecodeError
  | { readonly kind: 'unreadable' }
  | { readonly kind: 'too-long'; readonly minutes: number; readonly most: number }
  | { readonly kind: 'nothing-heard' }
  | { readonly kind: 'given-up' };

/** A recording as it was heard, and the band in it. */
export type OpenedRecording = OpenedBand & { readonly heard: HeardRecording };

/** Listening that goes on: what comes of it, and how to give it up. */
export type Listening = {
  readonly result: Promise<Result<OpenedRecording, RecordingError>>;
  readonly giveUp: () => void;
};

/** Longer recordings are not listened to: memory is bounded. */
const MOST_MINUTES = 30;

/** Whether a file is sound, by its type or, where the system tells none, by its name. */
export function isSoundFile({ name, type }: Pick<File, 'name' | 'type'>): boolean {
  const isMidi = /midi/i.test(type) || /\.(midi?|rmi|kar)$/i.test(name);
  return (
    !isMidi && (type.startsWith('audio/') || /\.(wav|mp3|m4a|aac|ogg|oga|opus|flac)$/i.test(name))
  );
}

function heardIn(
  recording: MonoRecording,
  worker: Worker,
  onProgress: (share: number) => void,
): Promise<HeardRecording> {
  return new Promise((resolve, reject) => {
    worker.addEventListener('message', ({ data }: MessageEvent<FromHearing>) => {
      if (data.kind === 'progress') onProgress(data.share);
      else resolve(data.heard);
    });
    worker.addEventListener('error', ({ message }) => reject(new Error(message)));
    worker.postMessage(recording, [recording.samples.buffer as ArrayBuffer]);
  });
}

function opened(heard: HeardRecording): Result<OpenedRecording, RecordingError> {
  const band = recordedBand(heard);
  return band ? ok({ band, choice: proposedChoice(band), heard }) : err({ kind: 'nothing-heard' });
}

/**
 * Listens to a recording in a worker and gives the band in it as a file's would be. `onProgress` is told the share
 * of the work that is done, from 0 to 1. The sound stays on this device; nothing of it is kept.
 */
export function listenTo(file: Blob, onProgress: (share: number) => void): Listening {
  const giving = new AbortController();
  const givenUp = new Promise<Result<never, RecordingError>>((resolve) => {
    giving.signal.addEventListener('abort', () => resolve(err({ kind: 'given-up' })));
  });
  const listen = async (): Promise<Result<OpenedRecording, RecordingError>> => {
    const bytes = await file.arrayBuffer().catch(() => undefined);
    if (!bytes) return err({ kind: 'unreadable' });
    const sound = await decodeMono(bytes);
    if (!sound.ok) return sound;
    const minutes = sound.value.samples.length / sound.value.sampleRateHz / 60;
    if (minutes > MOST_MINUTES)
      return err({ kind: 'too-long', minutes: Math.ceil(minutes), most: MOST_MINUTES });
    if (giving.signal.aborted) return err({ kind: 'given-up' });
    const worker = new Worker(new URL('./hearingWorker.ts', import.meta.url), { type: 'module' });
    giving.signal.addEventListener('abort', () => worker.terminate());
    try {
      return opened(await heardIn(sound.value, worker, onProgress));
    } finally {
      worker.terminate();
    }
  };
  return { result: Promise.race([listen(), givenUp]), giveUp: () => giving.abort() };
}
