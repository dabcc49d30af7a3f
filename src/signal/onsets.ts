import type { Seconds } from '../core/time/ticks.ts';
import { transformSize } from './spectrum.ts';

/** Frames that onset detection looks at: 85 ms long, a new one every 5 ms. */
export type OnsetFraming = {
  readonly frameSamples: number;
  readonly hopSamples: number;
  /** Frames a second. */
  readonly frameRate: number;
  /** Bins from `lowBin` to before `highBin` count: 80 to 4000 Hz, where attacks stand out from hum and hiss. */
  readonly lowBin: number;
  readonly highBin: number;
};

const FRAME_SEC: Seconds = 0.085;
const HOP_SEC: Seconds = 0.005;
const LOW_HZ = 80;
const HIGH_HZ = 4000;

/** See `OnsetFraming`; for sample rates from 8000 to 192000. */
export function onsetFraming(sampleRate: number): OnsetFraming {
  const frameSamples = Math.round(FRAME_SEC * sampleRate);
  const hopSamples = Math.round(HOP_SEC * sampleRate);
  const bins = transformSize(frameSamples);
  const binOf = (hz: number) => Math.round((hz * bins) / sampleRate);
  return {
    frameSamples,
    hopSamples,
    frameRate: sampleRate / hopSamples,
    lowBin: binOf(LOW_HZ),
    highBin: Math.min(binOf(HIGH_HZ), bins / 2),
  };
}

/** A frame is compared with the one so long before, so that the whole of an attack lies between them. */
const RISE_SEC: Seconds = 0.04;

/**
 * Magnitudes are taken as log(1 + COMPRESSION × magnitude / loudest): a partial that is 44 dB below
 * the loudest one of late counts about as much for its rise as the loudest itself.
 */
const COMPRESSION = 150;

/** The loudest magnitude of late is never taken for less, so that silence stays silent. */
const QUIETEST = 0.01;

/** How fast the loudest magnitude is forgotten: to a half in so long. */
const LOUDEST_HALVES_SEC: Seconds = 10;

/**
 * Makes a function that takes the magnitudes of one frame after another and gives each frame's onset
 * strength: the mean rise of the compressed magnitudes since 40 ms before (spectral flux, Dixon
 * 2006; compression as in Bello and others 2005 and Böck and Widmer 2013). 0 or more, no unit;
 * undefined for the first 40 ms. It does not depend on the level unless it is very low.
 */
export function createOnsetStrength(
  framing: Pick<OnsetFraming, 'frameRate' | 'lowBin' | 'highBin'>,
): (magnitudes: Float32Array) => number | undefined {
  const { frameRate, lowBin, highBin } = framing;
  const lag = Math.round(RISE_SEC * frameRate);
  const halving = 0.5 ** (1 / (LOUDEST_HALVES_SEC * frameRate));
  const before: Float32Array[] = [];
  let loudest = QUIETEST;
  return (magnitudes) => {
    const now = magnitudes.slice(lowBin, highBin);
    loudest = Math.max(
      now.reduce((most, m) => Math.max(most, m), 0),
      loudest * halving,
      QUIETEST,
    );
    before.push(now);
    if (before.length <= lag) return undefined;
    const then = before.shift()!;
    const scale = COMPRESSION / loudest;
    let rise = 0;
    for (let i = 0; i < now.length; i++)
      rise += Math.max(0, Math.log1p(scale * now[i]!) - Math.log1p(scale * then[i]!));
    return rise / now.length;
  };
}

/**
 * What makes a peak of onset strength an onset. Times in seconds, the rest as strengths or shares of
 * them. Found by trial with the sampled piano from ghost notes to accents, and with noise alone.
 */
const PICKING = {
  /** Nothing is higher so long before and after. */
  highestSec: 0.03,
  /** It rises over the median from so long before to `highestSec` after, by share and by amount. */
  medianSec: 0.1,
  overMedian: 1.4,
  above: 0.01,
  /** It is more than a share of the highest peak of late, which is forgotten to a half in so long. */
  ofHighest: 0.05,
  highestHalvesSec: 3,
  /** The onset is where the strength rises past this share of the peak. */
  risen: 0.7,
} as const;

/**
 * Makes a function that takes one onset strength after another and gives the place of an onset that
 * is sure now (30 ms after its peak), in frames from the first one, not whole. Peaks are picked as
 * in Dixon 2006 with the threshold of Bello and others 2005: higher than their surroundings, than
 * the median and than a share of the peaks before. What was before the first strength is taken to be
 * like it.
 */
export function createOnsetPicker(frameRate: number): (strength: number) => number | undefined {
  const reach = Math.round(PICKING.highestSec * frameRate);
  const memory = Math.round(PICKING.medianSec * frameRate);
  const halving = 0.5 ** (1 / (PICKING.highestHalvesSec * frameRate));
  const recent: number[] = [];
  let highest = 0;
  let frame = -1;
  return (strength) => {
    frame++;
    if (frame === 0) recent.push(...Array.from({ length: memory + reach }, () => strength));
    recent.push(strength);
    if (recent.length > memory + reach + 1) recent.shift();
    const peak = recent[memory]!;
    highest = Math.max(highest * halving, peak);
    const isOnset =
      isHighest(recent, memory, reach) &&
      peak > PICKING.overMedian * medianOf(recent) + PICKING.above &&
      peak > PICKING.ofHighest * highest;
    return isOnset ? frame - reach - memory + risingPlace(recent, memory) : undefined;
  };
}

/** Of equal strengths the first is the highest. */
function isHighest(strengths: readonly number[], place: number, reach: number): boolean {
  const peak = strengths[place]!;
  for (let i = 1; i <= reach; i++)
    if (strengths[place - i]! >= peak || strengths[place + i]! > peak) return false;
  return true;
}

function medianOf(values: readonly number[]): number {
  return values.toSorted((a, b) => a - b)[values.length >> 1]!;
}

/** Where the strength rises past its share of the peak, between two frames. */
function risingPlace(strengths: readonly number[], peak: number): number {
  const level = PICKING.risen * strengths[peak]!;
  let below = peak - 1;
  while (below > 0 && strengths[below]! > level) below--;
  const rise = strengths[below + 1]! - strengths[below]!;
  return rise > 0 ? below + (level - strengths[below]!) / rise : below;
}

/** The onsets of a row of onset strengths, in seconds after the first frame, ascending: see `createOnsetPicker`. */
export function pickOnsets(strengths: ArrayLike<number>, frameRate: number): Seconds[] {
  const pick = createOnsetPicker(frameRate);
  const after = Array.from({ length: Math.round(PICKING.highestSec * frameRate) }, () => 0);
  return [...Array.from(strengths), ...after]
    .map(pick)
    .flatMap((place) => (place === undefined ? [] : [place / frameRate]));
}
