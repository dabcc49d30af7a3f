import { expect, it } from 'vitest';
import { repeatedParts } from '../../../src/core/song/repeatedParts.ts';

/** The parts of bars written as letters, equal letters the same bar. */
function partsOf(text: string): string {
  const bars = text.replaceAll(' ', '').split('');
  return repeatedParts(bars.length, (a, b) => (bars[a] === bars[b] ? 1 : 0))
    .map(({ label, bars: count }) => `${'ABCDEFGH'[label]}${count}`)
    .join(' ');
}

it.each([
  ['abcdefgh ijklmnop abcdefgh', 'A8 B8 A8'],
  ['abcdefgh abcdefgh ijklmnop abcdefgh', 'A8 A8 B8 A8'],
  ['wxyz abcdefgh ijklmnop abcdefgh ijklmnop', 'A4 B8 C8 B8 C8'],
  ['abcdefghijkl mnop abcdefghijkl', 'A12 B4 A12'],
])('finds in %s the parts %s', (bars, parts) => expect(partsOf(bars)).toBe(parts));

it('says little of music that never comes again', () => {
  const labels = repeatedParts(16, (a, b) => (a === b ? 1 : 0)).map(({ label }) => label);
  expect(new Set(labels).size).toBe(labels.length);
});

it('takes a part with one bar changed for the same again', () =>
  expect(partsOf('abcdefgh ijklmnop abcdefgx')).toBe('A8 B8 A8'));

it('has no parts without bars', () => expect(repeatedParts(0, () => 1)).toEqual([]));
