import type { MonoRecording } from './heardRecording.ts';

/** The rate at which recordings are listened to: all that is looked for lies below 11 kHz. */
export const LISTENING_RATE_HZ = 22050;

/** Zero crossings of the sinc on either side of its middle. */
const CROSSINGS = 11;

/** Kaiser's β for about 70 dB in the stop band (Kaiser 1974: A ≈ β / 0.1102 + 8.7 dB). */
const KAISER_BETA = 7;

/** Where the pass band ends, as a share of the lower Nyquist frequency; the rest is the filter's slope. */
const PASS_SHARE = 0.93;

/** More phases than this are not kept apart: the nearest one is off by less than 1/2000 of a sample. */
const MOST_PHASES = 1024;

/**
 * A recording at 22 050 Hz, by a polyphase filter: a sinc under a Kaiser window, 11 crossings to
 * each side, cut off at 93 % of the lower of the two Nyquist frequencies. Sample i stands at
 * i / 22 050 s of the recording, without delay; outside it is silence. A recording that has the rate
 * already is given back as it is. Samples that are no numbers count as 0.
 */
export function resample({ samples, sampleRateHz }: MonoRecording): Float32Array {
  if (sampleRateHz === LISTENING_RATE_HZ && samples.every(Number.isFinite)) return samples;
  const phases = phaseCount(sampleRateHz);
  const step = sampleRateHz / LISTENING_RATE_HZ;
  const cutoff = PASS_SHARE * Math.min(1, 1 / step);
  const reach = Math.ceil(CROSSINGS / cutoff);
  const filters = Array.from({ length: phases + 1 }, (_, p) =>
    phaseFilter(p / phases, cutoff, reach),
  );
  const finite = samples.every(Number.isFinite)
    ? samples
    : samples.map((s) => (s - s === 0 ? s : 0));
  const out = new Float32Array(Math.floor((samples.length * LISTENING_RATE_HZ) / sampleRateHz));
  for (let i = 0; i < out.length; i++) {
    const at = (i * sampleRateHz) / LISTENING_RATE_HZ;
    const whole = Math.floor(at);
    out[i] = weighed(finite, whole - reach + 1, filters[Math.round((at - whole) * phases)]!);
  }
  return out;
}

function phaseCount(sampleRateHz: number): number {
  const exact = LISTENING_RATE_HZ / commonDivisor(Math.round(sampleRateHz), LISTENING_RATE_HZ);
  return Number.isInteger(sampleRateHz) && exact <= MOST_PHASES ? exact : MOST_PHASES;
}

function commonDivisor(a: number, b: number): number {
  return b === 0 ? a : commonDivisor(b, a % b);
}

/** Weights of the samples from `reach` − 1 before a place to `reach` after it; the place lies `part` after a sample. */
function phaseFilter(part: number, cutoff: number, reach: number): Float64Array {
  const weights = Float64Array.from({ length: 2 * reach }, (_, i) => {
    const distance = i - reach + 1 - part;
    return sinc(cutoff * distance) * kaiser(distance / reach);
  });
  const sum = weights.reduce((a, b) => a + b, 0);
  return weights.map((weight) => weight / sum);
}

function weighed(samples: Float32Array, from: number, weights: Float64Array): number {
  let sum = 0;
  const first = Math.max(0, -from);
  const end = Math.min(weights.length, samples.length - from);
  for (let i = first; i < end; i++) sum += weights[i]! * samples[from + i]!;
  return sum;
}

function sinc(x: number): number {
  return x === 0 ? 1 : Math.sin(Math.PI * x) / (Math.PI * x);
}

function kaiser(x: number): number {
  return Math.abs(x) >= 1
    ? 0
    : besselI0(KAISER_BETA * Math.sqrt(1 - x * x)) / besselI0(KAISER_BETA);
}

/** The modified Bessel function of order 0 by its power series. */
function besselI0(x: number): number {
  let term = 1;
  let sum = 1;
  for (let k = 1; term > 1e-12 * sum; k++) {
    term *= (x / (2 * k)) ** 2;
    sum += term;
  }
  return sum;
}
