import { describe, expect, it } from 'vitest';
import { robustCentre } from '../../src/core/practice/calibration.ts';
import { pairTimes } from '../../src/core/practice/pairTimes.ts';
import { createOnsetStream, findOnsets } from '../../src/signal/onsetStream.ts';
import { createOnsetStrength, onsetFraming, pickOnsets } from '../../src/signal/onsets.ts';
import { seededRandom } from '../support/random.ts';
import { noiseOf, type StruckTone, struckTones } from '../support/tones.ts';

const RATES = [44100, 48000, 16000];

/** Two tones every 300 ms or so, from soft to loud, low and high, the old ones still sounding. */
function melody(count: number): StruckTone[] {
  const random = seededRandom(3);
  return Array.from({ length: count }, (_, i) => ({
    atSec: 0.5 + 0.3 * i + 0.02 * random.normal(),
    freqHz: 80 * 2 ** (3 * random.uniform()),
    amplitude: 0.03 + 0.3 * random.uniform(),
  }));
}

/** Onsets without the one that noise has where it begins. */
function afterBeginning(onsets: readonly number[]): number[] {
  return onsets.filter((sec) => sec > 0.1);
}

describe.each(RATES)('at %i samples a second', (sampleRate) => {
  it('every struck tone is one onset, within 10 ms of its place beside the others', () => {
    const tones = melody(25);
    const truth = tones.map((tone) => tone.atSec);
    const found = afterBeginning(findOnsets(struckTones(tones, 9, sampleRate), sampleRate));
    const pairs = pairTimes(truth, found, 0.05);
    expect(pairs.length / Math.max(truth.length, found.length)).toBeGreaterThan(0.98);
    // A tone of sudden attack is found somewhat before a piano's, for which the stream is set.
    const latenessSec = pairs.map((p) => found[p.played]! - truth[p.expected]!);
    const centreSec = robustCentre(latenessSec);
    expect(Math.abs(centreSec)).toBeLessThan(0.01);
    expect(Math.max(...latenessSec.map((sec) => Math.abs(sec - centreSec)))).toBeLessThan(0.01);
  });

  it('a steady tone has no onset but its first, and silence has none', () => {
    const held = { atSec: 0.5, freqHz: 220, amplitude: 0.3 };
    expect(findOnsets(struckTones([held], 4, sampleRate, 0), sampleRate)).toHaveLength(1);
    expect(findOnsets(new Float32Array(3 * sampleRate), sampleRate)).toEqual([]);
  });
});

describe('onsets of noise', () => {
  it.each([0.0003, 0.003, 0.03])('of %d rms there are none after its beginning', (rms) => {
    expect(afterBeginning(findOnsets(noiseOf(rms, 12, 44100), 44100))).toEqual([]);
  });
});

describe('an onset stream', () => {
  const tones = melody(12);
  const sound = struckTones(tones, 5, 44100);

  it('finds the same onsets however the sound is cut', () => {
    const whole = createOnsetStream(44100)(sound, 10);
    for (const length of [128, 441, 5000]) {
      const listen = createOnsetStream(44100);
      const found: number[] = [];
      for (let from = 0; from < sound.length; from += length)
        found.push(...listen(sound.slice(from, from + length), 10 + from / 44100));
      expect(found).toHaveLength(whole.length);
      found.forEach((sec, i) => expect(sec).toBeCloseTo(whole[i]!, 6));
    }
  });

  it('stamps onsets with the time of the pieces', () => {
    const [atTen, atZero] = [10, 0].map((sec) => createOnsetStream(44100)(sound, sec));
    atTen!.forEach((sec, i) => expect(sec - 10).toBeCloseTo(atZero![i]!, 6));
  });

  it('tells an onset within 100 ms', () => {
    const listen = createOnsetStream(44100);
    const one = struckTones([{ atSec: 1, freqHz: 220, amplitude: 0.3 }], 2, 44100);
    const told: number[] = [];
    for (let from = 0; from < one.length; from += 441)
      if (listen(one.slice(from, from + 441), from / 44100).length > 0)
        told.push((from + 441) / 44100);
    expect(told).toHaveLength(1);
    expect(told[0]).toBeLessThan(1.1);
  });

  it('starts anew where the sound is torn, without an onset made of the tear', () => {
    const listen = createOnsetStream(44100);
    const held = struckTones([{ atSec: 0, freqHz: 220, amplitude: 0.3 }], 2, 44100, 0);
    listen(held.slice(0, 22050), 0);
    expect(listen(held.slice(44100), 1)).toEqual([]);
  });
});

describe('onset strength', () => {
  const framing = onsetFraming(44100);

  it('is the rise since 40 ms before and does not know the level', () => {
    const frames = Array.from({ length: 20 }, (_, i) =>
      new Float32Array(2049).fill(i < 12 ? 0.02 : 0.08),
    );
    const strengthsAt = (gain: number) => {
      const strength = createOnsetStrength(framing);
      return frames.map((frame) => strength(frame.map((m) => gain * m)));
    };
    const strengths = strengthsAt(1);
    // COMPRESSION × 0.02 / 0.08 = 37.5 before the rise, 150 after it.
    const rise = Math.log1p(150) - Math.log1p(37.5);
    expect(strengths.slice(0, 8).every((s) => s === undefined)).toBe(true);
    expect(strengths.slice(8, 12)).toEqual([0, 0, 0, 0]);
    for (const strength of strengths.slice(12)) expect(strength).toBeCloseTo(rise, 5);
    strengthsAt(10)
      .slice(8)
      .forEach((strength, i) => expect(strength).toBeCloseTo(strengths[i + 8]!, 5));
  });
});

/** Four hundred strengths, low but for peaks at some places that rise and fall over four frames. */
function peaks(places: readonly number[], height = 1): number[] {
  return Array.from({ length: 400 }, (_, i) =>
    Math.max(0.01, ...places.map((place) => height * Math.max(0, 1 - Math.abs(i - place) / 4))),
  );
}

describe('picking onsets', () => {
  it('finds where each peak rises past seven tenths of its height', () => {
    // Peaks at frames 100 and 200 rise by a quarter a frame: 0.7 is 1.2 frames before the top.
    const found = pickOnsets(peaks([100, 200]), 200);
    expect(found.map((sec) => sec * 200)).toEqual([
      expect.closeTo(98.8, 9),
      expect.closeTo(198.8, 9),
    ]);
  });

  it('finds a peak at the very end, and nothing in what is even', () => {
    expect(pickOnsets(peaks([397]), 200)).toHaveLength(1);
    expect(pickOnsets(Array(300).fill(0.5), 200)).toEqual([]);
    expect(pickOnsets([], 200)).toEqual([]);
  });

  it('leaves out a peak in the shadow of a far higher one', () => {
    const both = peaks([100]).map((s, i) => Math.max(s, peaks([140], 0.045)[i]!));
    expect(pickOnsets(both, 200)).toHaveLength(1);
  });
});
