import { expect, it } from 'vitest';
import { createSpectrum } from '../../src/signal/spectrum.ts';

function sine(bin: number, amplitude: number, length: number): Float32Array {
  return Float32Array.from(
    { length },
    (_, i) => amplitude * Math.sin((2 * Math.PI * bin * i) / 1024),
  );
}

it('tells the amplitude of a sine at its bin, half of it beside, nothing elsewhere', () => {
  const magnitudes = createSpectrum(1024)(sine(100, 0.5, 1024));
  expect(magnitudes).toHaveLength(513);
  expect(magnitudes[100]).toBeCloseTo(0.5, 5);
  // The Hann window spreads a bin to its neighbours at a half (computed).
  expect(magnitudes[99]).toBeCloseTo(0.25, 5);
  expect(magnitudes[101]).toBeCloseTo(0.25, 5);
  expect(magnitudes[103]).toBeCloseTo(0, 5);
});

it('looks from a place on', () => {
  const samples = new Float32Array(2048);
  samples.set(sine(40, 1, 1024), 512);
  expect(createSpectrum(1024)(samples, 512)[40]).toBeCloseTo(1, 5);
});

it('has room for frames of any length', () => {
  const magnitudes = createSpectrum(1000)(sine(100, 0.5, 1000));
  expect(magnitudes).toHaveLength(513);
  expect(magnitudes.indexOf(Math.max(...magnitudes))).toBe(100);
  expect(magnitudes[100]).toBeCloseTo(0.5, 2);
});
