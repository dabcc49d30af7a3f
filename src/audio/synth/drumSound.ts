import type { Seconds } from '../../core/time/ticks.ts';
import { type SampleFilter, secondOrderFilter } from './secondOrderFilter.ts';
import { whiteNoise } from './whiteNoise.ts';

/** A skin or a bar: a sine that glides from one frequency to the other while it falls (1/e in `fallSec`). */
export type DrumTone = {
  readonly fromHz: number;
  readonly toHz: number;
  readonly glideSec: Seconds;
  readonly fallSec: Seconds;
  readonly level: number;
};

/** Wires, air or brushed metal: noise between two corner frequencies; struck once or several times. */
export type DrumNoise = {
  readonly lowHz: number;
  readonly highHz: number;
  readonly fallSec: Seconds;
  readonly level: number;
  readonly strokesAtSec?: readonly Seconds[];
};

/** A cymbal's plate: six square waves whose frequencies have no common measure, above `lowHz`. */
export type DrumMetal = {
  readonly baseHz: number;
  readonly lowHz: number;
  readonly fallSec: Seconds;
  readonly level: number;
};

/** What a drum sounds like: the sum of its tones, noises and metals over `lengthSec`. */
export type DrumSound = {
  readonly lengthSec: Seconds;
  readonly tones?: readonly DrumTone[];
  readonly noises?: readonly DrumNoise[];
  readonly metals?: readonly DrumMetal[];
};

/** Frequencies of a plate's partials against its lowest; no two of them stand in a simple ratio. */
const PLATE_RATIOS = [1, 1.342, 1.523, 1.893, 2.377, 2.914];

function addTone(out: Float32Array, tone: DrumTone, sampleRate: number): void {
  let phase = 0;
  for (let i = 0; i < out.length; i++) {
    const sec = i / sampleRate;
    const hz = tone.toHz + (tone.fromHz - tone.toHz) * Math.exp(-sec / tone.glideSec);
    phase += (2 * Math.PI * hz) / sampleRate;
    out[i]! += tone.level * Math.exp(-sec / tone.fallSec) * Math.sin(phase);
  }
}

function fallSince(strokes: readonly Seconds[], sec: Seconds, fallSec: Seconds): number {
  const last = strokes.findLast((stroke) => stroke <= sec) ?? sec;
  return Math.exp(-(sec - last) / fallSec);
}

function addNoise(out: Float32Array, noise: DrumNoise, sampleRate: number): void {
  const next = whiteNoise(Math.round(noise.lowHz + noise.highHz));
  const cutLow = secondOrderFilter('high-pass', noise.lowHz, sampleRate);
  const cutHigh = secondOrderFilter('low-pass', noise.highHz, sampleRate);
  const strokes = noise.strokesAtSec ?? [0];
  for (let i = 0; i < out.length; i++)
    out[i]! +=
      noise.level * fallSince(strokes, i / sampleRate, noise.fallSec) * cutHigh(cutLow(next()));
}

function plate(baseHz: number, i: number, sampleRate: number): number {
  let sum = 0;
  for (const ratio of PLATE_RATIOS) {
    const turns = (baseHz * ratio * (i + 1)) / sampleRate;
    sum += turns - Math.floor(turns) < 0.5 ? 1 : -1;
  }
  return sum / PLATE_RATIOS.length;
}

function addMetal(out: Float32Array, metal: DrumMetal, sampleRate: number): void {
  const cutLow: SampleFilter = secondOrderFilter('high-pass', metal.lowHz, sampleRate);
  for (let i = 0; i < out.length; i++)
    out[i]! +=
      metal.level *
      Math.exp(-i / (metal.fallSec * sampleRate)) *
      cutLow(plate(metal.baseHz, i, sampleRate));
}

/** The drum as samples; the first is not zero; no fixed loudness. */
export function drumSamples(sound: DrumSound, sampleRate: number): Float32Array<ArrayBuffer> {
  const out = new Float32Array(Math.round(sound.lengthSec * sampleRate));
  for (const tone of sound.tones ?? []) addTone(out, tone, sampleRate);
  for (const noise of sound.noises ?? []) addNoise(out, noise, sampleRate);
  for (const metal of sound.metals ?? []) addMetal(out, metal, sampleRate);
  return out;
}
