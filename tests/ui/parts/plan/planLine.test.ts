import { expect, it } from 'vitest';
import type { PlanItem } from '../../../../src/core/practice/plan.ts';
import {
  leaveLine,
  planClockText,
  secondsLeft,
  startLine,
} from '../../../../src/ui/parts/plan/planLine.ts';
import { section, slots, song } from '../../../support/music.ts';
import { pageParts } from '../../../support/pageParts.ts';
import { project } from '../../../support/project.ts';

const ITEMS: readonly PlanItem[] = [
  {
    kind: 'drill',
    minutes: 3,
    target: { kind: 'join', from: 'verse', to: 'chorus' },
    startBpm: 70,
    goalBpm: 120,
    why: { kind: 'not-at-tempo' },
  },
  { kind: 'rest', minutes: 1 },
  {
    kind: 'drill',
    minutes: 2,
    target: { kind: 'pattern', patternId: 'p' },
    startBpm: 90,
    goalBpm: 110,
    why: { kind: 'keep' },
  },
  { kind: 'run-through', minutes: 1, bpm: 60 },
];

function planned() {
  const sections = ['verse', 'chorus'].map((id) =>
    section(id, { slots: slots('| C | F |'), patternId: 'p' }),
  );
  return pageParts(project({ song: song(sections, 'verse chorus') }));
}

it('opens a join as a drill on a ladder from its start to its goal, and starts its clock', () => {
  const parts = planned();
  startLine(parts, ITEMS, 0, 1000);
  expect(parts.view.snapshot()).toMatchObject({
    page: 'drill',
    rung: 0,
    stage: { passage: { kind: 'join', from: 'verse', to: 'chorus' } },
    plan: { next: 1, begunAtMs: 1000, line: { index: 0, begunAtMs: 1000 } },
  });
  expect(parts.store.snapshot().practice.drill.ladder).toMatchObject({
    startBpm: 70,
    goalBpm: 120,
  });
  expect(parts.playback.state()).toMatchObject({
    request: { kind: 'drill', rung: 0, stage: { passage: { kind: 'join' } } },
  });
});

it('stops for a rest, and times it too', () => {
  const parts = planned();
  startLine(parts, ITEMS, 0, 1000);
  startLine(parts, ITEMS, 1, 2000);
  expect(parts.playback.state()).toEqual({ status: 'stopped' });
  expect(parts.view.snapshot().plan).toMatchObject({
    next: 2,
    begunAtMs: 1000,
    line: { index: 1, begunAtMs: 2000 },
  });
});

it('drills a pattern on one chord as it is set, and plays the song through', () => {
  const parts = planned();
  startLine(parts, ITEMS, 2, 0);
  expect(parts.view.snapshot().stage).toBeUndefined();
  expect(parts.store.snapshot().practice.drill).toMatchObject({ patternId: 'p' });
  startLine(parts, ITEMS, 3, 0);
  expect(parts.playback.state()).toMatchObject({ request: { kind: 'song', times: 1 } });
  expect(parts.view.snapshot()).toMatchObject({ page: 'play', speedPercent: 50 });
});

it('has no line beyond its end, and forgets the clock alone when it is left', () => {
  const parts = planned();
  startLine(parts, ITEMS, 4, 0);
  expect(parts.view.snapshot().plan).not.toHaveProperty('line');
  startLine(parts, ITEMS, 1, 0);
  leaveLine(parts);
  expect(parts.view.snapshot().plan).toEqual({ minutes: 15, next: 2, begunAtMs: 0 });
});

it('counts the time of a line down and stops at nothing', () => {
  expect(secondsLeft(3, 1000, 1000)).toBe(180);
  expect(secondsLeft(3, 1000, 1500)).toBe(180);
  expect(secondsLeft(3, 1000, 176_000)).toBe(5);
  expect(secondsLeft(3, 1000, 400_000)).toBe(0);
  expect([0, 5, 60, 125].map(planClockText)).toEqual(['0:00', '0:05', '1:00', '2:05']);
});
