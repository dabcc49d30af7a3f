import { barTicks, beatStarts, type Meter, tempoBeatTicks } from '../time/meter.ts';
import type { Bpm } from '../time/tempoMap.ts';
import type { Seconds, Ticks } from '../time/ticks.ts';
import { median } from './foldNoise.ts';
import { likeliestRound } from './roundLength.ts';

/** What is known of taps that had no click: the meter, about how fast they are (the song's tempo), and where in its bar the first one stands. */
export type FreeTempo = {
  readonly meter: Meter;
  readonly aboutBpm: Bpm;
  readonly firstTick: Ticks;
};

/** Fewer taps than this say nothing of a tempo. */
const FEWEST_TAPS = 4;

/** A tap that comes further than this share of a round from where it is expected is another one. */
const SAME_SHARE = 0.03;

/** How much of a round's lateness is believed to be a change of tempo. */
const TEMPO_GAIN = 0.3;

/** How often the rounds are followed, each time at the tempo that was found before. */
const LOOKS = 3;

/** From so many rounds on a change of tempo is drawn as a parabola; fewer lie on a straight line. */
const ENOUGH_FOR_PARABOLA = 4;

/**
 * The felt beats under taps that had no click, in seconds, ascending from the downbeat of the first
 * tap's bar to the end of the last bar; the tempo may drift. They are found out of the taps' coming
 * again (`likeliestRound`): from round to round it is seen how early or late the taps come, and that
 * is smoothed. `taps` ascend. Undefined with fewer than four taps, and where
 * they do not go round twice.
 */
export function freeBeats(
  taps: readonly Seconds[],
  { meter, aboutBpm, firstTick }: FreeTempo,
): Seconds[] | undefined {
  if (taps.length < FEWEST_TAPS) return undefined;
  const bar = barTicks(meter);
  const beatsInBar = bar / tempoBeatTicks(meter);
  const found = likeliestRound(taps, (60 / aboutBpm) * beatsInBar, beatsInBar);
  if (!found) return undefined;
  const { barSec, period } = found;
  const roundTicks = bar * period;
  let placeOf = (round: number) => taps[0]! + round * barSec * period;
  for (let look = 0; look < LOOKS; look++) {
    const places = firstPlaces(taps, placeOf(0), placeOf(1) - placeOf(0));
    if (places.length < 2) return undefined;
    const curve = polynomial(places, places.length >= ENOUGH_FOR_PARABOLA ? 2 : 1);
    const late = meanLateness(
      taps,
      places.map((_, round) => curve(round)),
      SAME_SHARE * barSec,
    );
    placeOf = (round) => curve(round) + late;
  }
  return beatsAlong((tick) => placeOf((tick - firstTick) / roundTicks), meter, taps.at(-1)!);
}

/** The tempo of beats in seconds, as the meter counts it: the mean from the first to the last. */
export function meanBpm(beats: readonly Seconds[], meter: Meter): Bpm {
  const bars = (beats.length - 1) / beatStarts(meter).length;
  const counted = (bars * barTicks(meter)) / tempoBeatTicks(meter);
  return (60 * counted) / (beats.at(-1)! - beats[0]!);
}

/**
 * Where the first tap's place lies in each round, from the first round on: what was heard in the
 * rounds before is followed, as fast as it goes.
 */
function firstPlaces(taps: readonly Seconds[], first: Seconds, roundSec: Seconds): Seconds[] {
  const nearSec = SAME_SHARE * roundSec;
  const firsts: Seconds[] = [];
  const known: Seconds[] = [];
  let expected = first;
  let length = roundSec;
  while (expected <= taps.at(-1)! + nearSec) {
    const places = taps
      .map((tap) => ((tap - expected) / length) * roundSec)
      .filter((place) => place >= -nearSec && place < roundSec - nearSec);
    const late = lateness(places, known, nearSec);
    for (const place of places)
      if (!known.some((other) => Math.abs(other - place + late) < nearSec))
        known.push(place - late);
    length += TEMPO_GAIN * late;
    firsts.push(expected + late);
    expected += late + length;
  }
  return firsts;
}

/** How much later than known places come again; 0 where none does. */
function lateness(
  places: readonly Seconds[],
  known: readonly Seconds[],
  nearSec: Seconds,
): Seconds {
  const all = places.flatMap((place) =>
    known.map((other) => place - other).filter((late) => Math.abs(late) < nearSec),
  );
  return median(all) ?? 0;
}

/** How much later than these moments the taps nearest to them come, on average; taps further off than `nearSec` are others. */
function meanLateness(
  taps: readonly Seconds[],
  moments: readonly Seconds[],
  nearSec: Seconds,
): Seconds {
  const late = moments.flatMap((moment) =>
    taps.map((tap) => tap - moment).filter((off) => Math.abs(off) < nearSec),
  );
  return late.reduce((sum, off) => sum + off, 0) / Math.max(1, late.length);
}

/** The polynomial of a degree that lies nearest to values at 0, 1, 2 … (least squares). */
function polynomial(values: readonly number[], degree: number): (x: number) => number {
  const powers = Array.from({ length: degree + 1 }, (_, power) => power);
  const moment = (power: number) => values.reduce((sum, _value, x) => sum + x ** power, 0);
  const rows = powers.map((row) => [
    ...powers.map((column) => moment(row + column)),
    values.reduce((sum, value, x) => sum + value * x ** row, 0),
  ]);
  const coefficients = solved(rows);
  return (x) => coefficients.reduce((sum, c, power) => sum + c * x ** power, 0);
}

/** Solves the equations of `polynomial` (Gauss and Jordan); the last of each row is what it equals. */
function solved(equations: readonly (readonly number[])[]): number[] {
  const rows = equations.map((row) => [...row]);
  for (let pivot = 0; pivot < rows.length; pivot++) {
    const divisor = rows[pivot]![pivot]!;
    const line = rows[pivot]!.map((value) => value / divisor);
    for (let other = 0; other < rows.length; other++) {
      const factor = rows[other]![pivot]!;
      rows[other] = rows[other]!.map((value, i) => value - factor * line[i]!);
    }
    rows[pivot] = line;
  }
  return rows.map((row) => row.at(-1)!);
}

/** The felt beats of all bars that begin before the last tap, and the end of the last of them. */
function beatsAlong(secondsAt: (tick: Ticks) => Seconds, meter: Meter, last: Seconds): Seconds[] {
  const beats: Seconds[] = [];
  let start = 0;
  for (; secondsAt(start) < last; start += barTicks(meter))
    beats.push(...beatStarts(meter).map((at) => secondsAt(start + at)));
  return [...beats, secondsAt(start)];
}
