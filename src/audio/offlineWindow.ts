import type { AudioData } from '../core/audioData.ts';
import type { TimedNote } from '../core/rhythm/note.ts';
import type { Seconds } from '../core/time/ticks.ts';
import { type Instruments, instrumentsOf } from './instruments.ts';
import { loadSounds, type SoundBank } from './loadSounds.ts';
import type { Levels } from './mix.ts';
import { STORED_SOUNDS } from './soundCatalogue.ts';
import { soundOfNote } from './soundOfNote.ts';

/** A note that is struck on a frame, counted in whole samples from a rendering's beginning. */
export type FramedNote = { readonly note: TimedNote; readonly atFrame: number };

/** What of a rendering is computed in one context: its frames from `fromFrame` to before `toFrame`. */
export type OfflineWindow = {
  readonly fromFrame: number;
  readonly toFrame: number;
  readonly sampleRate: number;
  readonly levels: Levels;
  /** Told from time to time which share of the window is done, above 0 and below 1. */
  readonly onProgress?: (share: number) => void;
  readonly signal?: AbortSignal;
};

/** So much music is given to the context at a time: thousands of waiting sounds would slow it down. */
const PORTION_SEC: Seconds = 1;

/** Contexts compute so many samples at a time (Web Audio's render quantum). */
export const QUANTUM_FRAMES = 128;

/** Every sound that the notes need, at a sample rate. */
export function soundsFor(notes: readonly TimedNote[], sampleRate: number): Promise<SoundBank> {
  const ids = new Set(notes.map((note) => soundOfNote(note).id));
  // Sounds belong to no context; one is needed to decode them, with any length of its own.
  const context = new OfflineAudioContext(1, 1, sampleRate);
  return loadSounds(
    context,
    STORED_SOUNDS.filter((sound) => ids.has(sound.id)),
  );
}

/** The notes (ascending) on their frames: `startSec` is the time of the notes that is frame 0. */
export function framedNotes(
  notes: readonly TimedNote[],
  startSec: Seconds,
  sampleRate: number,
): FramedNote[] {
  return notes.map((note) => ({
    note,
    atFrame: Math.round((note.startSec - startSec) * sampleRate),
  }));
}

/** Strikes notes at their frames after the window's first, up to a time of the window that grows from call to call. */
function strikerOf(
  instruments: Instruments,
  notes: readonly FramedNote[],
  { fromFrame, sampleRate }: OfflineWindow,
): (untilSec: Seconds) => void {
  let next = 0;
  return (untilSec) => {
    for (let framed = notes[next]; framed; framed = notes[next]) {
      const atSec = (framed.atFrame - fromFrame) / sampleRate;
      if (atSec >= untilSec) return;
      instruments.strike(framed.note, atSec);
      next++;
    }
  };
}

/** Renders while `strikeUntil` keeps a portion ahead; all is struck at once where rendering cannot rest. */
async function renderInPortions(
  context: OfflineAudioContext,
  strikeUntil: (untilSec: Seconds) => void,
  { onProgress, signal }: OfflineWindow,
): Promise<AudioBuffer> {
  // Not every browser can (Firefox cannot, from memory); the result is the same, only slower.
  if (!('suspend' in context)) {
    strikeUntil(Number.POSITIVE_INFINITY);
    return (context as OfflineAudioContext).startRendering();
  }
  const endSec = context.length / context.sampleRate;
  const restAt = async (restSec: Seconds) => {
    await context.suspend(restSec);
    signal?.throwIfAborted();
    onProgress?.(restSec / endSec);
    strikeUntil(restSec + 2 * PORTION_SEC);
    await context.resume();
  };
  // A rest falls on the next quantum; one that fell on the end would never come to pass.
  const lastRestSec = endSec - QUANTUM_FRAMES / context.sampleRate;
  const rests: Promise<void>[] = [];
  for (let restSec = PORTION_SEC; restSec < lastRestSec; restSec += PORTION_SEC)
    rests.push(restAt(restSec));
  strikeUntil(2 * PORTION_SEC);
  const [buffer] = await Promise.all([context.startRendering(), ...rests]);
  return buffer;
}

/**
 * The window's sound in two channels, out of notes that ascend and all lie in it. Rejects with the
 * signal's reason at its next rest where `signal` gives it up.
 */
export async function renderWindow(
  notes: readonly FramedNote[],
  sounds: SoundBank,
  window: OfflineWindow,
): Promise<AudioData> {
  const { fromFrame, toFrame, sampleRate, levels } = window;
  const context = new OfflineAudioContext(2, toFrame - fromFrame, sampleRate);
  const instruments = instrumentsOf(context, sounds, levels);
  const buffer = await renderInPortions(context, strikerOf(instruments, notes, window), window);
  return { channels: [buffer.getChannelData(0), buffer.getChannelData(1)], sampleRate };
}
