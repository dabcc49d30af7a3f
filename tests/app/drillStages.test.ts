import { describe, expect, it } from 'vitest';
import {
  type DrillPass,
  drillAfter,
  drillPlaceOf,
  rungsOfStage,
  wishBeside,
} from '../../src/app/drillCourse.ts';
import type { DrillRequest } from '../../src/app/score.ts';
import { targetOf } from '../../src/app/takeTarget.ts';
import { START_DELAY_SEC } from '../../src/audio/player.ts';
import type { Stage } from '../../src/core/practice/stage.ts';
import type { Project } from '../../src/core/project.ts';
import { moveFormEntry, removeFormEntry } from '../../src/state/edits/form.ts';
import {
  setDrillPattern,
  setLadder,
  setSoundingHands,
  setStages,
} from '../../src/state/edits/practice.ts';
import { stageList } from '../../src/state/stages.ts';
import { NO_COUNT_IN, onFakeTime } from '../support/fakePlayback.ts';
import { chord, section, slots, song } from '../support/music.ts';
import { pattern } from '../support/patterns.ts';
import { project } from '../support/project.ts';

/** Level 1 keeps what stands on the beat. */
const EIGHTHS = pattern('4/4', { left: 'R-------', right: 'CCCCCCCC' });

const LEFT_ALONE: Stage = { id: 'left', passage: { kind: 'one-chord' }, tool: 'right' };
const TOGETHER: Stage = { id: 'both', passage: { kind: 'one-chord' }, tool: 'none' };
const TURNS: Stage = {
  id: 'turns',
  passage: { kind: 'two-chords', first: chord('C'), second: chord('G') },
  tool: 'both',
};
const CHORUS: Stage = {
  id: 'chorus',
  passage: { kind: 'section', sectionId: 'chorus' },
  tool: 'both',
};
const JOIN: Stage = {
  id: 'join',
  passage: { kind: 'join', from: 'verse', to: 'chorus' },
  tool: 'both',
};

/** Verse (C F), chorus (A G), verse; one pass a rung at 60 and 120, without count-in. */
function drilling(parts: Partial<Project> = {}) {
  const verse = section('verse', { slots: slots('| C | F |'), patternId: 'p' });
  const chorus = section('chorus', { slots: slots('| Am | G |'), patternId: 'p' });
  const { drill: plain } = NO_COUNT_IN;
  const ladder = {
    ...plain.ladder,
    goalBpm: 120,
    step: { kind: 'bpm', bpm: 60 },
    passesPerRung: 1,
    climb: 'by-hand',
  } as const;
  const stages = [LEFT_ALONE, TOGETHER, TURNS, CHORUS, JOIN];
  return onFakeTime({
    song: song([verse, chorus], 'verse chorus verse'),
    patterns: [EIGHTHS],
    practice: { ...NO_COUNT_IN, drill: { ...plain, ladder, stages } },
    ...parts,
  });
}

function drill(stage: Stage | undefined, rung = 0): DrillRequest {
  return { kind: 'drill', rung, ...(stage && { stage }) };
}

/** What is heard of a drill: which stage, which rung (from 1), how fast. */
function heard({ playback }: ReturnType<typeof drilling>): string {
  const state = playback.state();
  if (state.status !== 'playing' || !state.drill) return state.status;
  return `${state.drill.stage?.id ?? 'as set'} ${state.drill.rung} ${state.bpm}`;
}

describe('a stage of a drill', () => {
  it('sounds the hands that are not the player’s, whatever is set outside the stages', async () => {
    const at = drilling();
    await at.playback.play(drill(LEFT_ALONE));
    at.pass(START_DELAY_SEC + 4.5);
    expect(at.strikes('left')).toEqual([]);
    expect(at.strikes('right').slice(0, 3)).toEqual([0, 0.5, 1]);
    at.store.edit(setSoundingHands('left'), { label: 'hands' });
    at.pass(4);
    expect(at.strikes('left')).toEqual([]);
  });

  it('follows its place in the list while it plays', async () => {
    const at = drilling();
    await at.playback.play(drill(LEFT_ALONE));
    at.pass(START_DELAY_SEC + 2);
    at.store.edit(setStages([{ ...LEFT_ALONE, tool: 'left' }]), { label: 'stages' });
    at.pass(4);
    expect(at.strikes('left')).toEqual([4]);
    expect(Math.max(...at.strikes('right'))).toBeLessThanOrEqual(2.2);
  });

  it('holds two chords in turn, in the hands that the song gives them', async () => {
    const at = drilling();
    await at.playback.play(drill(TURNS));
    at.pass(START_DELAY_SEC + 13);
    expect(at.basses()).toEqual(['C 0', 'G 4', 'C 8', 'G 12']);
  });

  it('plays a section’s own bars round and round at the tempo of its rung', async () => {
    const at = drilling();
    await at.playback.play(drill(CHORUS));
    at.pass(START_DELAY_SEC + 13);
    expect(at.basses()).toEqual(['A 0', 'G 4', 'A 8', 'G 12']);
    expect(at.playback.position()).toMatchObject({ bar: 3, section: { sectionId: 'chorus' } });
  });

  it('plays the last bar of one section and the first of the next as a join', async () => {
    const at = drilling();
    await at.playback.play(drill(JOIN, 1));
    at.pass(START_DELAY_SEC + 7);
    expect(at.basses()).toEqual(['F 0', 'A 2', 'F 4', 'A 6']);
  });

  it('stays on its bars where the form changes under it, and ends with its section', async () => {
    const at = drilling();
    await at.playback.play(drill(CHORUS));
    at.pass(START_DELAY_SEC + 5);
    at.store.edit(moveFormEntry(0, 2), { label: 'form' });
    at.pass(4);
    expect(at.basses()).toEqual(['A 0', 'G 4', 'A 8']);
    at.store.edit(removeFormEntry('entry 1'), { label: 'form' });
    expect(at.playback.state()).toEqual({
      status: 'stopped',
      problem: { kind: 'nothing-to-play' },
    });
  });

  it('is a take of its section or join, on chords one of the pattern', () => {
    const { store } = drilling();
    const target = (stage: Stage) => targetOf(drill(stage), store.snapshot());
    expect(target(CHORUS)).toEqual({ kind: 'section', sectionId: 'chorus' });
    expect(target(JOIN)).toEqual({ kind: 'join', from: 'verse', to: 'chorus' });
    expect(target(TURNS)).toEqual({ kind: 'pattern', patternId: 'p' });
  });
});

describe('the way through the stages', () => {
  it('goes on from the top rung to the next stage, and back from the first, by rung up and down', async () => {
    const at = drilling();
    await at.playback.play(drill(LEFT_ALONE, 1));
    at.pass(START_DELAY_SEC + 0.1);
    expect(heard(at)).toBe('left 2 120');
    at.playback.changeRung(1);
    expect(at.playback.state()).toMatchObject({ wanted: { rung: 0, stage: { id: 'both' } } });
    at.pass(2);
    expect(heard(at)).toBe('both 1 60');
    at.playback.changeRung(-1);
    at.pass(4);
    expect(heard(at)).toBe('left 2 120');
    at.playback.changeRung(1);
    at.playback.changeRung(1);
    at.playback.changeRung(1);
    at.pass(2);
    expect(heard(at)).toBe('turns 1 60');
  });

  it('has an end at both ends, and the drill as it is set is not left', () => {
    const { store } = drilling();
    const now = store.snapshot();
    expect(wishBeside(now, { rung: 0, stage: LEFT_ALONE }, -1)).toEqual({
      rung: 0,
      stage: LEFT_ALONE,
    });
    expect(wishBeside(now, { rung: 1, stage: JOIN }, 1)).toEqual({ rung: 1, stage: JOIN });
    expect(wishBeside(now, { rung: 1 }, 1)).toEqual({ rung: 1 });
    expect(wishBeside(now, { rung: 0 }, -1)).toEqual({ rung: 0 });
  });

  it('passes over stages that the song does not play now, and finds them again later', () => {
    const { store } = drilling();
    store.edit(removeFormEntry('entry 1'), { label: 'form' });
    const without = wishBeside(store.snapshot(), { rung: 1, stage: TURNS }, 1);
    expect(without).toEqual({ rung: 1, stage: TURNS });
    expect(stageList(store.snapshot())).toContainEqual(CHORUS);
    store.undo();
    const again = wishBeside(store.snapshot(), { rung: 1, stage: TURNS }, 1);
    expect(again).toEqual({ rung: 0, stage: CHORUS });
  });

  it('is the proposal where the player has no list, made anew with the drill’s pattern', () => {
    const other = pattern('4/4', { right: 'C-C-' }, { id: 'q' });
    const plain = project({ patterns: [EIGHTHS, other] });
    const names = (of: Project) => stageList(of).map(({ passage, tool }) => [passage.kind, tool]);
    expect(names(plain).slice(0, 2)).toEqual([
      ['one-chord', 'right'],
      ['one-chord', 'left'],
    ]);
    expect(names(setDrillPattern('q')(plain))[0]).toEqual(['one-chord', 'none']);
  });
});

it('says which passes are at the goal, where slow and full alternate', async () => {
  const at = drilling();
  at.store.edit(setLadder({ order: 'alternating' }), { label: 'order' });
  await at.playback.play(drill(LEFT_ALONE));
  at.pass(START_DELAY_SEC + 1);
  expect(at.playback.state()).not.toHaveProperty('drill.isAtGoal');
  at.pass(4);
  expect(at.playback.state()).toMatchObject({ bpm: 120, drill: { rung: 1, isAtGoal: true } });
  at.pass(2);
  expect(heard(at)).toBe('left 1 60');
});

describe('a top rung', () => {
  const onTop = { stage: TOGETHER, drill: { rung: 1, pass: 0 } };

  it('is done once it was clean, until it is not clean any more', () => {
    const now = drilling().store.snapshot();
    const isDone = (pass: DrillPass) => drillPlaceOf(now, TOGETHER, pass).isDone;
    const clean = drillAfter(onTop, now, undefined, () => ({ clean: true }));
    expect(clean.drill).toMatchObject({ rung: 1, pass: 1 });
    expect(isDone(clean.drill)).toBe(true);
    expect(isDone(drillAfter(clean, now, undefined).drill)).toBeUndefined();
    const unclean = drillAfter(clean, now, undefined, () => ({ clean: false }));
    expect(isDone(unclean.drill)).toBeUndefined();
    expect(isDone(onTop.drill)).toBeUndefined();
  });

  it('is the only one that can be done', () => {
    const now = drilling().store.snapshot();
    const low = drillAfter({ ...onTop, drill: { rung: 0, pass: 0 } }, now, undefined, () => ({
      clean: true,
    }));
    expect(low.drill.wasClean).toBe(true);
    expect(drillPlaceOf(now, TOGETHER, low.drill).isDone).toBeUndefined();
  });
});

describe('a ladder that climbs levels', () => {
  const levels = { from: 1, order: 'levels-first' } as const;

  it('adds hits at one tempo, then goes faster with all of them', async () => {
    const at = drilling();
    at.store.edit(setLadder({ levels, climb: 'always' }), { label: 'ladder' });
    await at.playback.play(drill(undefined));
    const rungs = rungsOfStage(at.store.snapshot(), undefined);
    // Eighths at the song's 120 are too quick for levels 1 and 2, which leave the same; 3 leaves all.
    expect(rungs.map(({ bpm, level }) => `${bpm}/${level ?? 'all'}`).join(' ')).toBe(
      '60/2 60/all 120/all',
    );
    at.pass(START_DELAY_SEC + 9);
    const hitsIn = (fromSec: number, toSec: number) =>
      at.strikes('right').filter((sec) => sec >= fromSec && sec < toSec).length;
    expect([hitsIn(0, 4), hitsIn(4, 8)]).toEqual([4, 8]);
    expect(heard(at)).toBe('as set 3 120');
  });

  it('stops at the level of the stage, and in the song passes none over', () => {
    const { store } = drilling();
    store.edit(setLadder({ levels }), { label: 'ladder' });
    const low = { ...TOGETHER, level: 2 as const };
    const inSong = { ...CHORUS, level: 2 as const };
    store.edit(setStages([low, inSong]), { label: 'stages' });
    const now = store.snapshot();
    expect(rungsOfStage(now, low).map(({ level }) => level)).toEqual([2, 2]);
    expect(rungsOfStage(now, inSong).map(({ level }) => level)).toEqual([1, 2, 2]);
    expect(drillPlaceOf(now, inSong, { rung: 0, pass: 0 })).toMatchObject({ rungs: 3, level: 1 });
  });
});

describe('a nudge', () => {
  it('is heard at once without losing the place, and lasts as long as its rung', async () => {
    const at = drilling();
    await at.playback.play(drill(TURNS));
    at.pass(START_DELAY_SEC + 1);
    at.playback.nudge(60);
    // 0.2 s of look-ahead at 60, then the rest of the bar, 2.8 beats, in half the time.
    at.pass(5);
    expect(at.basses()).toEqual(['C 0', 'G 2.6', 'C 4.6']);
    expect(at.playback.state()).toMatchObject({ bpm: 120, drill: { rung: 1, nudgeBpm: 60 } });
    at.playback.nudge(-57);
    at.pass(0.5);
    expect(at.playback.state()).toMatchObject({ bpm: 63, drill: { nudgeBpm: 3 } });
    at.playback.changeRung(1);
    at.pass(12);
    expect(heard(at)).toBe('turns 2 120');
    expect(at.playback.state()).not.toHaveProperty('drill.nudgeBpm');
  });

  it('stays within the tempos that can be set, and touches nothing but drills', async () => {
    const at = drilling();
    await at.playback.play(drill(undefined));
    at.playback.nudge(-900);
    at.pass(START_DELAY_SEC + 0.5);
    expect(at.playback.state()).toMatchObject({ bpm: 20, drill: { nudgeBpm: -40 } });
    await at.playback.play({ kind: 'song', times: 1 });
    at.playback.nudge(20);
    at.pass(START_DELAY_SEC + 0.5);
    expect(at.playback.state()).toMatchObject({ bpm: 120 });
  });
});
