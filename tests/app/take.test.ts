import { describe, expect, it } from 'vitest';
import { createTakes } from '../../src/app/take.ts';
import { START_DELAY_SEC } from '../../src/audio/player.ts';
import type { PlayedNote } from '../../src/core/practice/playedHits.ts';
import { err, ok } from '../../src/core/result.ts';
import { setLadder, setSoundingHands } from '../../src/state/edits/practice.ts';
import { createStore } from '../../src/state/store.ts';
import { NO_COUNT_IN, onFakeTime } from '../support/fakePlayback.ts';
import { onFakeTakes } from '../support/fakeTakes.ts';
import { PRACTICE, project } from '../support/project.ts';

/** A bar of the test pattern from a time on: left on 1, right on 1 and 3; each hand so much late. */
function bar(startSec: number, bpm: number, leftMs = 0, rightMs = 0): PlayedNote[] {
  const at = (beat: number, ms: number) => startSec + (60 * beat) / bpm + ms / 1000;
  return [
    { atSec: at(0, leftMs), hand: 'left' },
    { atSec: at(0, rightMs), hand: 'right' },
    { atSec: at(2, rightMs), hand: 'right' },
  ];
}

async function deniedInput() {
  return err({ kind: 'denied' } as const);
}

async function stoppedClock() {
  return ok(() => ({ contextTime: 0, performanceTime: 0 }));
}

const SONG = { kind: 'song', times: 1 } as const;
const DRILL = { kind: 'drill', rung: 0 } as const;

describe('a take', () => {
  it('of a song counts what is played after the count-in, hand by hand', async () => {
    const { run, playback, takes, input, willPlay } = onFakeTakes();
    expect((await takes.start(input())).ok).toBe(true);
    await playback.play(SONG);
    // A bar of count-in, in which something is tried, then two bars at 120.
    willPlay({ atSec: 1, hand: 'left' }, ...bar(2, 120, 10, -20), ...bar(4, 120, 10, -20));
    run(8);
    const score = takes.finish();
    expect(score).toMatchObject({ expected: 6, played: 6, matched: 6, clean: true });
    const [left, right] = score!.hands;
    expect(left).toMatchObject({ hand: 'left', expected: 2 });
    expect(left?.meanMs).toBeCloseTo(10, 6);
    expect(right).toMatchObject({ hand: 'right', expected: 4 });
    expect(right?.meanMs).toBeCloseTo(-20, 6);
    expect(score!.steps.map(({ patternId, patternTick }) => [patternId, patternTick])).toEqual([
      ['p', 0],
      ['p', 0],
      ['p', 960],
    ]);
  });

  it('expects only the hands that the tool leaves to the player, or those that are named', async () => {
    const { run, playback, takes, input, willPlay, store } = onFakeTakes({ practice: NO_COUNT_IN });
    store.edit(setSoundingHands('right'), { label: 'hands' });
    await takes.start(input());
    await playback.play(SONG);
    willPlay({ atSec: 0, hand: 'left' }, { atSec: 2, hand: 'left' });
    run(7);
    expect(takes.finish()).toMatchObject({ expected: 2, matched: 2, clean: true });
    await takes.start(input({ hand: 'both' }));
    await playback.play(SONG);
    run(7);
    expect(takes.finish()).toMatchObject({ expected: 6, matched: 0 });
  });

  it('that is stopped expects nothing of what was left', async () => {
    const { run, playback, takes, input, willPlay } = onFakeTakes({ practice: NO_COUNT_IN });
    await takes.start(input());
    await playback.play(SONG);
    willPlay(...bar(0, 120));
    run(START_DELAY_SEC + 1.9);
    playback.stop();
    run(1);
    await playback.play(SONG);
    willPlay(...bar(0, 120));
    run(START_DELAY_SEC + 1.9);
    expect(takes.finish()).toMatchObject({ expected: 6, matched: 6, played: 6 });
  });

  it('tells wrong keys, and which hand a key belongs to', async () => {
    const { run, playback, takes, input, willPlay } = onFakeTakes({ practice: NO_COUNT_IN });
    await takes.start(input({ sees: 'keys' }));
    await playback.play({ ...SONG, range: { firstBar: 0, endBar: 1 } });
    const notes = playback
      .passes()[0]!
      .score.notes.filter((note) => note.part !== 'click')
      .map((note) => ({ atSec: note.startTick / 960, keyNumber: note.keyNumber }));
    const lowest = notes.reduce((low, note) => (note.keyNumber < low.keyNumber ? note : low));
    willPlay(...notes.map((n) => (n === lowest ? { ...n, keyNumber: n.keyNumber + 2 } : n)));
    run(5);
    const score = takes.finish();
    expect(score).toMatchObject({ expected: 3, matched: 3, played: 3 });
    expect(score?.keys).toEqual({ hits: 3, wrongHits: 1, wrongKeys: 1, absentKeys: 1 });
  });

  it('hears through a microphone that knows no hands', async () => {
    const { run, playback, takes, input, willPlay } = onFakeTakes({ practice: NO_COUNT_IN });
    await takes.start(input({ sees: 'onsets' }));
    await playback.play(SONG);
    willPlay({ atSec: 0.01 }, { atSec: 1.01 }, { atSec: 2.01 }, { atSec: 3.01 });
    run(7);
    const score = takes.finish();
    expect(score).toMatchObject({ expected: 4, matched: 4 });
    expect(score?.hands.map((hand) => hand.hand)).toEqual(['right', 'both']);
  });

  it('has no score where nothing was asked, and none twice', async () => {
    const { takes, input } = onFakeTakes();
    await takes.start(input());
    expect(takes.isRunning()).toBe(true);
    expect(takes.finish()).toBeUndefined();
    expect(takes.isRunning()).toBe(false);
    expect(takes.finish()).toBeUndefined();
  });

  it('does not begin without sound or without its input, and says why', async () => {
    const { playback } = onFakeTime();
    const parts = {
      playback,
      store: createStore(project()),
      nowMs: () => 0,
      dateMs: () => 0,
      often: () => () => undefined,
    };
    const input = { sees: 'hands', latencySec: 0 } as const;
    const silent = createTakes({ ...parts, openClock: async () => err({ reason: 'no device' }) });
    expect(await silent.start({ ...input, listen: deniedInput })).toEqual(
      err({ kind: 'no-sound', reason: 'no device' }),
    );
    const deaf = createTakes({ ...parts, openClock: stoppedClock });
    expect(await deaf.start({ ...input, listen: deniedInput })).toEqual(err({ kind: 'denied' }));
    expect(deaf.isRunning()).toBe(false);
  });
});

describe('what is shown while playing', () => {
  it('is every hit of the pass where it belongs, early or late, missed or extra', async () => {
    const { run, playback, takes, input, willPlay } = onFakeTakes({ practice: NO_COUNT_IN });
    await takes.start(input());
    await playback.play(SONG);
    willPlay(
      { atSec: 0.03, hand: 'left' },
      { atSec: -0.02, hand: 'right' },
      { atSec: 0.5, hand: 'left' },
    );
    run(START_DELAY_SEC + 0.6);
    expect(takes.live()?.hits).toMatchObject([
      { kind: 'played', hand: 'left', tick: 0, patternTick: 0, patternId: 'p', grade: 'good' },
      { kind: 'played', hand: 'right', tick: 0, grade: 'very-good' },
    ]);
    run(1.3);
    const hits = takes.live()!.hits;
    expect(hits.slice(2)).toMatchObject([
      { kind: 'missed', hand: 'right', tick: 960, patternTick: 960 },
      { kind: 'extra', hand: 'left' },
    ]);
    expect(hits[0]?.kind === 'played' && hits[0].deviationSec).toBeCloseTo(0.03, 9);
    expect(hits[3]?.tick).toBeCloseTo(480, 3);
  });

  it('is nothing without a take or music', async () => {
    const { playback, takes, input } = onFakeTakes();
    await playback.play(SONG);
    expect(takes.live()).toBeUndefined();
    playback.stop();
    await takes.start(input());
    expect(takes.live()).toBeUndefined();
  });
});

describe('a drill that is heard', () => {
  const WHEN_CLEAN = {
    practice: {
      ...NO_COUNT_IN,
      drill: {
        ...PRACTICE.drill,
        ladder: { ...PRACTICE.drill.ladder, climb: 'when-clean' as const, passesPerRung: 1 },
      },
    },
  };

  it('climbs two rungs when they are clean and falls back after one that is not', async () => {
    const { run, playback, takes, input, willPlay, store } = onFakeTakes(WHEN_CLEAN);
    store.edit(setLadder({ fallBackAfter: 1 }), { label: 'fall back' });
    await takes.start(input());
    await playback.play(DRILL);
    const [second, third] = [4, 4 + 240 / 66];
    // Clean at 60 and 66 beats a minute, then only the left hand at 72.
    willPlay(
      ...bar(0, 60, 5, -5),
      ...bar(second, 66, 5, -5),
      ...bar(third, 72).filter((note) => note.hand === 'left'),
    );
    const rungs: number[] = [];
    for (let i = 0; i < 60; i++) {
      run(0.2);
      const state = playback.state();
      if (state.status === 'playing' && state.bpm !== rungs.at(-1)) rungs.push(state.bpm);
    }
    expect(rungs).toEqual([60, 66, 72, 66]);
    playback.stop();
    takes.finish();
    expect(
      takes
        .sittings()
        .map((records) =>
          records.map(({ bpm, passes, score }) => [bpm, passes, score.expected, score.clean]),
        ),
    ).toEqual([[[60, 1, 3, true]], [[66, 1, 3, true]], [[72, 1, 3, false]], [[66, 0, 2, false]]]);
  });

  it('holds a rung that nobody plays to, and stops listening with the take', async () => {
    const { run, playback, takes, input, willPlay } = onFakeTakes(WHEN_CLEAN);
    await takes.start(input());
    await playback.play(DRILL);
    run(9);
    expect(playback.state()).toMatchObject({ bpm: 60 });
    takes.finish();
    willPlay(...bar(2.92, 60));
    run(8);
    expect(playback.state()).toMatchObject({ bpm: 60 });
  });
});
