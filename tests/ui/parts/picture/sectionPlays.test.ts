import { expect, it } from 'vitest';
import { METER_FITS } from '../../../../src/state/edits/fitMeter.ts';
import {
  barsFor,
  FIT_WORDS,
  sectionsFor,
  sectionWords,
} from '../../../../src/ui/parts/picture/sectionPlays.ts';
import { meter, section, slots, song } from '../../../support/music.ts';
import { pattern } from '../../../support/patterns.ts';
import { project } from '../../../support/project.ts';

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
    ['all', true, 2],
    ['none', true, 1],
    ['none', false, 1],
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
    [1, 'all', false],
    [2, 'none', true],
  ]);
  expect(returns(Q, 0)).toEqual([
    [1, 'none', false],
    [2, 'all', true],
  ]);
  expect(returns(P, 2)).toEqual([]);
});

it('knows patterns that are played from a bar on', () => {
  const changing = { ...verse, patternChanges: [{ bar: 1, patternId: 'q' }] };
  const of = { ...PROJECT, song: song([changing], 'verse') };
  const [stand] = sectionsFor(of, Q);
  expect(stand!.plays).toBe('some');
  expect(sectionWords(stand!)).toBe('2 bars of 4/4, plays Pattern, from bar 2 Other');
  const resting = { ...verse, patternChanges: [{ bar: 1 }] };
  const [rests] = sectionsFor({ ...of, song: song([resting], 'verse') }, Q);
  expect(sectionWords(rests!)).toBe('2 bars of 4/4, plays Pattern, from bar 2 hands rest');
});

it('knows in which bars of a section, or of one playing, a pattern is played and where it begins', () => {
  const changing = section('verse', {
    slots: slots('| C | F | G | C |'),
    patternId: 'p',
    patternChanges: [{ bar: 2, patternId: 'q' }],
  });
  const bars = (entry: Parameters<typeof barsFor>[1]) =>
    barsFor(changing, entry, Q).map(({ plays, begins }) => (begins ? 'B' : plays ? '-' : '.'));
  expect(bars(undefined).join('')).toBe('..B-');
  const entry = { id: 'e', sectionId: 'verse', patternChanges: [{ bar: 1, patternId: 'q' }] };
  expect(bars(entry).join('')).toBe('.B--');
});

it('has words for every way into another meter', () =>
  expect(Object.keys(FIT_WORDS).toSorted()).toEqual([...METER_FITS].toSorted()));
