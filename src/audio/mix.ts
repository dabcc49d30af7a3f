import type { Seconds } from '../core/time/ticks.ts';
import { createLimiter } from './limiter.ts';
import { BUSES, type Bus } from './soundOfNote.ts';

/**
 * How far each slider is up, 0 (silent) to 1; half way is a quarter of the amplitude, −12 dB.
 * `clickPan` is where the click stands, −1 (left ear only) to 1 (right ear only); in the middle
 * without it. It keeps its power wherever it stands.
 */
export type Levels = Readonly<Record<'master' | Bus, number>> & { readonly clickPan?: number };

/** Levels that a new set of instruments plays at: quiet, the hands before band and click. */
export const QUIET_LEVELS: Levels = { master: 0.6, left: 1, right: 1, band: 0.8, click: 0.8 };

/** Everything fully up, as for a file. */
export const FULL_LEVELS: Levels = { master: 1, left: 1, right: 1, band: 1, click: 1 };

/** A level change is 95 % there after three of these. */
const LEVEL_GLIDE_SEC: Seconds = 0.015;

/** Where sounds are set together: into `inputs`, out at the context's destination. */
export type Mix = {
  readonly inputs: Readonly<Record<Bus, AudioNode>>;
  /** Glides to new levels without a jump; values outside their range count as the nearest inside. */
  setLevels(levels: Levels): void;
  /** Takes the mix off the destination. */
  dispose(): void;
};

function gainOf(level: number): number {
  return Math.min(Math.max(level, 0), 1) ** 2;
}

function panOf({ clickPan = 0 }: Levels): number {
  return Math.min(Math.max(clickPan, -1), 1);
}

/** A panner for a sound of one channel that is as loud in the middle as without it: there each ear gets the whole. */
function createPan(context: BaseAudioContext, pan: number) {
  const input = new GainNode(context, {
    gain: Math.SQRT2,
    channelCount: 1,
    channelCountMode: 'explicit',
  });
  const panner = new StereoPannerNode(context, { pan });
  input.connect(panner);
  return { input, panner };
}

/** Buses, master volume and limiter in a row, no node with a delay among them. */
export function createMix(context: BaseAudioContext, levels: Levels): Mix {
  const gains = {
    master: new GainNode(context, { gain: gainOf(levels.master) }),
    left: new GainNode(context, { gain: gainOf(levels.left) }),
    right: new GainNode(context, { gain: gainOf(levels.right) }),
    band: new GainNode(context, { gain: gainOf(levels.band) }),
    click: new GainNode(context, { gain: gainOf(levels.click) }),
  };
  const clickPlace = createPan(context, panOf(levels));
  const limiter = createLimiter(context);
  for (const bus of ['left', 'right', 'band'] as const) gains[bus].connect(gains.master);
  gains.click.connect(clickPlace.input);
  clickPlace.panner.connect(gains.master);
  gains.master.connect(limiter.input);
  limiter.output.connect(context.destination);
  return {
    inputs: gains,
    setLevels(next) {
      for (const name of ['master', ...BUSES] as const)
        gains[name].gain.setTargetAtTime(gainOf(next[name]), context.currentTime, LEVEL_GLIDE_SEC);
      clickPlace.panner.pan.setTargetAtTime(panOf(next), context.currentTime, LEVEL_GLIDE_SEC);
    },
    dispose: () => limiter.output.disconnect(),
  };
}
