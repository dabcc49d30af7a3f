import type { Seconds } from '../core/time/ticks.ts';
import { HIGHEST_PLACE_KEY, LOWEST_PLACE_KEY, type LowPitches, levelOfKey } from './lowPitches.ts';

/** Keys that a sight has a level for. */
const SIGHT_KEYS = HIGHEST_PLACE_KEY - LOWEST_PLACE_KEY + 1;

/** Levels by key after an attack and before it. */
export type LowSight = { readonly after: Float32Array; readonly before: Float32Array };

/** When after an attack its pitch is looked at, as middles of frames; and how long before. */
const AFTER_SEC = { from: 0.05, to: 0.15 } as const;
const BEFORE_SEC: Seconds = 0.09;

/** The next attack is kept out of sight by so much. */
const CLEAR_SEC: Seconds = 0.04;

/** What sounds low after and before each of some attacks, ascending times. */
export function bassSights(pitches: LowPitches, secs: readonly Seconds[]): LowSight[] {
  return secs.map((sec, i) => {
    const next = secs[i + 1] ?? Number.POSITIVE_INFINITY;
    const first = Math.round((sec + AFTER_SEC.from) * pitches.frameRate);
    const end = Math.min(sec + AFTER_SEC.to, next - CLEAR_SEC);
    const last = Math.max(first, Math.round(end * pitches.frameRate));
    const before = Math.round((sec - BEFORE_SEC) * pitches.frameRate);
    return { after: keyLevels(pitches, first, last), before: keyLevels(pitches, before, before) };
  });
}

/** The mean level of each key over some frames, both included; 0 outside the sound. */
function keyLevels(pitches: LowPitches, first: number, last: number): Float32Array {
  const out = new Float32Array(SIGHT_KEYS);
  for (let frame = first; frame <= last; frame++)
    for (let k = 0; k < SIGHT_KEYS; k++)
      out[k]! += levelOfKey(pitches, frame, LOWEST_PLACE_KEY + k) / (last - first + 1);
  return out;
}

/** Keys that a bass note may have: from the C below a four-string bass to middle C. */
export const BASS_KEYS = { lowest: 24, highest: 60 } as const;

/** The first eight partials in semitones above the first, to the nearest key. */
const PARTIALS = [0, 12, 19, 24, 28, 31, 34, 36] as const;

/** Of so many partials it counts how much they rise and stand out. */
const CLEAR_PARTIALS = 6;

/** The middle of a bass's range, which keys are measured from, in octaves. */
const MIDDLE_KEY = 38;

/**
 * What speaks for a key as the bass note of a sight: the levels of its partials (harmonic summation:
 * Klapuri 2006, with weights that are fitted), how much they rose, how far they stand over the
 * semitones beside them; the same for the octave below and for partials that only a lower note would
 * have; how much sounds below it; where it lies in the range.
 */
export function pitchSigns({ after, before }: LowSight, key: number): number[] {
  const level = (offset: number) => after[key + offset - LOWEST_PLACE_KEY] ?? 0;
  const rise = (offset: number) =>
    Math.max(0, level(offset) - (before[key + offset - LOWEST_PLACE_KEY] ?? 0));
  const clear = (offset: number) => level(offset) - Math.max(level(offset - 1), level(offset + 1));
  const low = PARTIALS.slice(0, CLEAR_PARTIALS);
  const octaves = (key - MIDDLE_KEY) / 12;
  let below = 0;
  for (let k = LOWEST_PLACE_KEY; k <= key - 2; k++) below += after[k - LOWEST_PLACE_KEY]!;
  return [
    ...PARTIALS.map(level),
    ...low.map(rise),
    ...low.map(clear),
    level(-12),
    clear(-12),
    clear(7),
    clear(-5),
    clear(16),
    below / 20,
    octaves,
    octaves * octaves,
  ];
}
