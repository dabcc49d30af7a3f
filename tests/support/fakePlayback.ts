import { createPlayback, type Sound } from '../../src/app/playback.ts';
import { createPlayer, START_DELAY_SEC } from '../../src/audio/player.ts';
import type { Project } from '../../src/core/project.ts';
import { ok } from '../../src/core/result.ts';
import type { Part, TimedNote } from '../../src/core/rhythm/note.ts';
import { createStore } from '../../src/state/store.ts';
import { fakeTime } from './fakeTime.ts';
import { section, slots, song } from './music.ts';
import { playLog } from './playLog.ts';
import { PRACTICE, project } from './project.ts';

/** Practice settings that begin with the music at once. */
export const NO_COUNT_IN = { ...PRACTICE, click: { ...PRACTICE.click, countInBars: 0 as const } };

/** A playback on a clock that the test moves, and what it strikes. */
export function onFakeTime(parts: Partial<Project> = {}) {
  const time = fakeTime();
  const struck: { readonly note: TimedNote; readonly atSec: number }[] = [];
  const player: Sound['player'] = createPlayer(
    { clock: time.clock, outputLatencySec: () => 0 },
    {
      strike: (note, atSec) => {
        struck.push({ note, atSec });
        log.struck(note, atSec);
        return { startSec: atSec, endSec: atSec, release: () => undefined };
      },
      silence: () => undefined,
      startQuietly: () => undefined,
    },
    time.timer,
  );
  const log = playLog(player, time.clock);
  const store = createStore(project(parts));
  let interrupt = () => {};
  const sound: Sound = {
    player: log.watched,
    setLevels: () => undefined,
    resume: async () => undefined,
    onInterrupted: (listener) => {
      interrupt = listener;
    },
  };
  let watch: (() => void) | undefined;
  const playback = createPlayback({
    store,
    openSound: async () => ok(sound),
    often: (act) => {
      watch = act;
      return () => {
        watch = undefined;
      };
    },
  });
  const pass = (sec: number, tickSec?: number) => {
    time.pass(sec, tickSec);
    log.sample();
    watch?.();
  };
  /** When a part is struck, in seconds after play-back began, each time once. */
  const strikes = (part: Part) => [
    ...new Set(
      struck
        .filter(({ note }) => note.part === part)
        .map(({ atSec }) => Math.round((atSec - START_DELAY_SEC) * 1000) / 1000),
    ),
  ];
  /** The left hand's strikes in order: its note's name and the second it comes at. */
  const basses = () =>
    struck
      .filter(({ note }) => note.part === 'left')
      .map(({ note, atSec }) => {
        const name = 'C . D . E F . G . A . B'.split(' ')[note.keyNumber % 12];
        return `${name} ${Math.round((atSec - START_DELAY_SEC) * 1000) / 1000}`;
      });
  return {
    interrupt: () => interrupt(),
    pass,
    store,
    playback,
    log,
    strikes,
    basses,
    clock: time.clock,
  };
}

/** A playback of verse (C F), chorus (A G), verse again; a bar lasts two seconds. */
export function threeSections(parts: Partial<Project> = {}) {
  const verse = section('verse', { slots: slots('| C | F |'), patternId: 'p' });
  const chorus = section('chorus', { slots: slots('| Am | G |'), patternId: 'p' });
  return onFakeTime({
    song: song([verse, chorus], 'verse chorus verse'),
    practice: NO_COUNT_IN,
    ...parts,
  });
}
