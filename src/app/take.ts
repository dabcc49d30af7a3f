import type { HitHand, InputSees } from '../core/practice/expectedHits.ts';
import type { PlayedNote } from '../core/practice/playedHits.ts';
import type { TakeRecord } from '../core/practice/takeRecord.ts';
import type { TakeScore } from '../core/practice/takeScore.ts';
import { err, ok, type Result } from '../core/result.ts';
import type { Seconds } from '../core/time/ticks.ts';
import { audioTimeOf, type OutputTimestamp } from '../input/eventTime.ts';
import type { HitInput, InputError, Stop } from '../input/hitInput.ts';
import { playersHand } from './expectedOfPass.ts';
import { type LiveHit, liveHits } from './liveHits.ts';
import type { Playback } from './playback.ts';
import { JUDGED_AFTER_SEC, type JudgedListening, rungJudge } from './rungJudge.ts';
import type { SoundingPass } from './soundingPass.ts';
import { soundingHandsIn } from './stageScore.ts';
import { createTakeLog, type TakeLogParts } from './takeLog.ts';
import { matchingBetween, matchStretches, scoreOfAll } from './takeMatching.ts';
import { partsOf, sittingsOf } from './takeParts.ts';

/** An input to be listened to, what it can tell, and its measured lateness. */
export type TakeInput = {
  readonly listen: HitInput;
  readonly sees: InputSees;
  readonly latencySec: Seconds;
  /** The hands that are to be judged; those that the tool leaves to the player if left out. */
  readonly hand?: HitHand;
};

/** Why nothing is heard: the input, the sound whose clock it needs, or a device that was taken away. */
export type TakeProblem =
  | InputError
  | { readonly kind: 'no-sound'; readonly reason: string }
  | { readonly kind: 'lost' };

/** What was played of a rung of a drill, or in one playing of the song. */
export type Sitting = readonly TakeRecord[];

/** What is known of the pass that is heard now. */
export type LiveTake = { readonly pass: SoundingPass; readonly hits: readonly LiveHit[] };

export type TakesParts = TakeLogParts & {
  readonly playback: Pick<Playback, 'judgeWith'>;
  /** Opens the sound and tells how its clock is read; during a tap, click or key press. */
  readonly openClock: () => Promise<Result<() => OutputTimestamp, { readonly reason: string }>>;
  /** The page's clock in milliseconds, as events are stamped. */
  readonly nowMs: () => number;
  /** Milliseconds since 1970. */
  readonly dateMs: () => number;
};

/** Listens to the player while music plays. The functions need no `this`. */
export type Takes = {
  /**
   * Begins a take with an input, ending the one before: from now on all that is played to the music
   * counts, however often that is stopped and begun again. Drills climb by it. `onLost` is told if the
   * device is taken away meanwhile; what was heard until then stays.
   */
  readonly start: (
    input: TakeInput,
    onLost?: () => void,
  ) => Promise<Result<undefined, TakeProblem>>;
  /** Ends the take and gives its score; undefined if none was running or nothing was asked of the player in it. */
  readonly finish: () => TakeScore | undefined;
  readonly isRunning: () => boolean;
  /** The hits of the last seconds of what is heard now; undefined without a take or music. Meant for every animation frame. */
  readonly live: () => LiveTake | undefined;
  /**
   * What was played in the take that runs, or else in the last one, sitting by sitting (`sittingsOf`) as
   * far as they are over, and by tempo, hands and level in each.
   */
  readonly sittings: () => readonly Sitting[];
  /** Tells when a hit comes in, and when a take begins or ends. */
  readonly subscribe: (listener: () => void) => Stop;
};

/** How far back live hits are shown. */
const LIVE_SEC: Seconds = 12;

type Running = JudgedListening & { readonly stop: Stop };

/** Takes of what the player plays to `playback`. */
export function createTakes(parts: TakesParts): Takes {
  const listeners = new Set<() => void>();
  let running: Running | undefined;
  let attempt = 0;
  let judged: readonly Sitting[] = [];
  let live: { readonly hits: number; readonly atSec: Seconds; readonly take: LiveTake } | undefined;

  function tell(): void {
    for (const listener of listeners) listener();
  }

  function end(): Running | undefined {
    attempt++;
    const ended = running;
    running = undefined;
    live = undefined;
    ended?.stop();
    return ended;
  }

  async function start(
    input: TakeInput,
    onLost: () => void = () => undefined,
  ): Promise<Result<undefined, TakeProblem>> {
    end();
    judged = [];
    const mine = attempt;
    const clock = await parts.openClock();
    if (!clock.ok) return err({ kind: 'no-sound', reason: clock.error.reason });
    const outputTimestamp = clock.value;
    const heardNow = () => audioTimeOf(parts.nowMs(), outputTimestamp());
    const log = createTakeLog(parts, playerOf(input), heardNow);
    const onHit = (note: PlayedNote) => {
      log.hit(note);
      tell();
    };
    const { latencySec } = input;
    const lost = () => {
      if (mine === attempt) onLost();
    };
    const stopListening = await input.listen({ outputTimestamp, latencySec, onHit, onLost: lost });
    if (!stopListening.ok) {
      log.close();
      return stopListening;
    }
    const stop = () => {
      stopListening.value();
      parts.playback.judgeWith(undefined);
      log.close();
    };
    if (mine !== attempt) {
      stop();
      return ok(undefined);
    }
    running = { log, sees: input.sees, heardNow, stop };
    parts.playback.judgeWith(rungJudge(running, parts.store));
    tell();
    return ok(undefined);
  }

  /** The sittings that are judged already, and those that were over before a time of the clock. */
  function judgedBy(
    { log, sees, heardNow }: Running,
    before: readonly Sitting[],
    overSec: Seconds,
  ): readonly Sitting[] {
    const sittings = sittingsOf(log.stretches());
    const began = parts.dateMs() - 1000 * heardNow();
    const isOver = (i: number) =>
      overSec === Number.POSITIVE_INFINITY ||
      (i + 1 < sittings.length && sittings[i]!.every(({ pass }) => pass.toSec <= overSec));
    const next = [...before];
    while (next.length < sittings.length && isOver(next.length)) {
      const i = next.length;
      const beside = { before: sittings[i - 1]?.at(-1), after: sittings[i + 1]?.[0] };
      const played = partsOf(sittings[i]!, beside, log.notes(), sees);
      next.push(
        played.map(({ record, fromSec }) => ({
          ...record,
          atMs: Math.round(began + 1000 * fromSec),
        })),
      );
    }
    return next;
  }

  /** The hand is asked for anew with each pass, as the player, or the stage of a drill, may change it meanwhile. */
  function playerOf({ hand, sees }: TakeInput) {
    return ({ plan }: SoundingPass) => ({
      hand: hand ?? playersHand(soundingHandsIn(plan.request, parts.store.snapshot())),
      sees,
    });
  }

  return {
    start,
    isRunning: () => running !== undefined,
    finish() {
      const ended = end();
      if (!ended) return undefined;
      judged = judgedBy(ended, judged, Number.POSITIVE_INFINITY);
      const score = scoreOfAll(ended.log.stretches(), ended.log.notes(), ended.sees);
      tell();
      return score.expected > 0 ? score : undefined;
    },
    live() {
      if (!running) return undefined;
      const nowSec = running.heardNow();
      const hits = running.log.notes().length;
      if (live && live.hits === hits && nowSec - live.atSec < 0.05) return live.take;
      const take = liveTake(running, nowSec);
      live = take && { hits, atSec: nowSec, take };
      return take;
    },
    sittings() {
      if (running) judged = judgedBy(running, judged, running.heardNow() - JUDGED_AFTER_SEC);
      return judged;
    },
    subscribe(listener) {
      listeners.add(listener);
      return () => listeners.delete(listener);
    },
  };
}

function liveTake({ log, sees }: Running, nowSec: Seconds): LiveTake | undefined {
  const stretches = log.playing();
  const heard =
    stretches.findLast(({ pass }) => pass.fromSec <= nowSec)?.pass ?? stretches[0]?.pass;
  if (!heard) return undefined;
  const fromSec = Math.max(nowSec - LIVE_SEC, heard.originSec - 1);
  const near = stretches.filter(({ pass }) => pass.toSec > fromSec);
  const matching = matchStretches(near, log.notesSince(fromSec), sees);
  const ends = near.filter(({ pass }) => pass.passIndex === heard.passIndex);
  const untilSec = Math.max(...ends.map(({ pass }) => pass.toSec));
  const shown = matchingBetween(matching, Math.max(fromSec, heard.originSec), untilSec);
  return { pass: heard, hits: liveHits(shown, heard, nowSec - JUDGED_AFTER_SEC) };
}
