import { barTicks, beatLengths, beatStarts, type Meter } from '../time/meter.ts';
import type { Seconds, Ticks } from '../time/ticks.ts';
import { foldStrokes } from './fold.ts';
import { barsHeard, type HeardStroke, placeStrokes } from './foldPlacing.ts';
import { type Groove, grooveOf } from './foldSources.ts';
import { USUAL_TONE } from './sources.ts';
import type { BandSource } from './strokes.ts';

/**
 * One tap of a finger on a key or a pad, in seconds; `untilSec` is when it was let go, `strength` how
 * hard it was, above 0 up to 1, where what is tapped on can tell.
 */
export type Tap = {
  readonly atSec: Seconds;
  readonly untilSec?: Seconds;
  readonly strength?: number;
};

/** How strong one tap counts, and more fingers at once: an accent; where nothing tells how hard they were. */
export const TAP_STRENGTH = { one: 0.65, both: 1 } as const;

/** Fingers that are meant together come within this. */
const TOGETHER_SEC: Seconds = 0.035;

/** A finger leaves its key at once, whatever is meant; only what stays down longer says how long it sounds. */
const HELD_SEC: Seconds = 0.25;

/**
 * Taps as strokes to fold, in seconds, ascending. Taps within 35 ms of the first of them are
 * one stroke, in the middle of them: accented, or as strong as the hardest where that is known. A
 * stroke is as long as its finger stayed down, where that is a quarter of a second or more; otherwise
 * its length is not known.
 */
export function tappedStrokes(taps: readonly Tap[]): HeardStroke[] {
  const inOrder = taps.toSorted((a, b) => a.atSec - b.atSec);
  const strokes: HeardStroke[] = [];
  for (let i = 0; i < inOrder.length; ) {
    const untilSec = inOrder[i]!.atSec + TOGETHER_SEC;
    const together = inOrder.slice(i).filter(({ atSec }) => atSec <= untilSec);
    strokes.push(strokeOf(together));
    i += together.length;
  }
  return strokes;
}

function strokeOf(taps: readonly Tap[]): HeardStroke {
  const at = taps.reduce((sum, tap) => sum + tap.atSec, 0) / taps.length;
  const length = Math.max(0, ...taps.map((tap) => (tap.untilSec ?? at) - at));
  return {
    at,
    strength: strengthOf(taps),
    ...(length >= HELD_SEC ? { length } : {}),
  };
}

function strengthOf(taps: readonly Tap[]): number {
  const told = taps.flatMap(({ strength }) => strength ?? []);
  if (told.length > 0) return Math.max(...told);
  return taps.length > 1 ? TAP_STRENGTH.both : TAP_STRENGTH.one;
}

/**
 * The felt beats of a click under strokes, in the unit of both: from the round in which the first
 * stroke falls to the end of the bar in which the last one does. A round is `roundBars` bars long
 * and one begins at 0; a bar lasts `bar`. A stroke up to a fifth of a beat before a bar belongs to it.
 * Empty without strokes.
 */
export function beatsUnder(
  strokes: readonly HeardStroke[],
  meter: Meter,
  roundBars: number,
  bar: number,
): number[] {
  const times = strokes.map(({ at }) => at);
  if (times.length === 0) return [];
  const perTick = bar / barTicks(meter);
  const early = (beatLengths(meter)[0]! / 5) * perTick;
  const from = Math.floor((Math.min(...times) + early) / (roundBars * bar)) * roundBars * bar;
  const bars = Math.floor((Math.max(...times) + early - from) / bar) + 1;
  const beats = Array.from({ length: bars }, (_, i) =>
    beatStarts(meter).map((at) => from + i * bar + at * perTick),
  );
  return [...beats.flat(), from + bars * bar];
}

/**
 * What taps on one source come to: its strokes on a grid of one, two or four bars. `latencySec` is
 * how late the taps come on average (early: below 0), `spreadSec` how unevenly (a standard
 * deviation); so many of the `barsTapped` agree. `places` are the taps themselves in ticks from the
 * first downbeat on, with the lateness taken off.
 */
export type TappedRhythm = {
  readonly groove: Groove;
  readonly latencySec: Seconds;
  readonly spreadSec: Seconds;
  readonly barsTapped: number;
  readonly barsAgreeing: number;
  readonly places: readonly number[];
};

/**
 * Folds what was tapped for one source over many bars (`foldStrokes`). Strokes and beats in seconds,
 * beats from a downbeat to the end of a bar. Undefined where fewer than half of the bars agree on
 * anything that is played.
 */
export function foldTaps(
  strokes: readonly HeardStroke[],
  beats: readonly Seconds[],
  meter: Meter,
  source: BandSource,
): TappedRhythm | undefined {
  const what = [USUAL_TONE[source.part]];
  const tapped = strokes.map((stroke) => ({ ...stroke, what, source: source.id }));
  const fold = foldStrokes(tapped, beats, meter);
  const groove = grooveOf(fold, [source]);
  if (groove.sources.length === 0) return undefined;
  const bars = barsHeard(beats, meter);
  const secPerTick = (beats.at(-1)! - beats[0]!) / (bars * barTicks(meter));
  return {
    groove,
    latencySec: fold.latency * secPerTick,
    spreadSec: fold.spread * secPerTick,
    barsTapped: bars,
    barsAgreeing: fold.barsAgreeing,
    places: placeStrokes(strokes, beats, meter).map(({ tick }) => tick - fold.latency),
  };
}

/** A moment of the page's clock, in milliseconds, and the tick of the music that was heard then. */
export type HeardMoment = { readonly ms: number; readonly tick: number };

/**
 * The tick that was heard at a moment of the page's clock, out of looks at steady music around it:
 * the mean of what each says, so that the unevenness of single looks goes out. `ticksPerMs` is its
 * tempo. Throws without a look.
 */
export function tickAtMs(looks: readonly HeardMoment[], ms: number, ticksPerMs: number): number {
  if (looks.length === 0) throw new Error('nothing was heard of the music');
  const ticks = looks.map((look) => look.tick + (ms - look.ms) * ticksPerMs);
  return ticks.reduce((sum, tick) => sum + tick, 0) / looks.length;
}

/**
 * A tick of music that begins again from 0 with every round, counted on over the rounds: the one
 * nearest to where `expected` thinks it is.
 */
export function countedOn(tick: number, expected: number, roundTicks: Ticks): number {
  return tick + Math.round((expected - tick) / roundTicks) * roundTicks;
}
