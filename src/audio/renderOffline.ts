import type { AudioData } from '../core/audioData.ts';
import type { TimedNote } from '../core/rhythm/note.ts';
import type { Seconds } from '../core/time/ticks.ts';
import { type Instruments, instrumentsOf } from './instruments.ts';
import { loadSounds } from './loadSounds.ts';
import { FULL_LEVELS, type Levels } from './mix.ts';
import { STORED_SOUNDS, type StoredSound } from './soundCatalogue.ts';
import { soundOfNote } from './soundOfNote.ts';

/** How to render; everything may be left out. */
export type RenderOptions = {
  /** Samples a second, 8000 to 96000; 44100 if left out. */
  readonly sampleRate?: number;
  /** All fully up if left out. */
  readonly levels?: Levels;
  /** Time of the notes that becomes sample 0; if left out 0, or the first note's start if that is earlier. */
  readonly startSec?: Seconds;
  /** Time after the last note's end for its sound to die away; 2 s if left out. */
  readonly tailSec?: Seconds;
  /** Length of the result, instead of as long as the notes and the tail take. */
  readonly durationSec?: Seconds;
  /** Told from time to time which share of the whole is done, above 0 and below 1; never where rendering cannot rest. */
  readonly onProgress?: (share: number) => void;
  /** Gives the rendering up, at its next rest: the promise is rejected with the signal's reason. */
  readonly signal?: AbortSignal;
};

/** So much music is given to the context at a time: thousands of waiting sounds would slow it down. */
const PORTION_SEC: Seconds = 1;

const TAIL_SEC: Seconds = 2;

function soundsFor(notes: readonly TimedNote[]): StoredSound[] {
  const ids = new Set(notes.map((note) => soundOfNote(note).id));
  return STORED_SOUNDS.filter((sound) => ids.has(sound.id));
}

function lastEnd(notes: readonly TimedNote[], startSec: Seconds): Seconds {
  return notes.reduce((end, n) => Math.max(end, n.startSec + n.durationSec), startSec);
}

/** Strikes notes (ascending) at their times after `startSec`, up to a time of the rendering that grows from call to call. */
function strikerOf(
  instruments: Instruments,
  notes: readonly TimedNote[],
  startSec: Seconds,
): (untilSec: Seconds) => void {
  let next = 0;
  return (untilSec) => {
    for (let note = notes[next]; note && note.startSec - startSec < untilSec; note = notes[next]) {
      instruments.strike(note, note.startSec - startSec);
      next++;
    }
  };
}

/** Renders while `strikeUntil` keeps a portion ahead; all is struck at once where rendering cannot rest. */
async function renderInPortions(
  context: OfflineAudioContext,
  strikeUntil: (untilSec: Seconds) => void,
  { onProgress, signal }: RenderOptions,
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
  const rests = Array.from({ length: Math.ceil(endSec / PORTION_SEC) - 1 }, (_, i) =>
    restAt((i + 1) * PORTION_SEC),
  );
  strikeUntil(2 * PORTION_SEC);
  const [buffer] = await Promise.all([context.startRendering(), ...rests]);
  return buffer;
}

/**
 * Renders notes to sound with the instruments that play live, in a context of its own; nothing is
 * heard. Every attack stands at its note's `startSec` minus the result's start, to the nearest
 * sample; before the first one the result is exactly silent. `notes` in any order; those that start
 * before `options.startSec`, or at or after the result's end, are left out, and what sounds beyond
 * the end is cut off. Without notes the result is silence as long as `durationSec` or the tail.
 * Two channels; no sample exceeds `LIMITER_CEILING`. Five minutes of a dense song take some
 * seconds. Rejects if a sound file of the app cannot be fetched, or when `options.signal` gives it up.
 */
export async function renderOffline(
  notes: readonly TimedNote[],
  options: RenderOptions = {},
): Promise<AudioData> {
  const { sampleRate = 44100, levels = FULL_LEVELS, tailSec = TAIL_SEC } = options;
  const sorted = notes.toSorted((a, b) => a.startSec - b.startSec);
  const startSec = options.startSec ?? Math.min(0, sorted[0]?.startSec ?? 0);
  const durationSec = options.durationSec ?? lastEnd(notes, startSec) - startSec + tailSec;
  const heard = sorted.filter((n) => n.startSec >= startSec && n.startSec < startSec + durationSec);
  const length = Math.max(1, Math.ceil(durationSec * sampleRate));
  const context = new OfflineAudioContext(2, length, sampleRate);
  const instruments = instrumentsOf(context, await loadSounds(context, soundsFor(heard)), levels);
  const buffer = await renderInPortions(context, strikerOf(instruments, heard, startSec), options);
  return { channels: [buffer.getChannelData(0), buffer.getChannelData(1)], sampleRate };
}
