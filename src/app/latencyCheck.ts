import { outputTimestampOf } from '../audio/outputTimestamp.ts';
import { createPlayer, type Player } from '../audio/player.ts';
import type { CalibrationError } from '../core/practice/calibration.ts';
import { err, type Result } from '../core/result.ts';
import type { Seconds } from '../core/time/ticks.ts';
import { type LatencyMeasurement, type LatencyParts, measureLatency } from './latency.ts';
import type { OpenSound } from './openSound.ts';
import type { Playback } from './playback.ts';
import type { TakeProblem } from './take.ts';
import type { InputKind, KindOfInput } from './takeInputs.ts';

/** Why a latency is not known: the input is not heard, or what was played says too little. */
export type LatencyProblem = TakeProblem | CalibrationError;

export type LatencyState =
  | { readonly status: 'idle'; readonly problem?: LatencyProblem }
  | { readonly status: 'measuring' };

export type LatencyCheckParts = {
  readonly playback: Pick<Playback, 'stop' | 'state' | 'subscribe'>;
  readonly openSound: () => Promise<Result<OpenSound, { readonly reason: string }>>;
  readonly inputs: Readonly<Record<InputKind, KindOfInput>>;
  readonly onMeasured: (kind: InputKind, latencySec: Seconds) => void;
};

/** Measures how late an input's hits arrive. The functions need no `this`. */
export type LatencyCheck = {
  readonly state: () => LatencyState;
  readonly subscribe: (listener: () => void) => () => void;
  /** Plays the clicks, in place of what plays; during a tap, click or key press. */
  readonly start: (kind: InputKind) => Promise<void>;
  /** Gives up; nothing is kept of it. */
  readonly cancel: () => void;
};

/** See `LatencyCheck`; music that is begun meanwhile cancels the measurement. */
export function createLatencyCheck(parts: LatencyCheckParts): LatencyCheck {
  const { playback, openSound, inputs } = parts;
  const listeners = new Set<() => void>();
  let state: LatencyState = { status: 'idle' };
  let measurement: LatencyMeasurement | undefined;
  let clicking: LatencyParts | undefined;
  let attempt = 0;

  function show(next: LatencyState): void {
    state = next;
    for (const listener of listeners) listener();
  }

  function cancel(): void {
    attempt++;
    measurement?.cancel();
    measurement = undefined;
    if (state.status === 'measuring') show({ status: 'idle' });
  }

  /** A player beside the one of the music, on the same instruments; made once. */
  function clickingIn({ room, instruments }: OpenSound): LatencyParts {
    const player: Player = createPlayer(room, instruments);
    return { player, outputTimestamp: () => outputTimestampOf(room) };
  }

  async function begun(kind: InputKind): Promise<Result<LatencyMeasurement, TakeProblem>> {
    const sound = await openSound();
    if (!sound.ok) return err({ kind: 'no-sound', reason: sound.error.reason });
    clicking ??= clickingIn(sound.value);
    return measureLatency(clicking, inputs[kind].listen);
  }

  async function start(kind: InputKind): Promise<void> {
    cancel();
    playback.stop();
    const mine = attempt;
    show({ status: 'measuring' });
    const started = await begun(kind);
    if (mine !== attempt) {
      if (started.ok) started.value.cancel();
      return;
    }
    if (!started.ok) return show({ status: 'idle', problem: started.error });
    measurement = started.value;
    const measured = await started.value.done;
    measurement = undefined;
    if (measured.ok) parts.onMeasured(kind, measured.value.latencySec);
    show({ status: 'idle', ...(!measured.ok && { problem: measured.error }) });
  }

  playback.subscribe(() => {
    if (state.status === 'measuring' && playback.state().status !== 'stopped') cancel();
  });

  return {
    state: () => state,
    subscribe(listener) {
      listeners.add(listener);
      return () => listeners.delete(listener);
    },
    start,
    cancel,
  };
}
