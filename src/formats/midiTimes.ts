import type { BandBar } from '../core/rhythm/band.ts';
import { barTicks, type Meter, parseMeter, tempoBeatTicks } from '../core/time/meter.ts';
import type { Tempo, TempoMap, TempoMark } from '../core/time/tempoMap.ts';
import { TICKS_PER_QUARTER, type Ticks } from '../core/time/ticks.ts';

/** A meter and the tick from which a file asks for it. */
export type MeterMark = { readonly tick: Ticks; readonly meter: Meter };

/** A file's tempo: microseconds per quarter note from a tick on. */
export type QuarterTempo = { readonly tick: Ticks; readonly microseconds: number };

const COMMON_TIME: Meter = { beats: 4, unit: 4, groups: [2, 2] };

/** What holds until a file sets a tempo: 120 quarters a minute [SMF]. */
const UNSET_TEMPO: QuarterTempo = { tick: 0, microseconds: 500_000 };

const MICROSECONDS_PER_MINUTE = 60_000_000;

/** Rescaled meter events can miss their bar line by a rounding; more than this and they are early. */
const BAR_LINE_TOLERANCE: Ticks = TICKS_PER_QUARTER / 8;

/** A meter as a file writes it, or undefined where it is none that can be barred. */
export function meterOf(numerator: number, denominator: number): Meter | undefined {
  const meter = parseMeter(`${numerator}/${denominator}`);
  return meter.ok ? meter.value : undefined;
}

/**
 * The bars from tick 0 until `lengthTicks` is covered, at least one. 4/4 until a mark says
 * otherwise; a mark inside a bar holds from the next bar line, so that every bar is whole. Gives
 * up (undefined) past `mostBars`.
 */
export function barsOf(
  marks: readonly MeterMark[],
  lengthTicks: Ticks,
  mostBars: number,
): BandBar[] | undefined {
  const bars: BandBar[] = [];
  let startTick = 0;
  let mark = 0;
  let meter = COMMON_TIME;
  do {
    for (let next = marks[mark]; next; next = marks[mark]) {
      if (next.tick > startTick + BAR_LINE_TOLERANCE) break;
      meter = next.meter;
      mark++;
    }
    if (bars.length >= mostBars) return undefined;
    bars.push({ startTick, meter });
    startTick += barTicks(meter);
  } while (startTick < lengthTicks);
  return bars;
}

/** Microseconds per quarter note, rounded as files keep them. */
export function microsecondsOf(tempo: Tempo): number {
  return Math.round((MICROSECONDS_PER_MINUTE * TICKS_PER_QUARTER) / (tempo.bpm * tempo.beatTicks));
}

/** The tempo with the fewest decimals (up to three) that a file would keep as these microseconds. */
function tempoOf(microseconds: number, beatTicks: Ticks): Tempo {
  const exact = (MICROSECONDS_PER_MINUTE * TICKS_PER_QUARTER) / (microseconds * beatTicks);
  const rounded = [1, 10, 100, 1000]
    .map((parts) => ({ bpm: Math.round(exact * parts) / parts, beatTicks }))
    .find((tempo) => tempo.bpm > 0 && microsecondsOf(tempo) === microseconds);
  return rounded ?? { bpm: exact, beatTicks };
}

function meterAt(bars: readonly BandBar[], tick: Ticks): Meter {
  return bars.findLast((bar) => bar.startTick <= tick)?.meter ?? COMMON_TIME;
}

/**
 * A file's tempos as a tempo map; each counts the beat of the meter it begins in. Of several at
 * one tick the last counts; one that repeats the tempo before is left out.
 */
export function tempoMapOfFile(
  tempos: readonly QuarterTempo[],
  bars: readonly BandBar[],
): TempoMap {
  const marks: TempoMark[] = [];
  let before = 0;
  const all = tempos[0]?.tick === 0 ? tempos : [UNSET_TEMPO, ...tempos];
  all.forEach(({ tick, microseconds }, i) => {
    if (all[i + 1]?.tick === tick || microseconds === before) return;
    before = microseconds;
    marks.push({ tick, tempo: tempoOf(microseconds, tempoBeatTicks(meterAt(bars, tick))) });
  });
  return marks;
}
