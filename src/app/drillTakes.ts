import type { TakeScore } from '../core/practice/takeScore.ts';
import type { Bpm } from '../core/time/tempoMap.ts';
import type { Seconds } from '../core/time/ticks.ts';
import type { Playback } from './playback.ts';
import type { TakeProblem, Takes } from './take.ts';
import type { InputKind, KindOfInput } from './takeInputs.ts';

/** With what the player is heard, and how late its hits arrive. */
export type HeardWith = { readonly kind: InputKind; readonly latencySec: Seconds };

/**
 * What there is to tell of a drill: of the rung that was left last (at `bpm`, while the drill goes
 * on), or of all of it once it was stopped. Without `score` nothing was asked of the player.
 */
export type DrillResult = { readonly bpm?: Bpm; readonly score?: TakeScore };

export type DrillHearing = {
  /** Why the player is not heard, if the input could not be opened. */
  readonly problem?: TakeProblem;
  readonly result?: DrillResult;
};

export type DrillTakesParts = {
  readonly playback: Pick<Playback, 'state' | 'subscribe'>;
  readonly takes: Pick<Takes, 'start' | 'finish' | 'soFar' | 'isRunning'>;
  readonly inputs: Readonly<Record<InputKind, KindOfInput>>;
  /** What is chosen now; undefined where the player is not to be heard. */
  readonly heardWith: () => HeardWith | undefined;
};

/** Hears the player in every drill. The functions need no `this`. */
export type DrillTakes = {
  readonly state: () => DrillHearing;
  readonly subscribe: (listener: () => void) => () => void;
  /** Opens an input for a moment, so that what is wrong with it (and the browser's question) comes before playing. */
  readonly tryInput: (kind: InputKind) => Promise<void>;
  /** Forgets what was told and what was wrong. */
  readonly forget: () => void;
};

/**
 * Begins a take when a drill begins to play and ends it when that stops. After each change of rung it
 * tells how the one before was played, at the end how all was.
 */
export function createDrillTakes(parts: DrillTakesParts): DrillTakes {
  const { playback, takes, inputs, heardWith } = parts;
  const listeners = new Set<() => void>();
  let state: DrillHearing = {};
  let isOn = false;
  let rung: { readonly number: number; readonly bpm: Bpm } | undefined;
  let attempt = 0;

  function show(next: DrillHearing): void {
    state = next;
    for (const listener of listeners) listener();
  }

  async function begin(): Promise<void> {
    rung = undefined;
    const chosen = heardWith();
    show({});
    if (!chosen) return;
    const mine = ++attempt;
    const started = await takes.start({ ...inputs[chosen.kind], latencySec: chosen.latencySec });
    if (!started.ok && mine === attempt) show({ problem: started.error });
  }

  function end(): void {
    attempt++;
    if (!takes.isRunning()) {
      takes.finish();
      return;
    }
    const score = takes.finish();
    show({ ...state, result: { ...(score && { score }) } });
  }

  function follow(number: number, bpm: Bpm): void {
    if (rung && rung.number !== number && takes.isRunning()) {
      const score = takes.soFar(rung.bpm);
      if (score) show({ ...state, result: { bpm: rung.bpm, score } });
    }
    if (rung?.number !== number) rung = { number, bpm };
  }

  playback.subscribe(() => {
    const now = playback.state();
    const isDrill = now.status !== 'stopped' && now.request.kind === 'drill';
    if (isDrill && !isOn) void begin();
    if (!isDrill && isOn) end();
    isOn = isDrill;
    if (now.status === 'playing' && now.drill) follow(now.drill.rung, now.bpm);
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
    forget: () => show({}),
  };
}
