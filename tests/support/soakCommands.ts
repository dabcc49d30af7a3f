import * as fc from 'fast-check';
import type { DrillWish } from '../../src/app/drillCourse.ts';
import type { Playback } from '../../src/app/playback.ts';
import type { PlayRequest } from '../../src/app/score.ts';
import type { Project } from '../../src/core/project.ts';
import type { Seconds } from '../../src/core/time/ticks.ts';
import { setBand, setClick, setSoundingHands } from '../../src/state/edits/practice.ts';
import { setTempo } from '../../src/state/edits/song.ts';
import type { Store } from '../../src/state/store.ts';
import { anyEdit, anyStage } from './edits.ts';

/** What commands are given to. */
export type Commanded = { readonly playback: Playback; readonly store: Store };

/** Something that a user does, after which `waitSec` pass. */
export type Command = {
  readonly name: string;
  readonly waitSec: Seconds;
  readonly act: (to: Commanded) => void | Promise<void>;
};

type Act = Omit<Command, 'waitSec'>;

function act<T>(name: string, value: fc.Arbitrary<T>, run: (to: Commanded, value: T) => void) {
  return value.map(
    (drawn): Act => ({
      name: `${name} ${JSON.stringify(drawn) ?? ''}`,
      act: (to) => run(to, drawn),
    }),
  );
}

const patternId = fc.constantFrom('p', 'q', 'r');
const times = fc.constantFrom(1, 2, 'until-stopped' as const);
const range = fc
  .tuple(fc.nat(5), fc.integer({ min: 1, max: 3 }))
  .map(([firstBar, bars]) => ({ firstBar, endBar: firstBar + bars }));

const wish: fc.Arbitrary<DrillWish> = fc.record(
  { rung: fc.nat(3), stage: anyStage },
  { requiredKeys: ['rung'] },
);

const request: fc.Arbitrary<PlayRequest> = fc.oneof(
  times.map((n) => ({ kind: 'song', times: n }) as const),
  fc.tuple(range, times).map(([bars, n]) => ({ kind: 'song', times: n, range: bars }) as const),
  patternId.map((id) => ({ kind: 'pattern', patternId: id }) as const),
  wish.map((asked) => ({ kind: 'drill', ...asked }) as const),
);

const level = fc.constantFrom(0, 0.5, 0.8, 1, 1);

function anyAct(play: fc.Arbitrary<PlayRequest>): fc.Arbitrary<Act> {
  return fc.oneof(
    {
      weight: 3,
      arbitrary: play.map((asked) => ({
        name: `play ${JSON.stringify(asked)}`,
        act: ({ playback }: Commanded) => playback.play(asked),
      })),
    },
    fc.constant({ name: 'stop', act: ({ playback }: Commanded) => playback.stop() }),
    act('jump to bar', fc.nat(5), ({ playback }, toBar) => playback.jump({ toBar })),
    act('jump to bars', range, ({ playback }, bars) =>
      playback.jump({ toBar: bars.firstBar, range: bars }),
    ),
    act('times', times, ({ playback }, n) => playback.setTimes(n)),
    act(
      'manner',
      fc.tuple(
        fc.integer({ min: 40, max: 180 }),
        fc.constantFrom(0, 0, -5, 3),
        fc.constantFrom(undefined, undefined, 1 as const, 3 as const),
      ),
      ({ playback }, [speedPercent, semitones, chosen]) =>
        playback.setManner({
          speedPercent,
          arrangement: { semitones, ...(chosen && { level: chosen }) },
        }),
    ),
    act('rungs', fc.constantFrom(-1 as const, 1 as const), ({ playback }, by) =>
      playback.changeRung(by),
    ),
    act('rung', wish, ({ playback }, asked) => playback.goToRung(asked)),
    act('nudge', fc.integer({ min: -6, max: 6 }), ({ playback }, by) => playback.nudge(by)),
    act('turn to', patternId, ({ playback }, id) =>
      playback.turnTo({ kind: 'pattern', patternId: id }),
    ),
    act(
      'volumes',
      fc.tuple(level, level, level, level),
      ({ playback }, [master, left, right, band]) =>
        playback.setVolumes({ master, left, right, band }),
    ),
    act('tempo', fc.integer({ min: 40, max: 240 }), ({ store }, bpm) =>
      store.edit(setTempo(bpm), { label: 'tempo' }),
    ),
    act('hands', fc.constantFrom('left', 'right', 'both', 'none'), ({ store }, hands) =>
      store.edit(setSoundingHands(hands), { label: 'hands' }),
    ),
    act('band', fc.boolean(), ({ store }, on) => store.edit(setBand(on), { label: 'band' })),
    act(
      'click',
      fc.record({ on: fc.boolean(), beats: fc.constantFrom('all', 'back-beat'), level }),
      ({ store }, parts) => store.edit(setClick(parts), { label: 'click' }),
    ),
    fc.constant({ name: 'undo', act: ({ store }: Commanded) => store.undo() }),
    fc.constant({ name: 'redo', act: ({ store }: Commanded) => store.redo() }),
  );
}

/**
 * Anything that a user may do while music plays, one command in four an edit of the song (see
 * `anyEdit` for what its sections and patterns are to be called), some the opening of `song`, so
 * that there goes on being something to play. Waits of at most `longestWaitSec` follow.
 */
export function anyCommand(song: Project, longestWaitSec: Seconds = 3): fc.Arbitrary<Command> {
  const edit = fc.tuple(anyEdit(), fc.nat()).map(
    ([made, n]): Act => ({
      name: `edit ${n}`,
      act: ({ store }) => store.edit(made, { label: 'edit' }),
    }),
  );
  const open: Act = { name: 'open the song', act: ({ store }) => store.replace(song) };
  // Doubles would nearly all be tiny: there are most of them near 0.
  const wait = fc.noBias(fc.nat(1000)).map((share) => (share / 1000) * longestWaitSec);
  const waitSec = fc.oneof(
    fc.constant(0),
    { weight: 2, arbitrary: wait.map((sec) => sec / 10) },
    { weight: 3, arbitrary: wait },
  );
  const done = fc.oneof(
    { weight: 8, arbitrary: anyAct(request) },
    { weight: 3, arbitrary: edit },
    { weight: 1, arbitrary: fc.constant(open) },
  );
  return fc.tuple(done, waitSec).map(([what, sec]) => ({ ...what, waitSec: sec }));
}
