import type { AudioData } from '../../src/core/audioData.ts';
import type { Part, TimedNote } from '../../src/core/rhythm/note.ts';
import type { Seconds } from '../../src/core/time/ticks.ts';

/** A note of middle C, a quarter of a second long, with what `parts` says instead. */
export function timedNote(
  part: Part,
  startSec: Seconds,
  parts: Partial<TimedNote> = {},
): TimedNote {
  return { part, keyNumber: 60, velocity: 80, startSec, durationSec: 0.25, ...parts };
}

/** The highest absolute sample of all channels. */
export function highestSample(audio: AudioData): number {
  return envelopeOf(audio).reduce((most, x) => Math.max(most, x), 0);
}

/** Per sample, the highest absolute value of any channel. */
export function envelopeOf(audio: AudioData): Float32Array {
  const [first = new Float32Array(), ...others] = audio.channels;
  return first.map((x, i) =>
    others.reduce((most, channel) => Math.max(most, Math.abs(channel[i]!)), Math.abs(x)),
  );
}

/** The largest jump from one sample to the next, in samples `from` to `to` of one channel. */
export function largestStep(samples: Float32Array, from: number, to: number): number {
  let largest = 0;
  for (let i = Math.max(from, 1); i < Math.min(to, samples.length); i++)
    largest = Math.max(largest, Math.abs(samples[i]! - samples[i - 1]!));
  return largest;
}

/**
 * Where sound begins: every sample that exceeds `floor` after at least `quietSamples` that do not
 * (or after the beginning).
 */
export function attacksOf(samples: Float32Array, floor = 0, quietSamples = 200): number[] {
  const attacks: number[] = [];
  let lastLoud = Number.NEGATIVE_INFINITY;
  samples.forEach((sample, i) => {
    if (Math.abs(sample) <= floor) return;
    if (i - lastLoud > quietSamples) attacks.push(i);
    lastLoud = i;
  });
  return attacks;
}

/** A sound less another of the same length, channel by channel. */
export function difference(sound: AudioData, other: AudioData): AudioData {
  const channels = sound.channels.map((channel, c) =>
    channel.map((sample, i) => sample - other.channels[c]![i]!),
  );
  return { channels, sampleRate: sound.sampleRate };
}

/** The greatest distance between attacks and the samples where they should be; infinite if their numbers differ. */
export function worstMiss(attacks: readonly number[], expected: readonly number[]): number {
  if (attacks.length !== expected.length) return Number.POSITIVE_INFINITY;
  return expected.reduce((worst, at, i) => Math.max(worst, Math.abs(attacks[i]! - at)), 0);
}
