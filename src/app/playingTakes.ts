import type { TakeRecord } from '../core/practice/takeRecord.ts';
import type { TakeScore } from '../core/practice/takeScore.ts';
import type { Project } from '../core/project.ts';
import type { Bpm } from '../core/time/tempoMap.ts';
import type { Seconds } from '../core/time/ticks.ts';
import type { Store } from '../state/store.ts';
import type { Playback } from './playback.ts';
import type { PlayRequest } from './score.ts';
import type { TakeProblem, Takes } from './take.ts';
import type { InputKind, KindOfInput } from './takeInputs.ts';
import { isWorthKeeping } from './takeParts.ts';

/** With what the player is heard, and how late its hits arrive. */
export type HeardWith = { readonly kind: InputKind; readonly latencySec: Seconds };

/** What the player is heard in: whatever is practised, on whichever page. */
const HEARD_IN = ['drill', 'song'] as const satisfies readonly PlayRequest['kind'][];

export type HeardIn = (typeof HEARD_IN)[number];

/**
 * What there is to tell of what was played: of the drill's rung that was left last (at `bpm`, while the
 * drill goes on), or of all of it once it was stopped. Without `score` nothing was asked of the player.
 */
export type PlayingResult = {
  readonly of: HeardIn;
  readonly bpm?: Bpm;
  readonly score?: TakeScore;
};

export type PlayerHearing = {
  /** Why the player is not heard, if the input could not be opened. */
  readonly problem?: TakeProblem;
  readonly result?: PlayingResult;
};

export type PlayingTakesParts = {
  readonly playback: Pick<Playback, 'state' | 'subscribe'>;
  readonly takes: Pick<Takes, 'start' | 'finish' | 'sittings' | 'isRunning'>;
  readonly store: Pick<Store, 'snapshot'>;
  readonly inputs: Readonly<Record<InputKind, KindOfInput>>;
  /** What is chosen now; undefined where the player is not to be heard. */
  readonly heardWith: () => HeardWith | undefined;
  /** Does something every few hundredths of a second, until the function it gives is called. */
  readonly often: (act: () => void) => () => void;
  /** Is given every take that is worth keeping, soon after it was played. */
  readonly keep: (songId: Project['id'], takes: readonly TakeRecord[]) => void;
};

/** Hears the player in all that is practised. The functions need no `this`. */
export type PlayingTakes = {
  readonly state: () => PlayerHearing;
  readonly subscribe: (listener: () => void) => () => void;
  /** Opens an input for a moment, so that what is wrong with it (and the browser's question) comes before playing. */
  readonly tryInput: (kind: InputKind) => Promise<void>;
  /**
   * Listens with what is chosen now, where something is practised: what was heard until then is judged
   * and handed on as broken off. False where nothing is practised, and nothing done.
   */
  readonly listenAnew: () => boolean;
  /** Forgets what was told and what was wrong. */
  readonly forget: () => void;
};

/**
 * Begins a take when a drill or the song begins to play and ends it when that stops. After each rung of
 * a drill it tells how that was played, at the end how all was; what was played is handed on to be kept.
 */
export function createPlayingTakes(parts: PlayingTakesParts): PlayingTakes {
  const { playback, takes, store, inputs, heardWith, often, keep } = parts;
  const listeners = new Set<() => void>();
  let state: PlayerHearing = {};
  /** What is practised now, and of which song. */
  let heard: { readonly in: HeardIn; readonly songId: Project['id'] } | undefined;
  let handedOn = 0;
  let attempt = 0;
  let endWatch: (() => void) | undefined;

  function show(next: PlayerHearing): void {
    state = next;
    for (const listener of listeners) listener();
  }

  async function begin(): Promise<void> {
    handedOn = 0;
    const chosen = heardWith();
    show({});
    if (!chosen) return;
    const mine = ++attempt;
    endWatch = often(tellSittings);
    const started = await takes.start(
      { ...inputs[chosen.kind], latencySec: chosen.latencySec },
      () => show({ ...state, problem: { kind: 'lost' } }),
    );
    if (!started.ok && mine === attempt) show({ problem: started.error });
  }

  /** Hands on what was played in sittings that are over by now, and tells of the last one. */
  function tellSittings(): void {
    if (!heard || !takes.isRunning()) return;
    const last = handOn(heard.songId).at(-1)?.[0];
    if (heard.in !== 'drill' || !last || last.score.expected === 0) return;
    show({ ...state, result: { of: heard.in, bpm: last.bpm, score: last.score } });
  }

  function handOn(songId: Project['id']): readonly (readonly TakeRecord[])[] {
    const over = takes.sittings().slice(handedOn);
    handedOn += over.length;
    const worth = over.flat().filter(isWorthKeeping);
    if (worth.length > 0) keep(songId, worth);
    return over;
  }

  /** Ends the take, if one runs, and hands on what is left of it. */
  function stopListening({ in: of, songId }: NonNullable<typeof heard>): PlayingResult | undefined {
    attempt++;
    endWatch?.();
    endWatch = undefined;
    const wasHeard = takes.isRunning();
    const score = takes.finish();
    if (!wasHeard) return undefined;
    handOn(songId);
    return { of, ...(score && { score }) };
  }

  function end(before: NonNullable<typeof heard>): void {
    const result = stopListening(before);
    if (result) show({ ...state, result });
  }

  playback.subscribe(() => {
    const now = playback.state();
    const kind = now.status === 'stopped' ? undefined : now.request.kind;
    const next = HEARD_IN.find((each) => each === kind);
    if (next === heard?.in) return;
    const before = heard;
    heard = next && { in: next, songId: store.snapshot().id };
    if (before) end(before);
    if (heard) void begin();
  });

  return {
    state: () => state,
    subscribe(listener) {
      listeners.add(listener);
      return () => listeners.delete(listener);
    },
    async tryInput(kind) {
      const mine = ++attempt;
      const tried = await inputs[kind].listen({
        outputTimestamp: () => ({ contextTime: 0, performanceTime: 0 }),
        latencySec: 0,
        onHit: () => undefined,
      });
      if (tried.ok) tried.value();
      if (mine === attempt) show(tried.ok ? {} : { problem: tried.error });
    },
    listenAnew() {
      if (!heard) return false;
      stopListening(heard);
      void begin();
      return true;
    },
    forget: () => show({}),
  };
}
