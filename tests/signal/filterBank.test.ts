import { expect, it } from 'vitest';
import { bandFrames, createFilterBank, QUARTER_TONES } from '../../src/signal/filterBank.ts';
import { frameSec, visitFrames } from '../../src/signal/spectrogram.ts';

const FRAMING = { windowSamples: 1024, hopSamples: 220, sampleRateHz: 22050 };

it('has quarter tones from 30 Hz to 11 kHz, each place once', () => {
  const { centresHz } = createFilterBank(FRAMING, QUARTER_TONES);
  expect(centresHz.length).toBeGreaterThan(120);
  expect(centresHz[0]).toBeGreaterThan(30);
  expect(centresHz.at(-1)).toBeLessThan(11000);
  expect([...centresHz]).toEqual([...new Set(centresHz)].toSorted((a, b) => a - b));
  const top = centresHz.length - 1;
  expect(centresHz[top]! / centresHz[top - 24]!).toBeCloseTo(2, 1);
});

it('shows a tone in the band that it lies in', () => {
  const samples = Float32Array.from({ length: 22050 }, (_, i) =>
    Math.sin((2 * Math.PI * 2000 * i) / 22050),
  );
  const { levels, bandCount, centresHz, frameCount } = bandFrames(samples, FRAMING);
  expect(frameCount).toBe(101);
  const row = [...levels.subarray(50 * bandCount, 51 * bandCount)];
  const loudest = centresHz[row.indexOf(Math.max(...row))]!;
  expect(Math.abs(12 * Math.log2(loudest / 2000))).toBeLessThan(0.5);
});

it('centres each frame on its time', () => {
  const samples = new Float32Array(22050);
  samples[11000] = 1;
  const energies: number[] = [];
  visitFrames(samples, FRAMING, (frame, magnitudes) => {
    energies[frame] = magnitudes.reduce((sum, m) => sum + m * m, 0);
  });
  const loudest = energies.indexOf(Math.max(...energies));
  expect(frameSec(loudest, FRAMING)).toBeCloseTo(11000 / 22050, 6);
});

it('hears silence in silence', () => {
  expect(bandFrames(new Float32Array(5000), FRAMING).levels.every((level) => level === 0)).toBe(
    true,
  );
});
