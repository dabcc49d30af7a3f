import { err, ok, type Result } from '../core/result.ts';
import type { Clock } from '../core/time/clock.ts';
import type { Seconds } from '../core/time/ticks.ts';

/** Where live sound is made: the running context, its clock, and how late its sound is heard. */
export type AudioRoom = {
  readonly context: AudioContext;
  /** The context's time: what sounds at a time of this clock leaves the context then. */
  readonly clock: Clock;
  /** Time from the context to the loudspeaker, as far as the browser knows; 0 or more. */
  outputLatencySec(): Seconds;
  /** Lets sound go on after the system has interrupted it (a call, another app); harmless otherwise. */
  resume(): Promise<void>;
  /** Tells when the system interrupts the sound: the clock stands still from then on. Returns how to end that. */
  onInterrupted(listener: () => void): () => void;
};

/**
 * Why there is no sound: the browser has no Web Audio, it waits for a tap or key before it allows
 * sound, or it refused with a message of its own.
 */
export type AudioError =
  | { readonly kind: 'no-web-audio' }
  | { readonly kind: 'needs-gesture' }
  | { readonly kind: 'refused'; readonly text: string };

/** A context that has not begun to run so long after it was asked to is held back by the browser. */
const START_TIMEOUT_MS = 2000;

function waitFor(milliseconds: number): Promise<void> {
  return new Promise((resolve) => {
    setTimeout(resolve, milliseconds);
  });
}

/**
 * Starts live sound. To be called while a tap, click or key press is handled: browsers allow sound
 * only then. Each call makes a room of its own; one is enough.
 */
export async function startAudio(): Promise<Result<AudioRoom, AudioError>> {
  if (typeof AudioContext === 'undefined') return err({ kind: 'no-web-audio' });
  try {
    const context = new AudioContext({ latencyHint: 'interactive' });
    // Where a gesture is missing, resume neither fulfils nor rejects.
    await Promise.race([context.resume(), waitFor(START_TIMEOUT_MS)]);
    if (context.state !== 'running') {
      await context.close();
      return err({ kind: 'needs-gesture' });
    }
    return ok(roomOf(context));
  } catch (error) {
    return err({ kind: 'refused', text: String(error) });
  }
}

function roomOf(context: AudioContext): AudioRoom {
  return {
    context,
    clock: () => context.currentTime,
    // Safari has no outputLatency; the context's own delay is then the best that is known.
    outputLatencySec: () => context.outputLatency ?? context.baseLatency ?? 0,
    resume: () => context.resume(),
    onInterrupted(listener) {
      let ran = context.state === 'running';
      // Several changes may be told late, one by one, when the last has come already.
      const tell = () => {
        const runs = context.state === 'running';
        if (ran && !runs && context.state !== 'closed') listener();
        ran = runs;
      };
      context.addEventListener('statechange', tell);
      return () => context.removeEventListener('statechange', tell);
    },
  };
}
