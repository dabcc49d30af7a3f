import type { PlayedNote } from '../core/practice/playedHits.ts';
import type { Seconds } from '../core/time/ticks.ts';
import type { Stop } from '../input/hitInput.ts';
import { selectPatternAt } from '../state/selectors.ts';
import type { Store } from '../state/store.ts';
import { type ExpectedStretch, expectedInPass, type PlayerPart } from './expectedOfPass.ts';
import type { Playback } from './playback.ts';
import type { SoundingPass } from './soundingPass.ts';
import { cutAt } from './takeMatching.ts';
import { targetOf } from './takeTarget.ts';

export type TakeLogParts = {
  readonly playback: Pick<Playback, 'passes' | 'subscribe' | 'state'>;
  readonly store: Pick<Store, 'snapshot'>;
  /** Does something every few hundredths of a second, until the function it gives is called. */
  readonly often: (act: () => void) => () => void;
};

/** What was asked of the player since a take began, and what came in. */
export type TakeLog = {
  readonly hit: (note: PlayedNote) => void;
  /** All stretches of music that sounded or are about to, in order of time. */
  readonly stretches: () => readonly ExpectedStretch[];
  /** Those since the last command to play; none when nothing plays. */
  readonly playing: () => readonly ExpectedStretch[];
  /** All that was played, in order of arrival. */
  readonly notes: () => readonly PlayedNote[];
  readonly notesSince: (sec: Seconds) => readonly PlayedNote[];
  /** Ends keeping the log; what is in it stays. */
  readonly close: Stop;
};

/**
 * Keeps a log of a take: looks often at what plays, since the player forgets what is over, and cuts
 * off what was about to play when it is stopped.
 */
export function createTakeLog(
  { playback, store, often }: TakeLogParts,
  player: (pass: SoundingPass) => PlayerPart,
  heardNow: () => Seconds,
): TakeLog {
  const notes: PlayedNote[] = [];
  /** Stretches of what was stopped or has ended, and those of what plays. */
  let past: readonly ExpectedStretch[] = [];
  let present: readonly ExpectedStretch[] = [];
  let isClosed = false;
  /** What sounded before the take began was not asked of the player. */
  const beganSec = heardNow();

  function stretchOf(pass: SoundingPass): ExpectedStretch {
    const known = present.find((each) => isSame(each.pass, pass));
    if (known) return known;
    const project = store.snapshot();
    const target = targetOf(pass.plan.request, project);
    return {
      ...expectedInPass(pass, player(pass), selectPatternAt(project)),
      ...(target && { target }),
    };
  }

  function look(): void {
    if (isClosed) return;
    const passes = playback.passes().flatMap((pass) => sinceSec(pass, beganSec));
    const [first] = passes;
    if (!first) return;
    const over = present.filter(({ pass }) => pass.fromSec < first.fromSec);
    present = [...over, ...passes.map(stretchOf)];
  }

  function watchStop(): void {
    if (isClosed || playback.state().status === 'playing') return;
    const nowSec = heardNow();
    past = [...past, ...present.map((stretch) => cutAt(stretch, nowSec))];
    present = [];
  }

  const stops = [often(look), playback.subscribe(watchStop)];
  look();
  return {
    hit: (note) => {
      notes.push(note);
    },
    stretches() {
      look();
      return [...past, ...present];
    },
    playing() {
      look();
      return present;
    },
    notes: () => notes,
    notesSince: (sec) => notes.filter((note) => note.atSec >= sec),
    close() {
      look();
      const nowSec = heardNow();
      present = present.map((stretch) => cutAt(stretch, nowSec));
      isClosed = true;
      for (const stop of stops) stop();
    },
  };
}

/** What of a pass sounds from a time on, if anything does. */
function sinceSec(pass: SoundingPass, sec: Seconds): SoundingPass[] {
  if (pass.toSec <= sec) return [];
  return [pass.fromSec >= sec ? pass : { ...pass, fromSec: sec }];
}

/** A pass that was edited, or begins at another time, is another one. */
function isSame(one: SoundingPass, other: SoundingPass): boolean {
  return (
    one.score === other.score &&
    one.originSec === other.originSec &&
    one.fromSec === other.fromSec &&
    one.toSec === other.toSec
  );
}
