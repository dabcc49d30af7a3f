import * as fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { type PlanItem, planFor } from '../../../src/core/practice/plan.ts';
import type { SongToPractise } from '../../../src/core/practice/planTopics.ts';
import {
  cleanBpm,
  type PracticeTarget,
  type TakeRecord,
} from '../../../src/core/practice/takeRecord.ts';
import { timelineOf } from '../../../src/core/song/timeline.ts';
import { section, slots, song } from '../../support/music.ts';
import { pattern, plainVoicings } from '../../support/patterns.ts';
import { seededRandom } from '../../support/random.ts';
import { fourHits, takeRecord } from '../../support/takeRecords.ts';
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
function take(
  target: PracticeTarget,
  bpm: number,
  atMs: number,
  isClean: boolean,
  parts: Partial<TakeRecord> = {},
): TakeRecord {
  return takeRecord({ target, bpm, atMs, score: fourHits(isClean), ...parts });
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

  it('leaves a breath before the song where there is no room for one between drills', () =>
    expect(lines(planFor(12.5, TO_PRACTISE, []))).toEqual([
      '3 chorus>verse 72-120 hard-join',
      '3 pattern easy 72-120 not-at-tempo',
      '4.5 verse>chorus 72-120 hard-join',
      '1 rest',
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
    const history = targets.map((target, i) => take(target, 120, targets.length - i, true));
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

describe('a tempo', () => {
  const verse = { kind: 'section', sectionId: 'verse' } as const;
  const isAsked = (...history: TakeRecord[]) =>
    lines(planFor(120, TO_PRACTISE, history)).some((line) => line.includes(' verse 72-120'));

  it('is reached by a clean take of the whole part with both hands, played through', () => {
    expect(isAsked()).toBe(true);
    expect(isAsked(take(verse, 120, 1, true))).toBe(false);
    expect(isAsked(take(verse, 120, 1, false))).toBe(true);
    expect(isAsked(take(verse, 120, 1, true, { level: 3 }))).toBe(true);
    expect(isAsked(take(verse, 120, 1, true, { hand: 'left' }))).toBe(true);
    expect(isAsked(take(verse, 120, 1, true, { passes: 0 }))).toBe(true);
  });

  it('is reached in a section by one who plays the song clean at it, but not at its joins', () => {
    const history = [take({ kind: 'song' }, 120, 1, true)];
    expect(isAsked(...history)).toBe(false);
    expect(lines(planFor(120, TO_PRACTISE, history)).join()).toContain('verse>chorus 72-120');
  });

  it('is reached by a pattern in whatever it was played, as long as none of its steps is weak', () => {
    const verseTake = (laterMs: number | 'missed') =>
      take(verse, 120, 1, true, {
        score: scoreOf(
          Array.from({ length: 40 }, (_, i) => [
            expectedHit(i / 2, 'left', { patternId: 'easy', patternTick: (i % 20) * 96 }),
            i % 20 === 7 ? laterMs : 0,
          ]),
        ),
      });
    const asksEasy = (record: TakeRecord) =>
      lines(planFor(120, TO_PRACTISE, [record])).find((line) => line.includes('pattern easy'));
    expect(verseTake('missed').score.clean).toBe(true);
    expect(asksEasy(verseTake(0))).toBeUndefined();
    expect(asksEasy(verseTake('missed'))).toContain('weak-steps');
  });
});

describe('weeks of practice by plan', () => {
  const GOAL = SONG.tempo.bpm;

  /** Plays at a tempo, steadily up to what the player can, badly beyond. */
  function attempt(isWithinReach: boolean, hits: number, random: ReturnType<typeof seededRandom>) {
    const spreadMs = isWithinReach ? 12 : 90;
    return scoreOf(
      Array.from({ length: hits }, (_, i) => [
        expectedHit(i / 2, i % 2 === 0 ? 'left' : 'right', { patternTick: (i % 8) * 240 }),
        Math.max(-140, Math.min(140, spreadMs * random.normal())),
      ]),
    );
  }

  /** Days on which somebody follows a plan of 15 minutes: its lines, and what each drill led to. */
  function practisedDays(days: number, seed: number) {
    const random = seededRandom(seed);
    const reach = new Map<string, number>();
    const history: TakeRecord[] = [];
    const plans: PlanItem[][] = [];
    for (let day = 0; day < days; day++) {
      const plan = planFor(15, TO_PRACTISE, history);
      plans.push(plan);
      for (const item of plan) {
        if (item.kind !== 'drill') continue;
        const key = JSON.stringify(item.target);
        const able = reach.get(key) ?? 70 + 20 * random.uniform();
        const tempos = [0, 8, 16, 24].map((more) => Math.min(item.startBpm + more, GOAL));
        for (const bpm of new Set(tempos)) {
          const score = attempt(bpm <= able, 32, random);
          const atMs = 86_400_000 * day + history.length;
          history.push(takeRecord({ target: item.target, bpm, atMs, score }));
        }
        reach.set(key, able + 3 + 6 * random.uniform());
      }
    }
    return { plans, history };
  }

  const drillsOf = (plan: readonly PlanItem[]) => plan.filter((item) => item.kind === 'drill');

  it.each([1, 2, 3])(
    'lead to a song that is to be kept, everything having had its turn (%i)',
    (seed) => {
      const { plans } = practisedDays(40, seed);
      const targetsOfDays = (from: number, to: number) =>
        new Set(
          plans
            .slice(from, to)
            .flatMap(drillsOf)
            .map(({ target }) => JSON.stringify(target)),
        );
      // Two patterns, two sections and two joins.
      expect(targetsOfDays(0, 4).size).toBe(6);
      expect(drillsOf(plans.at(-1)!).every(({ why }) => why.kind === 'keep')).toBe(true);
    },
  );

  it('never ask for what is reached already, nor begin below it but to mend weak steps', () => {
    const { plans, history } = practisedDays(25, 4);
    for (const [day, plan] of plans.entries()) {
      const before = history.filter(({ atMs }) => atMs < 86_400_000 * day);
      for (const { target, startBpm, why } of drillsOf(plan)) {
        const reached = cleanBpm(before, target);
        if (why.kind === 'keep' || why.kind === 'weak-steps' || reached === undefined) continue;
        expect(reached).toBeLessThan(GOAL);
        expect(startBpm).toBe(reached);
      }
    }
  });

  it('are planned over thousands of takes', () => {
    const { history } = practisedDays(10, 5);
    const many = Array.from({ length: 5000 }, (_, i) => ({
      ...history[i % history.length]!,
      atMs: i,
    }));
    expect(planFor(15, TO_PRACTISE, many).length).toBeGreaterThan(3);
  });
});
