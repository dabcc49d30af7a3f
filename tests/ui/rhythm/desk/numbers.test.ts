import { expect, it } from 'vitest';
import type { Pattern } from '../../../../src/core/rhythm/pattern.ts';
import { patternNumbers } from '../../../../src/ui/rhythm/desk/numbers.ts';
import { pattern, source } from '../../../support/patterns.ts';

function numberOf(p: Pattern, name: string) {
  return patternNumbers(p).find((number) => number.name === name);
}

it('syncopation is nothing on the beats and much off them', () => {
  expect(numberOf(pattern('4/4', { left: 'R...R...' }), 'Syncopation')?.value).toBe('0');
  const off = numberOf(pattern('4/4', { right: '.C.C.C.C' }), 'Syncopation');
  expect(Number(off?.value)).toBeGreaterThan(4);
  expect(off?.means).toContain('left hand 0');
});

it('density counts the strikes of both hands to a beat', () =>
  expect(
    numberOf(pattern('4/4', { left: 'R.......', right: 'C.C.C.C.' }), 'Density'),
  ).toMatchObject({
    value: '1.25',
    means: 'Strikes to a beat: 1 in the right hand, 0.25 in the left.',
  }));

it('density is rounded as a whole, not hand by hand', () => {
  const sixBeats = pattern('3/4', { left: 'RRRRRRR.....', right: 'C...........' });
  const thirds = { ...sixBeats, bars: 2 };
  expect(numberOf(thirds, 'Density')?.value).toBe('1.33');
});

it.each([
  ['RRR.', 'C...', 'left', 'The left hand strikes more often, 3 strikes to 1; listen to it first.'],
  [
    'R...',
    'CC..',
    'right',
    'The right hand strikes more often, 2 strikes to 1; listen to it first.',
  ],
  ['R.R.', '.C.C', 'both', 'Both hands strike equally often.'],
])('of %s and %s the leading hand is %s', (left, right, value, means) =>
  expect(numberOf(pattern('4/4', { left, right }), 'Leading hand')).toMatchObject({ value, means }),
);

it('swing is a ratio, with what it does', () => {
  const straight = pattern('4/4', { left: 'R...' });
  const swung = { ...straight, swing: { level: 'eighth', ratio: 2 } } as const;
  expect(numberOf(straight, 'Swing')?.means).toBe('Straight: both eighths of a pair last alike.');
  expect(numberOf(swung, 'Swing')).toMatchObject({
    value: '2 : 1',
    means: 'The first eighth of a pair lasts 2 times as long as the second.',
  });
});

it('coverage names what the hands miss most', () => {
  const hands = pattern('4/4', { left: 'R...R...' });
  const banded = { ...hands, sources: [source(hands, 'kick', 'x...x.x.')] };
  const carried = numberOf(banded, 'Carries the band');
  expect(carried?.value).toBe('67 %');
  expect(carried?.means).toContain('Missed most: kick on beat 4');
  expect(numberOf(hands, 'Carries the band')?.value).toBe('–');
});

it('coverage is whole where the hands strike with all of the band', () => {
  const hands = pattern('4/4', { left: 'R...R...' });
  const banded = { ...hands, sources: [source(hands, 'kick', 'x...x...')] };
  expect(numberOf(banded, 'Carries the band')).toMatchObject({
    value: '100 %',
    means: 'The hands strike with everything that the band plays.',
  });
});
