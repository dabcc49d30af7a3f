import * as fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { type PlanItem, planFor } from '../../../src/core/practice/plan.ts';
import type { SongToPractise } from '../../../src/core/practice/planTopics.ts';
import type { PracticeTarget, TakeRecord } from '../../../src/core/practice/takeRecord.ts';
import { timelineOf } from '../../../src/core/song/timeline.ts';
import { section, slots, song } from '../../support/music.ts';
import { pattern, plainVoicings } from '../../support/patterns.ts';
import { expectedHit, scoreOf } from '../../support/takes.ts';

const SONG = song(
  [
    section('verse', { slots: slots('| C | F | G | C |'), patternId: 'easy' }),
    section('chorus', { slots: slots('| F | G | Am | G |'), patternId: 'full' }),
  ],
  'verse chorus verse chorus',
);

const TO_PRACTISE: SongToPractise = {
  song: SONG,
  patterns: [
    pattern('4/4', { left: 'R---', right: 'C-C-' }, { id: 'easy' }),
    pattern('4/4', { left: 'R-5-', right: 'CCCC' }, { id: 'full' }),
    pattern('4/4', { left: 'R-5-', right: 'CCCC' }, { id: 'unused' }),
  ],
  voicings: plainVoicings(timelineOf(SONG)),
};

/** A take of four hits, clean unless the last is missed. */
function take(target: PracticeTarget, bpm: number, atMs: number, isClean: boolean): TakeRecord {
  const hits = [0, 1, 2, 3].map((beat) =>
    expectedHit(beat / 2, 'left', { patternTick: beat * 480 }),
  );
  const score = scoreOf(hits.map((hit, i) => [hit, i === 3 && !isClean ? 'missed' : 0]));
  return { atMs, target, hand: 'both', bpm, passes: 1, sees: 'hands', score };
}

function lines(plan: readonly PlanItem[]): string[] {
  return plan.map((item) => {
    if (item.kind !== 'drill') return `${item.minutes} ${item.kind}`;
    const { target, why } = item;
    const what =
      target.kind === 'join' ? `${target.from}>${target.to}` : Object.values(target).join(' ');
    return `${item.minutes} ${what} ${item.startBpm}-${item.goalBpm} ${why.kind}`;
  });
}

describe('a plan for the time there is', () => {
  it('of a song never practised takes joins, patterns and sections in turn, and plays it through', () =>
    // From G down to C both hands move 28 semitones, from C up to F 20. Sixteen bars at 120 bpm take
    // 32 s, half minutes rounded up.
    expect(lines(planFor(15, TO_PRACTISE, []))).toEqual([
      '3 chorus>verse 72-120 hard-join',
      '3 pattern easy 72-120 not-at-tempo',
      '3 verse>chorus 72-120 hard-join',
      '1 rest',
      '4 pattern full 72-120 not-at-tempo',
      '1 run-through',
    ]));

  it('takes a pattern that is played from a bar on', () => {
    const [verse, chorus] = SONG.sections;
    const sections = [{ ...verse!, patternChanges: [{ bar: 2, patternId: 'unused' }] }, chorus!];
    const plan = planFor(60, { ...TO_PRACTISE, song: { ...SONG, sections } }, []);
    expect(lines(plan).some((line) => line.includes('pattern unused'))).toBe(true);
  });

  it('begins with the steps that went wrong, a little slower than they were tried', () => {
    const easy = { kind: 'pattern', patternId: 'easy' } as const;
    const plan = planFor(15, TO_PRACTISE, [take(easy, 100, 1, false)]);
    expect(plan[0]).toMatchObject({
      kind: 'drill',
      target: easy,
      startBpm: 85,
      goalBpm: 120,
      why: { kind: 'weak-steps', steps: [{ patternTick: 1440, missed: 1 }] },
    });
    expect(lines(plan).filter((line) => line.includes('pattern easy'))).toHaveLength(1);
  });

  it('looks at a pattern’s last take only', () => {
    const easy = { kind: 'pattern', patternId: 'easy' } as const;
    const history = [take(easy, 120, 2, true), take(easy, 100, 1, false)];
    expect(lines(planFor(30, TO_PRACTISE, history)).join()).not.toContain('pattern easy');
  });

  it('goes on from the tempo that was reached, and leaves out what is at tempo', () => {
    const history = [
      take({ kind: 'join', from: 'verse', to: 'chorus' }, 120, 1, true),
      take({ kind: 'join', from: 'chorus', to: 'verse' }, 96, 2, true),
      take({ kind: 'join', from: 'chorus', to: 'verse' }, 112, 3, false),
    ];
    const plan = lines(planFor(40, TO_PRACTISE, history));
    expect(plan.join()).not.toContain('verse>chorus');
    expect(plan).toContain('3 chorus>verse 96-120 hard-join');
  });

  it('keeps in hand what is all at tempo', () => {
    const targets: PracticeTarget[] = [
      { kind: 'join', from: 'verse', to: 'chorus' },
      { kind: 'join', from: 'chorus', to: 'verse' },
      { kind: 'pattern', patternId: 'easy' },
      { kind: 'pattern', patternId: 'full' },
      { kind: 'section', sectionId: 'verse' },
      { kind: 'section', sectionId: 'chorus' },
    ];
    const history = targets.map((target, i) => take(target, 120, i, true));
    expect(lines(planFor(4, TO_PRACTISE, history))).toEqual([
      '3 chorus>verse 120-120 keep',
      '1 run-through',
    ]);
  });

  it('rests a minute after nine and five minutes before 25 of playing are over', () => {
    const plan = planFor(60, TO_PRACTISE, []);
    let sinceRest = 0;
    let sinceAnyRest = 0;
    for (const item of plan) {
      if (item.kind === 'rest') {
        sinceAnyRest = 0;
        if (item.minutes === 5) sinceRest = 0;
        continue;
      }
      sinceAnyRest += item.minutes;
      sinceRest += item.minutes;
      expect(sinceAnyRest).toBeLessThan(15);
      // Five minutes after 25 of playing (docs/sources.md#rests); the last block may be longer.
      if (item !== plan.at(-1) && item !== plan.at(-2)) expect(sinceRest).toBeLessThanOrEqual(25);
    }
    expect(plan.some((item) => item.kind === 'rest' && item.minutes === 5)).toBe(true);
  });

  it('fills the minutes exactly, in blocks worth the while', () =>
    fc.assert(
      fc.property(fc.double({ min: 1, max: 120, noNaN: true }), (minutes) => {
        const plan = planFor(minutes, TO_PRACTISE, []);
        expect(plan.reduce((sum, item) => sum + item.minutes, 0)).toBeCloseTo(minutes, 6);
        const drills = plan.filter((item) => item.kind === 'drill');
        expect(drills.every((item) => item.minutes >= Math.min(2, minutes / 2))).toBe(true);
        expect(plan[0]?.kind).toBe('drill');
        expect(plan.at(-1)?.kind).not.toBe('rest');
      }),
    ));

  it('is empty without time or without a song', () => {
    expect(planFor(0, TO_PRACTISE, [])).toEqual([]);
    expect(planFor(15, { song: song([], ''), patterns: [], voicings: [] }, [])).toEqual([]);
  });
});
