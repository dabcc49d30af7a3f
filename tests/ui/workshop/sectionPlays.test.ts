import { expect, it } from 'vitest';
import { METER_FITS } from '../../../src/state/edits/fitMeter.ts';
import { FIT_WORDS, sectionsFor, sectionWords } from '../../../src/ui/workshop/sectionPlays.ts';
import { meter, section, slots, song } from '../../support/music.ts';
import { pattern } from '../../support/patterns.ts';
import { project } from '../../support/project.ts';

const P = pattern('4/4', { left: 'R...' });
const Q = { ...P, id: 'q', name: 'Other' };

const verse = section('verse', { slots: slots('| C | F |'), patternId: 'p' });
const chorus = section('chorus', { slots: slots('| C |') });
const bridge = section('bridge', { slots: slots('| C |', '3/4'), meter: meter('3/4') });

const { form, ...rest } = song([verse, chorus, bridge], 'verse chorus verse bridge chorus');
const PROJECT = project({
  patterns: [P, Q],
  song: {
    ...rest,
    form: form.map((entry, i) => (i === 2 ? { ...entry, patternId: 'q' } : entry)),
  },
});

it('knows which sections play a pattern, which are in its meter, and what the others play', () => {
  const stands = sectionsFor(PROJECT, P);
  expect(stands.map(({ plays, fits, bars }) => [plays, fits, bars])).toEqual([
    [true, true, 2],
    [false, true, 1],
    [false, false, 1],
  ]);
  expect(stands.map(sectionWords)).toEqual([
    '2 bars of 4/4, plays Pattern',
    '1 bar of 4/4, hands rest',
    '1 bar of 3/4, hands rest',
  ]);
});

it('knows the returns of a section that have a pattern of their own', () => {
  const returns = (p: typeof P, i: number) =>
    sectionsFor(PROJECT, p)[i]!.returns.map(({ time, plays, isOwn }) => [time, plays, isOwn]);
  expect(returns(P, 0)).toEqual([
    [1, true, false],
    [2, false, false],
  ]);
  expect(returns(Q, 0)).toEqual([
    [1, false, false],
    [2, true, true],
  ]);
  expect(returns(P, 2)).toEqual([]);
});

it('has words for every way into another meter', () =>
  expect(Object.keys(FIT_WORDS).toSorted()).toEqual([...METER_FITS].toSorted()));
