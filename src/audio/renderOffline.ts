import type { AudioData } from '../core/audioData.ts';
import type { TimedNote } from '../core/rhythm/note.ts';
import type { Seconds } from '../core/time/ticks.ts';
import { FULL_LEVELS, type Levels } from './mix.ts';
import {
  type FramedNote,
  framedNotes,
  QUANTUM_FRAMES,
  renderWindow,
  soundsFor,
} from './offlineWindow.ts';
import { carriedNotes, notesSoundingOn } from './soundingOn.ts';

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

const TAIL_SEC: Seconds = 2;

/** Usual length of a stretch: 10 MB of samples, and long beside the sound that is carried over. */
export const STRETCH_SEC: Seconds = 30;

/** All that is to be rendered, laid out on frames. */
type Layout = {
  readonly notes: readonly FramedNote[];
  readonly frames: number;
  readonly sampleRate: number;
  readonly levels: Levels;
};

function lastEnd(notes: readonly TimedNote[], startSec: Seconds): Seconds {
  return notes.reduce((end, n) => Math.max(end, n.startSec + n.durationSec), startSec);
}

function layoutOf(notes: readonly TimedNote[], options: RenderOptions): Layout {
  const { sampleRate = 44100, levels = FULL_LEVELS, tailSec = TAIL_SEC } = options;
  const sorted = notes.toSorted((a, b) => a.startSec - b.startSec);
  const startSec = options.startSec ?? Math.min(0, sorted[0]?.startSec ?? 0);
  const durationSec = options.durationSec ?? lastEnd(notes, startSec) - startSec + tailSec;
  const heard = sorted.filter((n) => n.startSec >= startSec && n.startSec < startSec + durationSec);
  return {
    notes: framedNotes(heard, startSec, sampleRate),
    frames: Math.max(1, Math.ceil(durationSec * sampleRate)),
    sampleRate,
    levels,
  };
}

function soundsOf({ notes, sampleRate }: Layout) {
  return soundsFor(
    notes.map(({ note }) => note),
    sampleRate,
  );
}

/**
 * Renders notes to sound with the instruments that play live, in a context of its own; nothing is
 * heard. Every attack stands at its note's `startSec` minus the result's start, to the nearest
 * sample; before the first one the result is exactly silent. `notes` in any order; those that start
 * before `options.startSec`, or at or after the result's end, are left out, and what sounds beyond
 * the end is cut off. Without notes the result is silence as long as `durationSec` or the tail.
 * Two channels; no sample exceeds `LIMITER_CEILING`. Five minutes of a dense song take some
 * seconds, and about 0.4 MB a second: what may be long is for `renderStretches`. Rejects if a sound
 * file of the app cannot be fetched, or when `options.signal` gives it up.
 */
export async function renderOffline(
  notes: readonly TimedNote[],
  options: RenderOptions = {},
): Promise<AudioData> {
  const layout = layoutOf(notes, options);
  return renderWindow(layout.notes, await soundsOf(layout), {
    ...options,
    ...layout,
    fromFrame: 0,
    toFrame: layout.frames,
  });
}

/**
 * What `renderOffline` renders, handed over piece by piece in order, so that its length does not
 * matter to memory: every piece is `stretchSec` long (a multiple of 128 samples), the last shorter.
 * Where a piece begins, what was struck before and still sounds is computed from its strike on, so
 * that the pieces put together are the whole, up to the rounding of sums (−120 dB). A promise that `take` gives is
 * waited for. Rejects where `renderOffline` does, or where `take` throws.
 */
export async function renderStretches(
  notes: readonly TimedNote[],
  take: (stretch: AudioData) => void | Promise<void>,
  { stretchSec = STRETCH_SEC, ...options }: RenderOptions & { readonly stretchSec?: Seconds } = {},
): Promise<void> {
  const layout = layoutOf(notes, options);
  const sounds = await soundsOf(layout);
  const { frames, sampleRate } = layout;
  const sounding = notesSoundingOn(layout.notes, sounds, sampleRate);
  const stretch =
    Math.max(1, Math.round((stretchSec * sampleRate) / QUANTUM_FRAMES)) * QUANTUM_FRAMES;
  for (let from = 0; from < frames; from += stretch) {
    const to = Math.min(from + stretch, frames);
    const carried = carriedNotes(sounding, from);
    const own = sounding.filter(({ atFrame }) => atFrame >= from && atFrame < to);
    const firstFrame = carried[0]?.atFrame ?? from;
    const fromFrame = Math.floor(firstFrame / QUANTUM_FRAMES) * QUANTUM_FRAMES;
    const audio = await renderWindow([...carried, ...own], sounds, {
      ...layout,
      fromFrame,
      toFrame: to,
      ...(options.signal && { signal: options.signal }),
      onProgress: (share) => options.onProgress?.((from + share * (to - from)) / frames),
    });
    const channels = audio.channels.map((channel) => channel.subarray(from - fromFrame));
    await take({ channels, sampleRate });
  }
}
