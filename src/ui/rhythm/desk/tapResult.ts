import { err, ok, type Result } from '../../../core/result.ts';
import { freeBeats, meanBpm } from '../../../core/rhythm/freeBeats.ts';
import type { Pattern } from '../../../core/rhythm/pattern.ts';
import type { BandSource } from '../../../core/rhythm/strokes.ts';
import {
  beatsUnder,
  foldTaps,
  type Tap,
  type TappedRhythm,
  tappedStrokes,
} from '../../../core/rhythm/taps.ts';
import { barTicks, type Meter, tempoBeatTicks } from '../../../core/time/meter.ts';
import { type Bpm, secondsPerTick } from '../../../core/time/tempoMap.ts';
import type { Ticks } from '../../../core/time/ticks.ts';

/** Tapping to the click of a pattern that goes round and round, or without one. */
export const TAP_MANNERS = ['click', 'free'] as const;

export type TapManner = (typeof TAP_MANNERS)[number];

/**
 * What was tapped. With a click seconds count from a downbeat of it on which the pattern begins,
 * without one from anywhere. `bpm` is the click's tempo, or about how fast it is meant, in felt
 * beats; `firstTick` is where in its bar the first tap stands, which counts without a click only.
 */
export type TapRun = {
  readonly manner: TapManner;
  readonly taps: readonly Tap[];
  readonly bpm: Bpm;
  readonly firstTick: Ticks;
};

/** A rhythm out of taps, and its tempo, which was found in them where there was no click. */
export type TapResult = TappedRhythm & { readonly manner: TapManner; readonly bpm: Bpm };

/** Why taps give no rhythm: there are too few, they never come again, or no two bars agree. */
export type TapProblem =
  | { readonly kind: 'too-few'; readonly taps: number }
  | { readonly kind: 'never-again' }
  | { readonly kind: 'nothing-in-common' };

/** Fewer taps than this are no rhythm. */
const FEWEST_TAPS = 2;

/** The rhythm of what was tapped for one source of a pattern. */
export function tapResult(
  run: TapRun,
  { meter, bars }: Pick<Pattern, 'meter' | 'bars'>,
  source: BandSource,
): Result<TapResult, TapProblem> {
  const strokes = tappedStrokes(run.taps);
  if (strokes.length < FEWEST_TAPS) return err({ kind: 'too-few', taps: strokes.length });
  const beats =
    run.manner === 'click'
      ? beatsUnder(strokes, meter, bars, barSeconds(meter, run.bpm))
      : freeBeats(
          strokes.map(({ at }) => at),
          { meter, aboutBpm: run.bpm, firstTick: run.firstTick },
        );
  if (!beats) return err({ kind: 'never-again' });
  const rhythm = foldTaps(strokes, beats, meter, source);
  if (!rhythm) return err({ kind: 'nothing-in-common' });
  const bpm = run.manner === 'click' ? run.bpm : meanBpm(beats, meter);
  return ok({ ...rhythm, manner: run.manner, bpm });
}

function barSeconds(meter: Meter, bpm: Bpm): number {
  return barTicks(meter) * secondsPerTick({ bpm, beatTicks: tempoBeatTicks(meter) });
}
