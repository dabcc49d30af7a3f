import { createTakes, type TakeInput } from '../../src/app/take.ts';
import { START_DELAY_SEC } from '../../src/audio/player.ts';
import type { PlayedNote } from '../../src/core/practice/playedHits.ts';
import type { Project } from '../../src/core/project.ts';
import { ok } from '../../src/core/result.ts';
import { onFakeTime } from './fakePlayback.ts';

/** When the test's clock stood at 0, in milliseconds since 1970. */
export const DATE_MS = 1_000_000;

/** Takes on a clock that the test moves, with a playback and a player who does as the test says. */
export function onFakeTakes(parts: Partial<Project> = {}) {
  const { pass, store, playback, clock } = onFakeTime(parts);
  const acts = new Set<() => void>();
  const waiting: PlayedNote[] = [];
  let onHit: ((note: PlayedNote) => void) | undefined;
  let onLost: (() => void) | undefined;
  const often = (act: () => void) => {
    acts.add(act);
    return () => acts.delete(act);
  };
  const takes = createTakes({
    playback,
    store,
    openClock: async () => ok(() => ({ contextTime: clock(), performanceTime: 1000 * clock() })),
    nowMs: () => 1000 * clock(),
    dateMs: () => DATE_MS + 1000 * clock(),
    often,
  });
  const input = (more: Partial<TakeInput> = {}): TakeInput => ({
    sees: 'hands',
    latencySec: 0,
    listen: async (hearing) => {
      onHit = hearing.onHit;
      onLost = hearing.onLost;
      return ok(() => {
        onHit = undefined;
      });
    },
    ...more,
  });
  /** Lets time pass in small steps; what waits to be played is, once its time has come. */
  const run = (sec: number) => {
    const endSec = clock() + sec;
    while (clock() < endSec - 1e-9) {
      pass(Math.min(0.02, endSec - clock()));
      const due = waiting.filter((note) => note.atSec <= clock());
      for (const note of due) {
        waiting.splice(waiting.indexOf(note), 1);
        onHit?.(note);
      }
      for (const act of acts) act();
    }
  };
  /** Has notes played so many seconds after play-back that began now. */
  const willPlay = (...notes: PlayedNote[]) => {
    const startSec = clock() + START_DELAY_SEC;
    waiting.push(...notes.map((note) => ({ ...note, atSec: startSec + note.atSec })));
  };
  /** Takes the device away that the player is heard with. */
  const lose = () => {
    onHit = undefined;
    onLost?.();
  };
  return { lose, run, store, playback, takes, input, willPlay, clock, often };
}
