import type { Levels } from '../audio/mix.ts';
import type { Player } from '../audio/player.ts';
import { ok, type Result } from '../core/result.ts';
import type { Seconds } from '../core/time/ticks.ts';
import { AS_WRITTEN, arrangedProject } from '../state/arrangement.ts';
import { selectTimeline } from '../state/selectors.ts';
import type { Store } from '../state/store.ts';
import { passCountedOn, restedPass } from './clickRest.ts';
import {
  type CoursePass,
  drillPlace,
  firstPass,
  nudgedPass,
  type PlayingManner,
  passAfter,
  playedTimes,
  scoreOfPass,
} from './course.ts';
import {
  type DrillWish,
  isSameRung,
  type RungJudge,
  rungsOfStage,
  wishBeside,
} from './drillCourse.ts';
import { type Jump, passWithJump } from './jump.ts';
import { movedBy, sameScoreTick } from './movedPass.ts';
import { type PlaybackPosition, positionIn } from './playbackPosition.ts';
import type { PlaybackProblem, PlaybackState } from './playbackState.ts';
import { practiceIn } from './practiceIn.ts';
import {
  isTrial,
  type PatternRequest,
  type PlayRequest,
  type Score,
  type ScoreProblem,
  scoreSeconds,
  scoreTick,
  type TimedScore,
  type Times,
  timedScore,
} from './score.ts';
import { type SoundingPass, soundingPasses } from './soundingPass.ts';

/** What sounds, once the browser has let it. */
export type Sound = {
  readonly player: Player<LivePass>;
  readonly setLevels: (levels: Levels) => void;
  /** Lets sound go on where the system has interrupted it. */
  readonly resume: () => Promise<void>;
  /** Tells when the system has interrupted it. */
  readonly onInterrupted: (listener: () => void) => void;
};

export type PlaybackParts = {
  readonly store: Store;
  /** Opens the sound at the first play; the same promise from then on. */
  readonly openSound: () => Promise<Result<Sound, { readonly reason: string }>>;
  /** Does something every few hundredths of a second, until the function it gives is called. */
  readonly often: (act: () => void) => () => void;
};

/** What a user can do with the sound. The functions need no `this`. */
export type Playback = {
  readonly state: () => PlaybackState;
  readonly subscribe: (listener: () => void) => () => void;
  /** Stops what plays and begins anew; resolves once it sounds or has failed (`state().problem`). */
  readonly play: (request: PlayRequest) => Promise<void>;
  readonly stop: () => void;
  /** What is heard now; undefined when nothing plays. Meant for every animation frame. */
  readonly position: () => PlaybackPosition | undefined;
  /** What plays and is about to play, on the audio clock: see `Player.spans`. */
  readonly passes: () => readonly SoundingPass[];
  /** Who tells a drill how its rungs were played; nobody where undefined. */
  readonly judgeWith: (judge: RungJudge | undefined) => void;
  /** Takes a drill a rung up or down, beyond the ends of its ladder a stage on or back (`wishBeside`); from its next pass on. */
  readonly changeRung: (by: 1 | -1) => void;
  /** Takes a drill to a rung (counted from 0), from its next pass on; without a stage the drill as it is set. */
  readonly goToRung: (wish: DrillWish) => void;
  /** Makes a drill so many beats a minute faster (slower, where negative) at once, for as long as its rung lasts. */
  readonly nudge: (byBpm: number) => void;
  /** Leaves the song at the next bar line to go on elsewhere in it, without a gap; the last jump asked for counts. */
  readonly jump: (to: Jump) => void;
  /** How often the song that plays is played in all. */
  readonly setTimes: (times: Times) => void;
  /** Master, hands and band, 0 to 1; the click's level belongs to the project. */
  readonly setVolumes: (volumes: Omit<Levels, 'click'>) => void;
  /** Speed, key and level, heard at once; a drill keeps its ladder's tempos. */
  readonly setManner: (manner: PlayingManner) => void;
  /**
   * Where a pattern of the project plays round and round, or one is tried, goes over to another one
   * of the same kind without a gap.
   */
  readonly turnTo: (next: PatternRequest) => void;
  /** Forgets the problem that is shown. */
  readonly dismiss: () => void;
};

/** A pass as the player gets it, with the music that it was made of. */
type LivePass = TimedScore & { readonly plan: CoursePass; readonly score: Score };

/**
 * Plays the project: every pass is made from the project as it is when the pass begins, and again
 * at every edit while it sounds, from the look-ahead on and without a gap.
 */
export function createPlayback({ store, openSound, often }: PlaybackParts): Playback {
  const listeners = new Set<() => void>();
  let state: PlaybackState = { status: 'stopped' };
  let sound: Sound | undefined;
  let volumes: Omit<Levels, 'click'> | undefined;
  let manner: PlayingManner = { speedPercent: 100, arrangement: AS_WRITTEN };
  let wanted: DrillWish | undefined;
  /** The pass that was made last, which may not sound yet. */
  let last: LivePass | undefined;
  let judge: RungJudge | undefined;
  let wantedJump: Jump | undefined;
  /** Why no pass could follow, which counts once the music has ended. */
  let failure: ScoreProblem | undefined;
  let attempt = 0;
  let endWatch: (() => void) | undefined;

  function show(next: PlaybackState): void {
    if (JSON.stringify(next) === JSON.stringify(state)) return;
    state = next;
    for (const listener of listeners) listener();
  }

  function applyLevels(): void {
    const click = store.snapshot().practice.click.level;
    if (sound && volumes) sound.setLevels({ ...volumes, click });
  }

  function madePass(plan: CoursePass): Result<LivePass, ScoreProblem> {
    const project = store.snapshot();
    const made = scoreOfPass(plan, project, manner);
    if (!made.ok) return made;
    const score = restedPass(plan, made.value, project.practice.click);
    return ok({
      ...timedScore(score, practiceIn(plan.request, project), plan.countInBars),
      plan,
      score,
    });
  }

  /** Gives the first pass, then each time the one that follows; asked by the player shortly before it begins. */
  function passesFrom(first: LivePass): () => LivePass | undefined {
    last = undefined;
    return () => {
      if (!last) return (last = first);
      const plan = passCountedOn(passAfter(last.plan, store.snapshot(), wanted, judge), last);
      wanted = undefined;
      const next = plan && madePass(plan);
      failure = next?.ok === false ? next.error : undefined;
      return next?.ok ? (last = next.value) : undefined;
    };
  }

  function playingState({ plan, score }: LivePass): PlaybackState {
    const drill = drillPlace(plan, store.snapshot());
    const bpm = score.tempoMap[0]?.tempo.bpm ?? 0;
    return {
      status: 'playing',
      request: plan.request,
      bpm,
      ...(drill && { drill }),
      ...(wanted && { wanted }),
      ...(plan.request.kind === 'song' && { time: plan.time ?? 1 }),
      ...(wantedJump && { wantedBar: wantedJump.toBar }),
    };
  }

  function watchPass(): void {
    const heard = sound?.player.position();
    if (!heard) return;
    if (heard.pass.plan.after === wantedJump) wantedJump = undefined;
    show(playingState(heard.pass));
  }

  function ended(problem?: PlaybackProblem): void {
    endWatch?.();
    wanted = undefined;
    wantedJump = undefined;
    show({ status: 'stopped', ...(problem && { problem }) });
  }

  function stop(): void {
    attempt++;
    sound?.player.stop();
    ended();
  }

  /** The clock stands still: what would go on later would be out of the player's time. */
  function interrupted(): void {
    if (state.status === 'stopped') return;
    stop();
    ended({ kind: 'interrupted' });
  }

  async function play(request: PlayRequest): Promise<void> {
    stop();
    const mine = attempt;
    show({ status: 'starting', request });
    const opened = await openSound();
    if (mine !== attempt) return;
    if (!opened.ok) return ended({ kind: 'no-sound', reason: opened.error.reason });
    if (!sound) {
      opened.value.player.onEnd(() => ended(failure));
      opened.value.onInterrupted(interrupted);
    }
    sound = opened.value;
    applyLevels();
    const first = madePass(firstPass(request, store.snapshot()));
    if (!first.ok) return ended(first.error);
    sound.player.play(passesFrom(first.value));
    show(playingState(first.value));
    endWatch = often(watchPass);
  }

  function goToRung({ rung, stage }: DrillWish): void {
    if (state.status !== 'playing' || !state.drill) return;
    const top = rungsOfStage(store.snapshot(), stage).length - 1;
    wanted = { rung: Math.min(Math.max(rung, 0), top), ...(stage && { stage }) };
    watchPass();
  }

  /** What a drill is to play next as far as is known now. */
  function drillNow(): DrillWish | undefined {
    if (state.status !== 'playing' || !state.drill) return undefined;
    const { rung, stage } = state.drill;
    return wanted ?? { rung: rung - 1, ...(stage && { stage }) };
  }

  /** Changes the plan of what sounds and of what follows, from what is still to be handed over on. */
  function replan(change: (old: LivePass, fixedSec: Seconds) => CoursePass): void {
    if (state.status !== 'playing' || state.request.kind !== 'song' || !sound || !last) return;
    // Where all passes are over already, the last notes dying away, the last of them is changed.
    last = { ...last, plan: change(last, last.lengthSec) };
    sound.player.revise((old, _, fixedSec) => {
      const made = madePass(change(old, fixedSec));
      if (!made.ok) return undefined;
      last = made.value;
      return { pass: made.value, secondsIn: (sec: Seconds) => sec };
    });
    watchPass();
  }

  function jump(to: Jump): void {
    wantedJump = to;
    replan((old, fixedSec) => passWithJump(old.plan, old.score, to, fixedSec));
  }

  /** Makes what sounds anew; the plan of each pass may change with it. */
  function revise(planOf: (plan: CoursePass) => CoursePass = (plan) => plan): void {
    if (state.status !== 'playing' || !sound || !last) return;
    const arranged = arrangedProject(store.snapshot(), manner.arrangement);
    const moved = movedBy(last.score.timeline, selectTimeline(arranged));
    wantedJump = wantedJump && moved.jump(wantedJump);
    let problem: ScoreProblem | undefined;
    sound.player.revise((old) => {
      const made = madePass(planOf(moved.pass(old.plan)));
      problem = made.ok ? undefined : made.error;
      if (!made.ok) return undefined;
      last = made.value;
      const tickIn = (sec: Seconds) =>
        sameScoreTick(old.score, made.value.score, scoreTick(old.score, sec));
      return { pass: made.value, secondsIn: (sec) => scoreSeconds(made.value.score, tickIn(sec)) };
    });
    if (problem?.kind === 'nothing-to-play') {
      stop();
      ended(problem);
    }
    watchPass();
  }

  store.subscribe(() => {
    applyLevels();
    revise();
  });

  return {
    state: () => state,
    subscribe(listener) {
      listeners.add(listener);
      return () => listeners.delete(listener);
    },
    play,
    stop,
    position() {
      const heard = sound?.player.position();
      return heard && positionIn(heard.pass, heard.sec, store.snapshot());
    },
    passes: () => soundingPasses(sound?.player.spans() ?? []),
    judgeWith: (next) => {
      judge = next;
    },
    goToRung,
    jump,
    setTimes: (times) => replan(({ plan }) => playedTimes(plan, times)),
    changeRung(by) {
      const now = drillNow();
      if (now) goToRung(wishBeside(store.snapshot(), now, by));
    },
    nudge(byBpm) {
      const heard = sound?.player.position()?.pass.plan;
      if (!heard?.drill) return;
      // A pass that is made already may be on another rung.
      revise((plan) =>
        isSameRung(plan, heard) ? nudgedPass(plan, store.snapshot(), byBpm) : plan,
      );
    },
    setVolumes(next) {
      volumes = next;
      applyLevels();
    },
    setManner(next) {
      if (isSameManner(next, manner)) return;
      manner = next;
      revise();
    },
    turnTo: (next) =>
      revise((plan) =>
        plan.request.kind === 'pattern' && isTrial(plan.request) === isTrial(next)
          ? { ...plan, request: next }
          : plan,
      ),
    dismiss: () => {
      if (state.status === 'stopped') show({ status: 'stopped' });
    },
  };
}

function isSameManner(one: PlayingManner, other: PlayingManner): boolean {
  return (
    one.speedPercent === other.speedPercent &&
    one.arrangement.semitones === other.arrangement.semitones &&
    one.arrangement.level === other.arrangement.level
  );
}
