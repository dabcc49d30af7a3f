import type { Seconds } from '../core/time/ticks.ts';
import type { Mix } from './mix.ts';
import { BUSES, type Bus } from './soundOfNote.ts';

/** A fade to silence begins this long after it is asked for, so that it begins in time. */
const FADE_LEAD_SEC: Seconds = 0.004;

/** Length of a fade to silence. */
const FADE_SEC: Seconds = 0.014;

/** Everything that a stage sounds is over so long after it was asked to fade. */
export const SILENT_AFTER_SEC: Seconds = 0.02;

/** Amplitude at which quiet play-back begins (−10 dB), and how long it takes to rise to full. */
export const QUIET_START = { amplitude: 0.3, riseSec: 1 } as const;

/**
 * What stands between voices and the mix, so that all of them can be faded at once. A stage lasts
 * until it is closed; what sounds later needs a new one.
 */
export type OutputStage = {
  readonly inputs: Readonly<Record<Bus, AudioNode>>;
  /** The sound rises from a quiet beginning, starting at `atSec`. Once, before anything sounds. */
  riseFrom(atSec: Seconds): void;
  /** Fades to nothing within `SILENT_AFTER_SEC` of `atSec` (now, if that is past). */
  fadeOut(atSec: Seconds): void;
  disconnect(): void;
};

function amplitudeAt(sec: Seconds, riseFromSec: Seconds | undefined): number {
  if (riseFromSec === undefined) return 1;
  const risen = Math.min(Math.max((sec - riseFromSec) / QUIET_START.riseSec, 0), 1);
  return QUIET_START.amplitude + risen * (1 - QUIET_START.amplitude);
}

/** A new stage in front of the mix, at full amplitude. */
export function createStage(context: BaseAudioContext, mix: Mix): OutputStage {
  const inputs = {
    left: new GainNode(context),
    right: new GainNode(context),
    band: new GainNode(context),
    click: new GainNode(context),
  };
  const gains = BUSES.map((bus) => inputs[bus].gain);
  let riseFromSec: Seconds | undefined;
  for (const bus of BUSES) inputs[bus].connect(mix.inputs[bus]);
  return {
    inputs,
    riseFrom(atSec) {
      riseFromSec = atSec;
      for (const gain of gains) {
        gain.value = QUIET_START.amplitude;
        gain.setValueAtTime(QUIET_START.amplitude, atSec);
        gain.linearRampToValueAtTime(1, atSec + QUIET_START.riseSec);
      }
    },
    fadeOut(atSec) {
      const startSec = Math.max(atSec, context.currentTime) + FADE_LEAD_SEC;
      for (const gain of gains) {
        // The rise is first drawn up to here and only then cut off: cut first, it would fall back.
        gain.linearRampToValueAtTime(amplitudeAt(startSec, riseFromSec), startSec);
        gain.cancelScheduledValues(startSec + FADE_SEC / 2);
        gain.linearRampToValueAtTime(0, startSec + FADE_SEC);
      }
    },
    disconnect() {
      for (const bus of BUSES) inputs[bus].disconnect();
    },
  };
}
