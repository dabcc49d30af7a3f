import { expect, it } from 'vitest';
import { countSyllables } from '../../../../src/core/rhythm/counts.ts';
import { patternSteps } from '../../../../src/core/rhythm/pattern.ts';
import { sourceName } from '../../../../src/ui/parts/pattern/sourceNames.ts';
import {
  spokenHit,
  spokenStep,
  spokenStroke,
} from '../../../../src/ui/parts/pattern/spokenPlace.ts';
import { pattern } from '../../../support/patterns.ts';

it('says where a step is, with the bar where there are several', () => {
  const grid = pattern('2/4', { left: 'R.......' });
  const spoken = (bars: number) =>
    patternSteps(grid).map((step, i) => spokenStep(step, countSyllables(grid)[i]!, bars));
  expect(spoken(1).slice(2, 6)).toEqual(['1 and', '1 a', 'beat 2', '2 e']);
  expect(spoken(2)[0]).toBe('bar 1, beat 1');
});

it('says what a hit plays and how, and leaves out what goes without saying', () => {
  const hit = { at: 0, length: 240, play: ['root', 'fifth'], touch: 'plain', held: true } as const;
  expect(spokenHit(hit)).toBe('root and fifth');
  expect(spokenHit({ ...hit, touch: 'ghost', held: false, anticipates: true })).toBe(
    'root and fifth, ghost, short, leads into the next chord',
  );
});

it('says how strong a stroke is and how often it comes', () => {
  const stroke = { at: 0, length: 120, strength: 0.9, presence: 1, what: ['unpitched'] } as const;
  expect(spokenStroke(stroke)).toBe('strong');
  expect(spokenStroke({ ...stroke, strength: 0.5, presence: 0.7, what: ['root'] })).toBe(
    'root, medium, in 7 of 10 bars',
  );
});

it('names a source by its track, or by its part where the track has no name', () => {
  expect(sourceName({ name: 'Low strings', part: 'bass' })).toBe('Low strings');
  expect(sourceName({ name: ' ', part: 'bass' })).toBe('bass');
});
