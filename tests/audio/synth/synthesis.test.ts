import { describe, expect, it } from 'vitest';
import { peakOf } from '../../../src/audio/attack.ts';
import { clickBurst } from '../../../src/audio/synth/clickBurst.ts';
import { drumSamples } from '../../../src/audio/synth/drumSound.ts';
import { KIT } from '../../../src/audio/synth/drumSounds.ts';
import { BASS_SOUND, overtoneTone, SUNG_SOUND } from '../../../src/audio/synth/overtones.ts';
import { pluckedString } from '../../../src/audio/synth/pluckedString.ts';
import { whiteNoise } from '../../../src/audio/synth/whiteNoise.ts';

const RATES = [44100, 48000];

/** Strength of one frequency in a sound, by correlation with it over the given samples. */
function strengthAt(samples: Float32Array, freqHz: number, sampleRate: number): number {
  let [re, im] = [0, 0];
  samples.forEach((x, i) => {
    const window = Math.sin((Math.PI * (i + 0.5)) / samples.length) ** 2;
    re += window * x * Math.cos((2 * Math.PI * freqHz * i) / sampleRate);
    im += window * x * Math.sin((2 * Math.PI * freqHz * i) / sampleRate);
  });
  return Math.hypot(re, im) / samples.length;
}

/** How far, in cents, the strongest frequency within 20 cents of `freqHz` is from it. */
function detuneCents(samples: Float32Array, freqHz: number, sampleRate: number): number {
  const heard = samples.subarray(0, sampleRate);
  const cents = Array.from({ length: 41 }, (_, i) => i - 20);
  const strengths = cents.map((c) => strengthAt(heard, freqHz * 2 ** (c / 1200), sampleRate));
  return cents[strengths.indexOf(Math.max(...strengths))]!;
}

describe.each(RATES)('at %i samples a second', (sampleRate) => {
  it.each([82.41, 196, 440, 987.77])('a string of %d Hz is in tune to 2 cents', (freqHz) => {
    const detune = detuneCents(pluckedString(freqHz, sampleRate), freqHz, sampleRate);
    expect(Math.abs(detune)).toBeLessThanOrEqual(2);
  });

  it.each([41.2, 98, 220])('a bass note and a sung tone of %d Hz are in tune', (freqHz) => {
    for (const sound of [BASS_SOUND, SUNG_SOUND])
      expect(detuneCents(overtoneTone(sound, freqHz, sampleRate), freqHz, sampleRate)).toBe(0);
  });

  it('every drum and tone begins with its first sample and stays finite', () => {
    const sounds = [
      ...KIT.map((drum) => drumSamples(drum.sound, sampleRate)),
      ...[40, 400, 1500].map((freqHz) => pluckedString(freqHz, sampleRate)),
      ...[40, 400, 1500].map((freqHz) => overtoneTone(SUNG_SOUND, freqHz, sampleRate)),
    ];
    expect(sounds.filter((samples) => samples[0] === 0)).toEqual([]);
    expect(sounds.every((samples) => Number.isFinite(peakOf([samples])))).toBe(true);
  });

  it('a click is 4 ms long, highest at its first sample, and gone at its last', () => {
    const click = clickBurst(3000, sampleRate);
    expect(click.length).toBe(Math.round(0.004 * sampleRate));
    expect(click[0]).toBe(1);
    expect(peakOf([click])).toBe(1);
    expect(Math.abs(click.at(-1)!)).toBeLessThan(1e-3);
  });
});

it('a plucked string dies away', () => {
  const string = pluckedString(220, 48000);
  const early = peakOf([string.subarray(0, 4800)]);
  expect(peakOf([string.subarray(2.5 * 48000)])).toBeLessThan(early / 50);
});

it('drums die away before they are cut off', () => {
  const loud = KIT.filter(({ sound }) => {
    const samples = drumSamples(sound, 48000);
    return peakOf([samples.subarray(-480)]) > peakOf([samples]) / 30;
  });
  expect(loud.map((drum) => drum.name)).toEqual([]);
});

it('noise of one seed is always the same, even, and other than that of another seed', () => {
  const [noise, again, other] = [1, 1, 2].map((seed) =>
    Array.from({ length: 10000 }, whiteNoise(seed)),
  );
  expect(again).toEqual(noise);
  expect(other).not.toEqual(noise);
  expect(noise!.every((x) => x >= -1 && x < 1)).toBe(true);
  expect(Math.abs(noise!.reduce((sum, x) => sum + x, 0) / 10000)).toBeLessThan(0.03);
});
