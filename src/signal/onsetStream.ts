import type { Seconds } from '../core/time/ticks.ts';
import { createOnsetPicker, createOnsetStrength, onsetFraming } from './onsets.ts';
import { createSpectrum } from './spectrum.ts';

/**
 * By so much the rise of the strength comes before the onset that makes it, since frames see what
 * lies ahead of their middle. Measured with the sampled piano, as the median.
 */
const AHEAD_SEC: Seconds = 0.01;

/** Samples that come later or sooner than this after the ones before are not their continuation. */
const TORN_SEC: Seconds = 0.002;

/**
 * Makes a function that takes sound in pieces of any length, in order, each with the time of its
 * first sample, and gives the onsets that have become sure, about 80 ms after they sounded. Where
 * pieces do not join, it starts anew. Piano notes are found within some milliseconds, two attacks
 * less than about 30 ms apart as one.
 */
export function createOnsetStream(
  sampleRate: number,
): (piece: Float32Array, atSec: Seconds) => Seconds[] {
  const { frameSamples, hopSamples } = onsetFraming(sampleRate);
  let listener = createListener(sampleRate);
  const waiting = new Float32Array(frameSamples);
  let filled = 0;
  let nextSec: Seconds | undefined;

  return (piece, atSec) => {
    if (nextSec !== undefined && Math.abs(atSec - nextSec) > TORN_SEC) {
      listener = createListener(sampleRate);
      filled = 0;
    }
    nextSec = atSec + piece.length / sampleRate;
    const onsets: Seconds[] = [];
    for (let read = 0; read < piece.length; ) {
      const count = Math.min(piece.length - read, frameSamples - filled);
      waiting.set(piece.subarray(read, read + count), filled);
      filled += count;
      read += count;
      if (filled < frameSamples) break;
      const frameSec = atSec + (read - frameSamples / 2) / sampleRate;
      const onsetSec = listener(waiting, frameSec);
      if (onsetSec !== undefined) onsets.push(onsetSec);
      waiting.copyWithin(0, hopSamples);
      filled = frameSamples - hopSamples;
    }
    return onsets;
  };
}

/** Takes frame after frame with the time of its middle, gives the onset that has become sure. */
function createListener(
  sampleRate: number,
): (frame: Float32Array, middleSec: Seconds) => Seconds | undefined {
  const framing = onsetFraming(sampleRate);
  const spectrum = createSpectrum(framing.frameSamples);
  const strength = createOnsetStrength(framing);
  const pick = createOnsetPicker(framing.frameRate);
  let frame = -1;
  return (samples, middleSec) => {
    const rise = strength(spectrum(samples));
    if (rise === undefined) return undefined;
    frame++;
    const place = pick(rise);
    return place === undefined
      ? undefined
      : middleSec - (frame - place) / framing.frameRate + AHEAD_SEC;
  };
}

/**
 * The onsets of a whole sound in seconds from its first sample, ascending, as the stream finds them
 * between silences.
 */
export function findOnsets(samples: Float32Array, sampleRate: number): Seconds[] {
  const silence = new Float32Array(Math.ceil(0.15 * sampleRate));
  const listen = createOnsetStream(sampleRate);
  const quietSec = silence.length / sampleRate;
  return [
    ...listen(silence, -quietSec),
    ...listen(samples, 0),
    ...listen(silence, samples.length / sampleRate),
  ];
}
