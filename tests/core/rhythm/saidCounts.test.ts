import * as fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { parseCounts } from '../../../src/core/rhythm/counts.ts';
import type { Division } from '../../../src/core/rhythm/pattern.ts';
import { barTicks, beatLengths, beatStarts, type Meter } from '../../../src/core/time/meter.ts';
import { withPatternMeter } from '../../../src/state/edits/patternGrid.ts';
import { meter, valueOf } from '../../support/music.ts';
import { pattern } from '../../support/patterns.ts';

/** `x. x. xx x`: the ticks of every x; one word is a felt beat, its letters are the steps; bars stand between `|`. */
function ticksOf(steps: string, m: Meter): number[] {
  return steps.split('|').flatMap((bar, b) =>
    bar
      .trim()
      .split(' ')
      .flatMap((beat, i) =>
        beat.split('').flatMap((step, s) => {
          const into = Math.round((s * beatLengths(m)[i]!) / beat.length);
          return step === 'x' ? [b * barTicks(m) + beatStarts(m)[i]! + into] : [];
        }),
      ),
  );
}

/** What is said, and what sounds; the third, where it is there, how the beats are usually divided. */
type Row = readonly [text: string, steps: string, divisions?: Division | readonly Division[]];

// How players say counts: common practice, docs/sources.md#count-syllables.
const SAID: Readonly<Record<string, readonly Row[]>> = {
  '2/4': [
    ['one two', 'x x'],
    ['one and two and', 'xx xx'],
    ['One-and two-and', 'xx xx'],
    ['1 an 2', 'xx x'],
    ['1 & 2 & 1 & 2 &', 'xx xx | xx xx'],
    ['1, 2, 1, 2', 'x x | x x'],
    ['1 2 2 2', 'x x | x x'],
    ['one (two) one two', 'x . | x x'],
    ['1e&a2e&a', 'xxxx xxxx'],
    ['1 triplet 2', 'xxx x'],
    ['1e&a (2)&a', 'xxxx ..xx'],
    ['(1) & (2) &', '.x .x'],
  ],
  '3/4': [
    ['one two three', 'x x x'],
    ['1-2-3', 'x x x'],
    ['1. 2. 3.', 'x x x'],
    ['1...2...3', 'x x x'],
    ['1 (2) (3)', 'x . .'],
    ['1 [2] 3', 'x . x'],
    ['(one) two three', '. x x'],
    ['1 & 2 & 3 &, 1 2 3', 'xx xx xx | x x x'],
    ['1 2 3 1 2 3', 'x x x | x x x'],
    ['1 2 3 2 2 3', 'x x x | x x x'],
    ['1 2 3 2 2 3 3 2 3 4 2 3', 'x x x | x x x | x x x | x x x'],
    ['123', 'x x x'],
    ['one and a two and a three', 'x.xx x.xx x'],
    ['one triplet two triplet three triplet', 'xxx xxx xxx'],
    ['1 trip-let 2 3', 'xxx x x'],
  ],
  '4/4': [
    ['one two three four', 'x x x x'],
    ['ONE Two three FOUR', 'x x x x'],
    ['1, 2, 3, 4', 'x x x x'],
    ['1,2,3,4', 'x x x x'],
    ['1-2-3-4', 'x x x x'],
    ['1 – 2 — 3 – 4', 'x x x x'],
    ['1. 2. 3. 4.', 'x x x x'],
    ['1… 3…', 'x . x .'],
    ['1234', 'x x x x'],
    ['1+2+3+4+', 'xx xx xx xx'],
    ['1&2&3&4&', 'xx xx xx xx'],
    ['1 an 2 an 3 an 4 an', 'xx xx xx xx'],
    ["1 'n' 2 'n' 3 4", 'xx xx x x'],
    ['1e&a2e&a', 'xxxx xxxx . .'],
    ['1e+a 2e+a 3e+a 4e+a', 'xxxx xxxx xxxx xxxx'],
    ['1 e and a', 'xxxx . . .'],
    ['1-e-&-a 2', 'xxxx x . .'],
    ['one-e-and-a two-e-and-a', 'xxxx xxxx . .'],
    ['oneeanda two', 'xxxx x . .'],
    ['1 ee and uh 3', 'xxxx . x .'],
    ['1 e & da 2', 'xxxx x . .'],
    ['one-and-a two', 'x.xx x . .'],
    ['one-and-a', 'x.xx . . .'],
    ['one-and-a', 'xxx . . .', 3],
    ['1 a 2', 'x..x x . .'],
    ['1a2a', 'x..x x..x . .'],
    ['1 triplet', 'xxx . . .'],
    ['1 triplet 2 triplet 3 4', 'xxx xxx x x'],
    ['1 triplet 2', 'xxx x . .', 2],
    ['1 triplet 2', 'xxx x . .', 4],
    ['1 trip let 2 (trip) let', 'xxx x.x . .'],
    ['1 la-li 2 la-li', 'xxx xxx . .'],
    ['1 lah lee 3', 'xxx . x .'],
    ['1 (2) & 3', 'x .x x .'],
    ['1 [2] & 3', 'x .x x .'],
    ['1 {2} & 3', 'x .x x .'],
    ['1 (2 &) 3 &', 'x . xx .'],
    ['1 (2, [3], & ) 4', 'x . . x'],
    ['(1) 2 (3) 4', '. x . x'],
    ['[1] e & a', '.xxx . . .'],
    ['(one) and two', '.x x . .'],
    ['(1 2) 3 4', '. . x x'],
    ['1 2 3 4 1 2 3 4', 'x x x x | x x x x'],
    ['1 2 3 4, 2 2 3 4', 'x x x x | x x x x'],
    ['1 2 3 4, 2 2 (3) 4', 'x x x x | x x . x'],
    ['1 2 3 4 | 2 2 3 4', 'x x x x | x x x x'],
    ['one two three four two two three four', 'x x x x | x x x x'],
    ['1 & 3 & 1 & 3 &', 'xx . xx . | xx . xx .'],
    ['1 2 1 2', 'x x . . | x x . .'],
    ['1 || 1 || 1 || 1', 'x . . . | x . . . | x . . . | x . . .'],
    ['1 1 1 1', 'x . . . | x . . . | x . . . | x . . .'],
    ['“1 & 2 & 3 & 4”', 'xx xx xx x'],
    ['1; 2; & 4', 'x xx . x'],
    ['& 2 & 4', '.x xx . x'],
  ],
  '5/4': [
    ['one two three four five', 'x x x x x'],
    ['1 2 3 1 2', 'x x x x x'],
    ['1, 2, 3, 1, 2', 'x x x x x'],
    ['one two three one two', 'x x x x x'],
    ['1 & 2 & 3 & 1 & 2 &', 'xx xx xx xx xx'],
    ['1 (2) 3 1 (2)', 'x . x x .'],
    ['1 (2) & 3 1 2', 'x .x x x x'],
    ['1 2 3 1 2 1 2 3 1 2', 'x x x x x | x x x x x'],
    ['1 2 3 1 2 | 1 2 3 1 2', 'x x x x x | x x x x x'],
    ['1 2 3 4 5 | 1 2 3 1 2', 'x x x x x | x x x x x'],
    ['1 2 3 1 2 1 2 3', 'x x x x x | x x x . .'],
    ['1 2 3 4 5 2 2 3 4 5', 'x x x x x | x x x x x'],
    ['1 4', 'x . . x .'],
    ['1 3 1 2', 'x . x . . | x x . . .'],
  ],
  '2+3/4': [
    ['1 2 1 2 3', 'x x x x x'],
    ['1 2 (1) 2 & 3', 'x x . xx x'],
    ['1 2 3 1 2', 'x x x . . | x x . . .'],
  ],
  '7/4': [
    ['one two three four five six seven', 'x x x x x x x'],
    ['1 2 3 4 1 2 3', 'x x x x x x x'],
    ['1 2 (3) 4 1 & 2 3', 'x x . x xx x x'],
    ['1 5 7', 'x . . . x . x'],
  ],
  '6/8': [
    ['one two', 'x x'],
    ['1 & a 2 & a', 'xxx xxx'],
    ['1 & a 2 & a', 'xxx xxx', 2],
    ['1 & a 2 & a', 'xxx xxx', 4],
    ['1 & a 2 & a', 'xxx xxx', 1],
    ['1 & a 2 & a', 'xxx xxx', 8],
    ['1 & a 2 & a', 'xxx xxx', 6],
    ['1 & a 2 &', 'xxx xx.', 2],
    ['1 & 2 & a', 'xx. xxx', 2],
    ['1 & 2 &', 'xx. xx.'],
    ['1 & 2', 'xx x.', 2],
    ['1 a 2 a', 'x.x x.x', 4],
    ['one and a two and a', 'xxx xxx', 2],
    ['one-and-a two-and-a', 'xxx xxx', 4],
    ['1&a2&a', 'xxx xxx', 4],
    ['1 an a 2 an a', 'xxx xxx'],
    ['(1) & a 2', '.xx x..', 4],
    ['1 la li 2 la li', 'xxx xxx', 2],
    ['1 e & a 2', 'xxxx x'],
    ['1 2 3 4 5 6', 'xxx xxx'],
    ['one two three four five six', 'xxx xxx'],
    ['1 2 3 1 2 3', 'xxx xxx'],
    ['1 2 3 4 5 6 1 2 3 4 5 6', 'xxx xxx | xxx xxx'],
    ['1 (2) 3 4 (5) 6', 'x.x x.x'],
    ['1 2 1 2', 'x x | x x'],
    ['1 triplet 2', 'xxx x', 2],
  ],
  '9/8': [
    ['1 & a 2 & a 3 & a', 'xxx xxx xxx'],
    ['1 & a 2 & a 3 & a', 'xxx xxx xxx', 2],
    ['1 & a 2 & a 3 & a', 'xxx xxx xxx', 4],
    ['1 a 2 a 3 a', 'x.x x.x x.x', 2],
    ['one two three', 'x x x'],
    ['1 2 3 1 2 3', 'x x x | x x x'],
    ['one (two) three four five six seven eight nine', 'x.x xxx xxx'],
    ['1 4 7', 'x x x'],
  ],
  '12/8': [
    ['1 & a 2 & a 3 & a 4 & a', 'xxx xxx xxx xxx'],
    ['1 & a 2 & a 3 & a 4 & a', 'xxx xxx xxx xxx', 2],
    ['1 & a 2 & a 3 & a 4 & a', 'xxx xxx xxx xxx', 4],
    ['1 a 2 a 3 a 4 a', 'x.x x.x x.x x.x', 4],
    ['one-and-a two-and-a three four', 'xxx xxx x x', 2],
    ['1 2 3 1 2 3 1 2 3 1 2 3', 'xxx xxx xxx xxx'],
    ['1 4 7 10', 'x x x x'],
    ['one four seven ten twelve', 'x x x x.x'],
    ['1 2 3 4 | 1 2 3 4', 'x x x x | x x x x'],
    ['(1) a (2) a', '..x ..x . .', 4],
  ],
  '7/8': [
    ['1 & 2 & 3 & a', 'xx xx xxx'],
    ['1 & 2 & 3 & a', 'xx xx xxx', 2],
    ['1 & 2 & 3 & a', 'xx xx xxx', [4, 4, 4]],
    ['3 & a', '. . xxx', 2],
    ['3 a', '. . x.x', 4],
    ['1 2 1 2 1 2 3', 'xx xx xxx'],
    ['one two one two one two three', 'xx xx xxx'],
    ['1 (2) 1 2 1 (2) 3', 'x. xx x.x'],
    ['1 2 3 4 5 6 7', 'xx xx xxx'],
    ['1 2 3 1 2 3', 'x x x | x x x'],
    ['1 e & a 2 3', 'xxxx x x'],
  ],
  '3+2+2/8': [
    ['1 & a 2 & 3 &', 'xxx xx xx', 2],
    ['1 2 3 1 2 1 2', 'xxx xx xx'],
  ],
  '5/8': [
    ['1 2 3 1 2', 'xxx xx'],
    ['1 & a 2 &', 'xxx xx', 2],
    ['1 & a 2 & 1 & a 2 &', 'xxx xx | xxx xx', 4],
  ],
  '6/4': [
    ['1 2 3 1 2 3', 'x x x x x x'],
    ['one two three four five six', 'x x x x x x'],
    ['1 & 2 & 3 4 5 6', 'xx xx x x x x'],
  ],
  '2/2': [
    ['one and two and', 'xx xx'],
    ['1 e & a, 2', 'xxxx x'],
    ['1 triplet 2', 'xxx x'],
  ],
};

describe('counts as people say them', () => {
  it.each(
    Object.entries(SAID).flatMap(([meterText, rows]) =>
      rows.map(([text, steps, divisions]) => ({ meterText, text, steps, divisions })),
    ),
  )(
    'in $meterText “$text”, usual divisions $divisions: $steps',
    ({ meterText, text, steps, divisions }) => {
      const m = meter(meterText);
      const said = valueOf(parseCounts(text, m, divisions));
      expect(said.at).toEqual(ticksOf(steps, m));
      expect(said.bars).toBe(steps.split('|').length);
    },
  );
});

it('“1 & a 2 & a” divides the beat in three after every change of meter to dotted beats', () => {
  for (const from of ['x...x...x...x...', 'x.x.x.x.', 'x.xxx.xxx.xx'])
    for (const to of ['6/8', '9/8', '12/8']) {
      const m = meter(to);
      const changed = withPatternMeter(
        pattern('4/4', { left: from.replaceAll('x', '.'), right: from.replaceAll('x', 'C') }),
        m,
      );
      expect(valueOf(parseCounts('1 & a 2 & a', m, changed.divisions)).at).toEqual([
        0, 240, 480, 720, 960, 1200,
      ]);
    }
});

it('commas, dots, dashes and blanks between counts say the same', () =>
  fc.assert(
    fc.property(
      fc.array(fc.constantFrom('1', '&', 'two', 'and', '3', 'e', 'a', '(4)', '|', '[&]'), {
        minLength: 1,
        maxLength: 12,
      }),
      fc.array(fc.constantFrom(' ', ', ', '. ', ' - ', '…', '-', ' – '), {
        minLength: 12,
        maxLength: 12,
      }),
      (counts, between) => {
        const plain = parseCounts(counts.join(' '), meter('4/4'));
        const other = parseCounts(
          counts.map((count, i) => count + between[i]).join(''),
          meter('4/4'),
        );
        expect(other.ok).toBe(plain.ok);
        if (plain.ok && other.ok) expect(other.value).toEqual(plain.value);
      },
    ),
  ));
