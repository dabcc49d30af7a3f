import { describe, expect, it } from 'vitest';
import { NOTE_RANGE, noteSalience } from '../../src/signal/noteSalience.ts';
import { PITCH_BINS, pitchSpectrum } from '../../src/signal/pitchSpectrum.ts';

const RATE_HZ = 22050;

/** Three seconds of notes with eight overtones each, all tuned so many cents high. */
function notes(keyNumbers: readonly number[], cents = 0): Float32Array {
  return Float32Array.from({ length: 3 * RATE_HZ }, (_, i) => {
    let sum = 0;
    for (const key of keyNumbers)
      for (let n = 1; n <= 8; n++)
        sum +=
          0.1 *
          0.7 ** n *
          Math.sin((2 * Math.PI * i * n * 440 * 2 ** ((key - 69 + cents / 100) / 12)) / RATE_HZ);
    return sum;
  });
}

function spectrumOf(samples: Float32Array) {
  return pitchSpectrum({ samples, sampleRateHz: RATE_HZ });
}

describe('a sound by pitch', () => {
  it.each([-40, -13, 0, 25, 40])('knows that it is tuned %i cents off', (cents) =>
    expect(spectrumOf(notes([48, 60, 64, 67], cents)).tuningCents).toBeCloseTo(cents, -0.7),
  );

  it.each([[[60, 64, 67]], [[55, 58, 62, 65]], [[52, 59, 67]]])(
    'shows the notes that sound, not their overtones: %j',
    (keys) => {
      const { levels, frameCount } = spectrumOf(notes(keys, 20));
      const middle = (frameCount >> 1) * PITCH_BINS;
      const salience = noteSalience(levels.subarray(middle, middle + PITCH_BINS));
      const strongest = [...salience.keys()]
        .toSorted((a, b) => salience[b]! - salience[a]!)
        .slice(0, keys.length)
        .map((note) => note + NOTE_RANGE.lowest);
      expect(strongest.toSorted((a, b) => a - b)).toEqual(keys);
    },
  );

  it('has nothing in silence, and no frames without samples', () => {
    const silent = spectrumOf(new Float32Array(RATE_HZ));
    expect(silent.tuningCents).toBe(0);
    expect(silent.levels.every((level) => level === 0)).toBe(true);
    expect(spectrumOf(new Float32Array()).frameCount).toBe(0);
  });
});
