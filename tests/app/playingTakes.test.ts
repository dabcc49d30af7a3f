import { describe, expect, it } from 'vitest';
import { createPlayingTakes, type HeardWith } from '../../src/app/playingTakes.ts';
import type { PlayRequest } from '../../src/app/score.ts';
import type { KindOfInput } from '../../src/app/takeInputs.ts';
import { START_DELAY_SEC } from '../../src/audio/player.ts';
import type { PlayedNote } from '../../src/core/practice/playedHits.ts';
import type { TakeRecord } from '../../src/core/practice/takeRecord.ts';
import type { Project } from '../../src/core/project.ts';
import { err } from '../../src/core/result.ts';
import { AS_WRITTEN } from '../../src/state/arrangement.ts';
import { setLadder } from '../../src/state/edits/practice.ts';
import { NO_COUNT_IN } from '../support/fakePlayback.ts';
import { DATE_MS, onFakeTakes } from '../support/fakeTakes.ts';
import { section, slots, song } from '../support/music.ts';

const DRILL = { kind: 'drill', rung: 0 } as const;
const KEYS: HeardWith = { kind: 'keys', latencySec: 0 };

async function denied() {
  return err({ kind: 'denied' } as const);
}

/** A player who is heard as `heard` says, and what is kept of it; drills go one bar a rung, at 60, 66 and 72. */
function playing(
  heard: HeardWith | 'nobody' = KEYS,
  parts: Partial<Project> = {},
  listen?: KindOfInput['listen'],
) {
  const fakes = onFakeTakes({ practice: NO_COUNT_IN, ...parts });
  fakes.store.edit(setLadder({ passesPerRung: 1, climb: 'when-clean' }), { label: 'ladder' });
  const { listen: fakeListen, sees } = fakes.input();
  const kind = { listen: listen ?? fakeListen, sees };
  const kept: TakeRecord[] = [];
  const playingTakes = createPlayingTakes({
    ...fakes,
    inputs: { keys: kind, pads: kind, midi: kind, microphone: kind },
    heardWith: () => (heard === 'nobody' ? undefined : heard),
    keep: (songId, takes) => {
      expect(songId).toBe('test project');
      kept.push(...takes);
    },
  });
  const begin = async (request: PlayRequest = DRILL) => {
    await fakes.playback.play(request);
    // The take opens its clock and its input first.
    await new Promise((resolve) => setTimeout(resolve));
  };
  const told = () =>
    kept.map(({ target, hand, bpm, level, passes, score }) =>
      [
        Object.values(target).join(' '),
        hand,
        bpm,
        ...(level ? [`level ${level}`] : []),
        `${passes}×`,
        `${score.matched} of ${score.expected}`,
        ...(score.clean ? ['clean'] : []),
      ].join(', '),
    );
  return { ...fakes, playingTakes, begin, kept, told };
}

/** A bar of the test pattern from a time on. */
function bar(startSec: number, bpm: number): PlayedNote[] {
  const at = (beat: number) => startSec + (60 * beat) / bpm;
  return [
    { atSec: at(0), hand: 'left' },
    { atSec: at(0), hand: 'right' },
    { atSec: at(2), hand: 'right' },
  ];
}

describe('a drill', () => {
  it('is told rung by rung as it goes on, and as a whole at the end', async () => {
    const { run, willPlay, begin, playingTakes, playback } = playing();
    await begin();
    willPlay(...bar(0, 60), { atSec: 4, hand: 'left' });
    run(START_DELAY_SEC + 4.5);
    expect(playback.state()).toMatchObject({ bpm: 66 });
    expect(playingTakes.state().result).toMatchObject({
      of: 'drill',
      bpm: 60,
      score: { expected: 3, played: 3, matched: 3, clean: true },
    });
    run(2);
    playback.stop();
    const { result } = playingTakes.state();
    expect(result?.bpm).toBeUndefined();
    expect(result?.score).toMatchObject({ expected: 6, matched: 4, clean: false });
  });

  it('says when the device goes that hears the player, and counts what was heard until then', async () => {
    const { run, willPlay, begin, lose, playback, playingTakes } = playing();
    await begin();
    willPlay(...bar(0, 60));
    run(START_DELAY_SEC + 3);
    lose();
    expect(playingTakes.state().problem).toEqual({ kind: 'lost' });
    playback.stop();
    expect(playingTakes.state()).toMatchObject({
      problem: { kind: 'lost' },
      result: { score: { matched: 3 } },
    });
  });

  it('is kept rung by rung, a rung that is begun again apart, but not where nobody played', async () => {
    const { run, willPlay, begin, playback, told, kept } = playing();
    await begin();
    // Clean at 60; at 66 first the right hand alone, then clean; nothing at 72.
    willPlay(
      ...bar(0, 60),
      ...bar(4, 66).filter(({ hand }) => hand === 'right'),
      ...bar(4 + 240 / 66, 66),
    );
    run(START_DELAY_SEC + 5);
    expect(told()).toEqual(['pattern p, both, 60, 1×, 3 of 3, clean']);
    run(11);
    playback.stop();
    expect(told()).toEqual([
      'pattern p, both, 60, 1×, 3 of 3, clean',
      'pattern p, both, 66, 1×, 2 of 3',
      'pattern p, both, 66, 1×, 3 of 3, clean',
    ]);
    const startMs = DATE_MS + 1000 * START_DELAY_SEC;
    expect(kept.map(({ atMs }) => Math.round(atMs - startMs))).toEqual([0, 4000, 7636]);
  });

  it('of which little was heard when it was stopped leaves no take', async () => {
    const { run, willPlay, begin, playback, kept } = playing();
    await begin();
    willPlay(...bar(0, 60));
    run(START_DELAY_SEC + 1);
    playback.stop();
    expect(kept).toEqual([]);
  });
});

describe('the song', () => {
  const TWO_SECTIONS: Partial<Project> = {
    song: song(
      [
        section('verse', { slots: slots('| C | F |'), patternId: 'p' }),
        section('chorus', { slots: slots('| Am | G |'), patternId: 'p' }),
      ],
      'verse chorus',
    ),
  };
  const bars = (count: number) => Array.from({ length: count }, (_, i) => bar(2 * i, 120)).flat();

  it('is heard and told once it has stopped, and kept as what was practised of it', async () => {
    const { run, willPlay, begin, playingTakes, told } = playing(KEYS, TWO_SECTIONS);
    await begin({ kind: 'song', times: 1 });
    willPlay(...bars(4));
    run(6);
    expect(playingTakes.state()).toEqual({});
    run(6);
    expect(playingTakes.state().result).toMatchObject({ of: 'song', score: { matched: 12 } });
    await begin({ kind: 'song', range: { firstBar: 2, endBar: 4 }, times: 2 });
    willPlay(...bars(4));
    run(12);
    await begin({ kind: 'song', range: { firstBar: 1, endBar: 3 }, times: 1 });
    willPlay(...bars(2));
    run(8);
    expect(told()).toEqual([
      'song, both, 120, 1×, 12 of 12, clean',
      'section chorus, both, 120, 2×, 12 of 12, clean',
      'join verse chorus, both, 120, 1×, 6 of 6, clean',
    ]);
  });

  it('says its level, and is not played through where its tempo changes under way', async () => {
    const { run, willPlay, begin, playback, told } = playing(KEYS, TWO_SECTIONS);
    playback.setManner({ speedPercent: 100, arrangement: { ...AS_WRITTEN, level: 1 } });
    await begin({ kind: 'song', times: 1 });
    willPlay(...bars(4).filter(({ hand }) => hand === 'left'));
    run(START_DELAY_SEC + 5.9);
    playback.setManner({ speedPercent: 50, arrangement: { ...AS_WRITTEN, level: 1 } });
    run(9);
    expect(told()).toHaveLength(1);
    expect(told()[0]).toMatch(/^song, both, 120, level 1, 0×/);
  });

  it('is heard with another input from when that was chosen, and not asked for what came before', async () => {
    const { run, willPlay, begin, playingTakes, takes } = playing(KEYS, TWO_SECTIONS);
    expect(playingTakes.listenAnew()).toBe(false);
    await begin({ kind: 'song', times: 1 });
    willPlay(...bars(4));
    run(START_DELAY_SEC + 3.9);
    expect(playingTakes.listenAnew()).toBe(true);
    await new Promise((resolve) => setTimeout(resolve));
    expect(takes.isRunning()).toBe(true);
    run(8);
    expect(playingTakes.state().result?.score).toMatchObject({
      expected: 6,
      matched: 6,
      played: 6,
    });
  });

  it('is not played through where one jumps out of it', async () => {
    const { run, willPlay, begin, playback, kept } = playing(KEYS, TWO_SECTIONS);
    await begin({ kind: 'song', times: 1 });
    willPlay(...bars(4));
    run(START_DELAY_SEC + 0.5);
    playback.jump({ toBar: 2 });
    run(12);
    expect(kept.map(({ passes }) => passes)).toEqual([0]);
  });
});

it('hears nobody where nothing is chosen', async () => {
  const { run, begin, playingTakes, playback, takes } = playing('nobody');
  await begin();
  expect(takes.isRunning()).toBe(false);
  run(2);
  playback.stop();
  expect(playingTakes.state()).toEqual({});
});

it('says why the player is not heard, when an input is tried and when it is needed', async () => {
  const { begin, playingTakes } = playing(KEYS, {}, denied);
  await playingTakes.tryInput('midi');
  expect(playingTakes.state()).toEqual({ problem: { kind: 'denied' } });
  playingTakes.forget();
  await begin();
  expect(playingTakes.state()).toEqual({ problem: { kind: 'denied' } });
});

it('does not listen to one who only listens', async () => {
  const { begin, takes } = playing();
  await begin({ kind: 'pattern', patternId: 'p' });
  expect(takes.isRunning()).toBe(false);
});
