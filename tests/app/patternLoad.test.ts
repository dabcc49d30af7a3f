import { expect, it } from 'vitest';
import { patternLoad } from '../../src/app/patternLoad.ts';
import { valueOf } from '../support/music.ts';
import { pattern } from '../support/patterns.ts';
import { project } from '../support/project.ts';

it('says what each hand has to do on the held chord', () => {
  const p = pattern('4/4', { left: 'R...R...', right: '..C...C.' });
  const load = valueOf(patternLoad(project(), p, 60));
  expect(load.left.fastestRate).toBeCloseTo(0.5, 6);
  expect(load.right.fastestRepeat).toBeCloseTo(0.5, 6);
  expect([...load.left.strains, ...load.right.strains]).toEqual([]);
});

it('looks from the last hit to the first of the next time round', () => {
  const p = pattern('2/4', { left: 'R......R' });
  expect(valueOf(patternLoad(project(), p, 60)).left.fastestRate).toBeCloseTo(4, 6);
});

it('names the hits that are too much by their place in the pattern, each once', () => {
  const p = pattern('4/4', { left: 'R...............', right: 'CCCC............' });
  const { right, left } = valueOf(patternLoad(project(), p, 160));
  const repeats = right.strains.filter(({ kind }) => kind === 'repeat');
  expect(repeats.map(({ at }) => at)).toEqual([120, 240, 360]);
  expect(repeats[0]?.value).toBeCloseTo((4 * 160) / 60, 6);
  expect(left.strains).toEqual([]);
});

it('counts dotted quarters in 6/8', () => {
  const p = pattern('6/8', { left: 'R-----', right: 'CCCCCC' });
  const { right } = valueOf(patternLoad(project(), p, 60));
  expect(right.fastestRate).toBeCloseTo(3, 6);
});

it('is not known where no hands fit the chord', () => {
  const { voicing } = project();
  const narrow = { ...voicing, rightLowest: 60, rightHighest: 61 };
  const p = pattern('4/4', { left: 'R...' });
  expect(patternLoad(project({ voicing: narrow }), p, 60)).toMatchObject({
    ok: false,
    error: { kind: 'nothing-playable' },
  });
});
