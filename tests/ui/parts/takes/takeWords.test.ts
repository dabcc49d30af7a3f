import { expect, it } from 'vitest';
import type { TakeRemark } from '../../../../src/core/practice/takeRemarks.ts';
import { takeRemarks } from '../../../../src/core/practice/takeRemarks.ts';
import {
  bandsSentence,
  handFigures,
  latenessWords,
  remarkLine,
} from '../../../../src/ui/parts/takes/takeWords.ts';
import { expectedHit, scoreOf } from '../../../support/takes.ts';

const STEP = { hand: 'right', patternTick: 720, expected: 8, missed: 3, weakness: 1 } as const;

const REMARKS: readonly (readonly [TakeRemark, string])[] = [
  [{ kind: 'nothing-played' }, 'Nothing was heard from you.'],
  [
    { kind: 'unrelated', matched: 1, expected: 9 },
    'What was heard hardly fits the pattern. Take it slower, or one hand alone. | 1 hit fits',
  ],
  [{ kind: 'clean' }, 'That was clean.'],
  [
    { kind: 'missed', hand: 'left', hits: 3, expected: 16 },
    'Your left hand leaves notes out. | 3 of 16',
  ],
  [{ kind: 'extra', hits: 4, played: 30 }, 'There was more than the pattern has. | 4 of 30'],
  [{ kind: 'wrong-keys', hits: 2, played: 30 }, 'Some notes were wrong. | 2 of 30'],
  [{ kind: 'drift', fasterPercent: 2, gainPercent: 1 }, 'You run ahead of the click. | 2.0 %'],
  [{ kind: 'drift', fasterPercent: -2, gainPercent: 0 }, 'You fall behind the click. | 2.0 %'],
  [{ kind: 'drift', fasterPercent: 1, gainPercent: 2.5 }, 'You speed up as it goes on. | 2.5 %'],
  [{ kind: 'drift', fasterPercent: 1, gainPercent: -3 }, 'You slow down as it goes on. | 3.0 %'],
  [
    { kind: 'early', hand: 'right', ms: 24.4, grade: 'good' },
    'Your right hand comes a little early. | 24 ms early',
  ],
  [{ kind: 'late', hand: 'both', ms: 60, grade: 'off' }, 'You come much too late. | 60 ms late'],
  [
    { kind: 'even', hand: 'left', ms: 12, grade: 'very-good' },
    'Your left hand is very even. | ± 12 ms',
  ],
  [{ kind: 'uneven', hand: 'both', ms: 55, grade: 'off' }, 'You are uneven. | ± 55 ms'],
  [
    { kind: 'hands-apart', first: 'left', ms: 31 },
    'Your left hand comes before the other. | 31 ms',
  ],
  [{ kind: 'late-changes', ms: 28 }, 'Chord changes come late. | 28 ms later'],
  [
    { kind: 'weak-step', step: { ...STEP, laterMs: -31 } },
    'Look at tick 720, right hand. | 3 of 8 left out, 31 ms ahead of the rest',
  ],
  [{ kind: 'weak-step', step: { ...STEP, hand: 'both' } }, 'Look at tick 720. | 3 of 8 left out'],
];

it.each(REMARKS)('of %j it says the words first and the figure beside', (remark, said) => {
  const { words, figure } = remarkLine(remark, (tick) => `tick ${tick}`);
  expect(figure === '' ? words : `${words} | ${figure}`).toBe(said);
});

it('tells lateness in whole milliseconds with its direction', () => {
  expect([12.4, -12.6, 0.3, -0.3].map(latenessWords)).toEqual([
    '12 ms late',
    '13 ms early',
    '0 ms',
    '0 ms',
  ]);
});

it('gives each hand its own lateness and unevenness, and a dash where too little was played', () => {
  const hits = [0, 1, 2, 3].map((sec) => expectedHit(sec));
  const { hands } = scoreOf([
    [hits[0]!, 10],
    [hits[1]!, 30],
    [hits[2]!, 10],
    [hits[3]!, 30],
    [expectedHit(1, 'right'), 'missed'],
  ]);
  // Sample standard deviation of 10, 30, 10, 30: 11.5.
  expect(hands.map(handFigures)).toEqual([
    { hand: 'Left', lateness: '20 ms late', unevenness: '± 12 ms' },
    { hand: 'Right', lateness: '–', unevenness: '–' },
  ]);
});

it('says nothing but that, when nothing was played', () => {
  const remarks = takeRemarks(scoreOf([[expectedHit(0), 'missed']]));
  expect(remarks.map((remark) => remarkLine(remark, String).words)).toEqual([
    'Nothing was heard from you.',
  ]);
});

it('states the bands that the words follow', () => {
  // reference.md 4.1: within 20 ms very good, 35 good, 50 fair at a gap of 500 ms (common practice).
  expect(bandsSentence(0.5)).toBe(
    'With hits 500 ms apart, within 20 ms is very good, 35 good, 50 fair. Clean: nine of ten within 50 ms, and hardly a hit too many.',
  );
});
