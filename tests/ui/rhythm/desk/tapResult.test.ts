import { describe, expect, it } from 'vitest';
import { type TapRun, tapResult } from '../../../../src/ui/rhythm/desk/tapResult.ts';
import { tapProblemSentence, tapWords } from '../../../../src/ui/rhythm/desk/tapWords.ts';
import { valueOf } from '../../../support/music.ts';
import { pattern, ticksOf } from '../../../support/patterns.ts';

const PATTERN = pattern('4/4', { left: 'R.......' });
const SOURCE = { id: 'tapped', name: 'Kick', part: 'kick' } as const;

/** A figure, in beats, tapped over bars of 4/4 at 120 a minute, late by a constant. */
function run(beats: readonly number[], bars: number, parts: Partial<TapRun> = {}, lateSec = 0) {
  const times = Array.from({ length: bars }, (_, bar) =>
    beats.map((beat) => ({ atSec: bar * 2 + beat / 2 + lateSec })),
  );
  return { manner: 'click', bpm: 120, firstTick: 0, taps: times.flat(), ...parts } as const;
}

function strokesOf(tapped: TapRun): number[] {
  const { groove } = valueOf(tapResult(tapped, PATTERN, SOURCE));
  return ticksOf(groove.sources[0]!.strokes);
}

describe('what was tapped', () => {
  it('to the click lies on its beats, without the lateness', () => {
    const late = run([0, 1.5, 2], 4, {}, 0.03);
    expect(strokesOf(late)).toEqual([0, 720, 960]);
    const result = valueOf(tapResult(late, PATTERN, SOURCE));
    expect(result.latencySec).toBeCloseTo(0.03, 3);
    expect(tapWords(result)).toMatch(
      /^4 of 4 bars play it, 30 ms behind the click, which is taken/,
    );
  });

  it('freely has its own tempo and begins where the first tap is said to stand', () => {
    const free = run([1, 2.5, 3], 6, { manner: 'free', bpm: 110, firstTick: 480 }, 100);
    expect(strokesOf(free)).toEqual([480, 1200, 1440]);
    const result = valueOf(tapResult(free, PATTERN, SOURCE));
    expect(result.bpm).toBeCloseTo(120, 1);
    expect(tapWords(result)).toContain('at 120 beats a minute');
  });

  it('swung is said to be', () => {
    const swung = run([0, 2 / 3, 1, 2, 2 + 2 / 3, 3, 3 + 2 / 3], 8);
    expect(tapWords(valueOf(tapResult(swung, PATTERN, SOURCE)))).toContain('swung: triplet feel');
  });

  it('on the click is said to be', () => {
    const even = valueOf(tapResult(run([0, 1, 2, 3], 4), PATTERN, SOURCE));
    expect(tapWords(even)).toContain('bars play it, on the click');
  });
});

/** What is said of taps that are no rhythm. */
function sentence(tapped: TapRun): string {
  const result = tapResult(tapped, PATTERN, SOURCE);
  return result.ok ? 'a rhythm' : tapProblemSentence(result.error);
}

describe('taps that are no rhythm', () => {
  it.each([
    ['none', run([], 1), 'Nothing was tapped'],
    ['one', run([0], 1), 'One tap is no rhythm'],
    ['a few that stop at once', run([0, 0.5, 1.5, 1.9], 1, { manner: 'free' }), 'twice'],
  ])('%s', (_, tapped, words) => expect(sentence(tapped)).toContain(words));

  it('and the sentence for bars without anything in common', () =>
    expect(tapProblemSentence({ kind: 'nothing-in-common' })).toContain('same figure'));
});
