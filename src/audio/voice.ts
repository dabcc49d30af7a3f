import type { Seconds } from '../core/time/ticks.ts';
import type { SoundOfNote } from './soundOfNote.ts';

/** Shortest time that a damped note sounds at full strength before it is damped. */
const SHORTEST_SEC: Seconds = 0.02;

/** A damped sound is switched off after so many of its time constants: by then it is 70 dB down. */
const DAMPED_AFTER = 8;

/** Time constant with which a sound that has no damper is ended by the next of its group. */
const CUT_SEC: Seconds = 0.012;

/** One struck note. */
export type Voice = {
  /** When it sounds, in the context's time, to the sample; and when its note ends (its fade begins). */
  readonly startSec: Seconds;
  readonly endSec: Seconds;
  /** Damps it from `atSec` on, if it is still sounding then. */
  release(atSec: Seconds): void;
};

/** A voice, and what the instruments alone may do with it. */
export type StruckVoice = Voice & {
  /** Switches it off without a fade. */
  stopAt(atSec: Seconds): void;
  /** Called once when it has ended. */
  onEnded(listener: () => void): void;
};

/** The moment of the nearest whole sample, so that the sound's first sample is played as it is. */
export function onSample(atSec: Seconds, sampleRate: number): Seconds {
  return Math.round(atSec * sampleRate) / sampleRate;
}

/** How long after its strike a sound may be heard at most, for a note of `durationSec`. */
export function ringsForSec(
  buffer: AudioBuffer,
  { playbackRate, dampSec }: Pick<SoundOfNote, 'playbackRate' | 'dampSec'>,
  durationSec: Seconds,
): Seconds {
  const rungOutSec = buffer.duration / playbackRate;
  if (dampSec === undefined) return rungOutSec;
  return Math.min(rungOutSec, Math.max(durationSec, SHORTEST_SEC) + DAMPED_AFTER * dampSec);
}

/**
 * Starts a sound at `atSec` (at once, if that is past) for a note of `durationSec` (0 or more; no
 * matter for sounds that ring out), into `destination`.
 */
export function startVoice(
  buffer: AudioBuffer,
  sound: SoundOfNote,
  destination: AudioNode,
  atSec: Seconds,
  durationSec: Seconds,
): StruckVoice {
  const { context } = destination;
  const { playbackRate, dampSec, gain } = sound;
  const source = new AudioBufferSourceNode(context, { buffer, playbackRate });
  const loudness = new GainNode(context, { gain });
  source.connect(loudness).connect(destination);
  const startSec = onSample(Math.max(atSec, 0), context.sampleRate);
  source.start(startSec);
  const rungOutSec = startSec + buffer.duration / playbackRate;
  let endSec = rungOutSec;

  function damp(fromSec: Seconds, timeConstantSec: Seconds): void {
    if (fromSec >= endSec) return;
    endSec = fromSec;
    loudness.gain.setTargetAtTime(0, fromSec, timeConstantSec);
    source.stop(fromSec + DAMPED_AFTER * timeConstantSec);
  }

  if (dampSec !== undefined) damp(startSec + Math.max(durationSec, SHORTEST_SEC), dampSec);
  return {
    startSec,
    get endSec() {
      return endSec;
    },
    release: (fromSec) => damp(Math.max(fromSec, startSec), dampSec ?? CUT_SEC),
    stopAt: (stopSec) => source.stop(Math.max(stopSec, 0)),
    onEnded(listener) {
      source.addEventListener('ended', () => {
        loudness.disconnect();
        listener();
      });
    },
  };
}
