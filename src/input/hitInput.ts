import type { PlayedNote } from '../core/practice/playedHits.ts';
import type { Result } from '../core/result.ts';
import type { Seconds } from '../core/time/ticks.ts';
import { audioTimeOf, type OutputTimestamp } from './eventTime.ts';

/**
 * Where an input tells what it hears. Hits are stamped with the time of the context that was heard
 * when they happened (`audioTimeOf`), less `latencySec`, the measured lateness of the device.
 */
export type Hearing = {
  readonly outputTimestamp: () => OutputTimestamp;
  readonly latencySec: Seconds;
  readonly onHit: (note: PlayedNote) => void;
  /** Told once if the device is taken away while it is listened to; no hit follows. */
  readonly onLost?: () => void;
};

/** Ends listening; calling it again does nothing. */
export type Stop = () => void;

/**
 * Why an input cannot be heard: the browser has no such thing, the user (or a policy) forbade it, no
 * device is connected, or the system refused with a message of its own.
 */
export type InputError =
  | { readonly kind: 'unsupported' }
  | { readonly kind: 'denied' }
  | { readonly kind: 'no-device' }
  | { readonly kind: 'refused'; readonly text: string };

/** Starts to listen; what is played is told from then on until the function it gives is called. */
export type HitInput = (hearing: Hearing) => Promise<Result<Stop, InputError>>;

/** The time at which an event counts: see `Hearing`. */
export function hitTime(timeStampMs: number, hearing: Hearing): Seconds {
  return audioTimeOf(timeStampMs, hearing.outputTimestamp()) - hearing.latencySec;
}

/** Listens to events of a target, which are of the listener's kind; gives how to end that. */
export function listenTo(
  target: EventTarget,
  type: string,
  listener: (event: never) => void,
): Stop {
  const heard = listener as (event: Event) => void;
  target.addEventListener(type, heard);
  return () => target.removeEventListener(type, heard);
}

/** What an exception of the browser means. */
export function inputError(error: unknown): InputError {
  const name = error instanceof Error ? error.name : '';
  if (name === 'NotAllowedError' || name === 'SecurityError') return { kind: 'denied' };
  if (name === 'NotFoundError') return { kind: 'no-device' };
  if (name === 'NotSupportedError') return { kind: 'unsupported' };
  return { kind: 'refused', text: String(error) };
}
