import { err, ok, type Result } from '../result.ts';
import type { Bpm } from '../time/tempoMap.ts';
import type { Seconds } from '../time/ticks.ts';
import { deviationsOf } from './deviations.ts';
import { pairTimes } from './pairTimes.ts';

/** What is played along to: so many clicks, slow enough that no latency is taken for a wrong beat. */
export const CALIBRATION: { readonly beats: number; readonly bpm: Bpm } = { beats: 16, bpm: 88 };

/** Latencies that are looked for; the range is shorter than a beat. Below 0 is playing ahead of the click. */
const LATENCIES: { readonly least: Seconds; readonly most: Seconds } = { least: -0.15, most: 0.5 };

/** Hits this near to the same latency are thought to answer their clicks. */
const TOGETHER_SEC: Seconds = 0.06;

/** Hits this far from that still count, as uneven ones. */
const WINDOW_SEC: Seconds = 0.12;

/** Fewer answers than this share of the clicks, or answers that scatter more, say too little. Our own choice. */
const ENOUGH = { share: 0.75, spreadMs: 45 } as const;

/** How late hits arrive on a device, how unevenly they were played, and how many said so. */
export type Calibration = {
  readonly latencySec: Seconds;
  readonly spreadMs: number;
  readonly hits: number;
};

export type CalibrationError =
  | { readonly kind: 'too-few-hits'; readonly hits: number; readonly needed: number }
  | { readonly kind: 'too-uneven'; readonly spreadMs: number };

/**
 * The latency of an input out of playing along with clicks: the time from a click (on the clock that
 * stamps the hits) to its hit, from −150 to 500 ms. It is the Hodges–Lehmann centre (the median of
 * the means of all pairs, 1963), which hits that are far off hardly move. Clicks ascend and are at
 * least 0.65 s apart; hits in any order, extra ones allowed.
 */
export function calibrate(
  clicksSec: readonly Seconds[],
  hitsSec: readonly Seconds[],
): Result<Calibration, CalibrationError> {
  const hits = hitsSec.toSorted((a, b) => a - b);
  const roughSec = commonestLatency(clicksSec, hits);
  const shifted = clicksSec.map((sec) => sec + roughSec);
  const latencies = pairTimes(shifted, hits, WINDOW_SEC).map(
    (pair) => hits[pair.played]! - clicksSec[pair.expected]!,
  );
  const needed = Math.ceil(ENOUGH.share * clicksSec.length);
  if (latencies.length < Math.max(needed, 2))
    return err({ kind: 'too-few-hits', hits: latencies.length, needed });
  const { spreadMs = 0 } = deviationsOf(latencies);
  if (spreadMs > ENOUGH.spreadMs) return err({ kind: 'too-uneven', spreadMs });
  return ok({ latencySec: robustCentre(latencies), spreadMs, hits: latencies.length });
}

/** The latency near which most clicks have a hit; 0 without any. */
function commonestLatency(clicksSec: readonly Seconds[], hitsSec: readonly Seconds[]): Seconds {
  const latencies = clicksSec
    .flatMap((click) => hitsSec.map((hit) => hit - click))
    .filter((sec) => sec >= LATENCIES.least && sec <= LATENCIES.most);
  const near = (sec: Seconds) =>
    latencies.filter((other) => Math.abs(other - sec) <= TOGETHER_SEC).length;
  return latencies.reduce((best, sec) => (near(sec) > near(best) ? sec : best), latencies[0] ?? 0);
}

/** Hodges and Lehmann's centre of some values: the median of the means of all pairs, each value with itself included. */
export function robustCentre(values: readonly number[]): number {
  const means = values
    .flatMap((one, i) => values.slice(i).map((other) => (one + other) / 2))
    .toSorted((a, b) => a - b);
  const middle = means.length >> 1;
  const upper = means[middle];
  if (upper === undefined) throw new Error('nothing has no centre');
  return means.length % 2 === 1 ? upper : (means[middle - 1]! + upper) / 2;
}
