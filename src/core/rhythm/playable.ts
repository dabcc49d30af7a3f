import type { KeyNumber, Semitones } from '../harmony/pitch.ts';
import { type Bpm, secondsPerTick } from '../time/tempoMap.ts';
import { type Seconds, TICKS_PER_QUARTER, type Ticks } from '../time/ticks.ts';
import type { HandName } from '../voicing/voicing.ts';
import { HAND_LIMITS, type HandLimits, type HandReach, handShift } from './handLimits.ts';
import type { Note } from './note.ts';

/**
 * A hit that exceeds a limit: too soon after the hit before (`rate`), too soon on a key struck
 * before (`repeat`), too far from it in the time there is (`leap`), or wider than the hand (`span`).
 * `value` and `limit` in strikes a second, semitones a second, or semitones.
 */
export type Strain = {
  readonly kind: 'rate' | 'repeat' | 'leap' | 'span';
  readonly startTick: Ticks;
  readonly value: number;
  readonly limit: number;
};

/**
 * What one hand has to do, an estimate. `fastestRate`: hits a second, `fastestRepeat`: strikes a
 * second on one key, both from the shortest gap, 0 with fewer than two; `biggestLeap`: semitones a
 * second; `widestSpan`: semitones struck at once; `strains` in order of time; `comfortableBpm`: the
 * fastest tempo at which no limit but that of the span is exceeded, undefined where the hand never
 * plays faster than any limit could mind (fewer than two hits).
 */
export type HandLoad = {
  readonly fastestRate: number;
  readonly fastestRepeat: number;
  readonly biggestLeap: number;
  readonly widestSpan: Semitones;
  readonly strains: readonly Strain[];
  readonly comfortableBpm: Bpm | undefined;
};

/** The notes of a hand that start together. */
type Struck = { readonly startTick: Ticks; readonly keys: readonly KeyNumber[] };

/**
 * What both hands have to do to play notes at a tempo of so many beats of `beatTicks` a minute (a
 * quarter note if not said), and where that exceeds the limits. Parts other than the hands are left
 * out. Leaps count from hit to hit, only as far as the hand must move to reach them.
 */
export function handLoad(
  notes: readonly Note[],
  bpm: Bpm,
  beatTicks: Ticks = TICKS_PER_QUARTER,
  limits: HandLimits = HAND_LIMITS,
): Readonly<Record<HandName, HandLoad>> {
  const tickSec = secondsPerTick({ bpm, beatTicks });
  const load = (hand: HandName) => loadOf(strikesOf(notes, hand), tickSec, bpm, limits);
  return { left: load('left'), right: load('right') };
}

function strikesOf(notes: readonly Note[], hand: HandName): Struck[] {
  const keysAt = new Map<Ticks, KeyNumber[]>();
  for (const { part, startTick, keyNumber } of notes)
    if (part === hand) keysAt.set(startTick, [...(keysAt.get(startTick) ?? []), keyNumber]);
  return [...keysAt]
    .map(([startTick, keys]) => ({ startTick, keys: keys.toSorted((a, b) => a - b) }))
    .toSorted((a, b) => a.startTick - b.startTick);
}

function loadOf(
  strikes: readonly Struck[],
  tickSec: Seconds,
  bpm: Bpm,
  limits: HandLimits,
): HandLoad {
  const measured = measuredStrains(strikes, tickSec, limits);
  const greatest = (kind: Strain['kind']) =>
    Math.max(0, ...measured.filter((m) => m.kind === kind).map((m) => m.value));
  const inTime = measured.filter((m) => m.kind !== 'span' && m.value > 0);
  return {
    fastestRate: greatest('rate'),
    fastestRepeat: greatest('repeat'),
    biggestLeap: greatest('leap'),
    widestSpan: greatest('span'),
    strains: measured.filter((m) => m.value > m.limit),
    comfortableBpm:
      inTime.length > 0 ? bpm * Math.min(...inTime.map((m) => m.limit / m.value)) : undefined,
  };
}

/** Everything that is measured at every strike, whether it exceeds its limit or not. */
function measuredStrains(
  strikes: readonly Struck[],
  tickSec: Seconds,
  limits: HandLimits,
): Strain[] {
  const lastStrike = new Map<KeyNumber, Ticks>();
  return strikes.flatMap((strike, i) => {
    const { startTick, keys } = strike;
    const before = strikes[i - 1];
    const rested = keys.map((key) => startTick - (lastStrike.get(key) ?? Number.NEGATIVE_INFINITY));
    for (const key of keys) lastStrike.set(key, startTick);
    const gapSec = before ? (startTick - before.startTick) * tickSec : Number.POSITIVE_INFINITY;
    const shift = before ? handShift(reachOf(before), reachOf(strike), limits.spanSemitones) : 0;
    const { lowest, highest } = reachOf(strike);
    return [
      { kind: 'rate', startTick, value: 1 / gapSec, limit: 1 / limits.strikeGapSec },
      {
        kind: 'repeat',
        startTick,
        value: 1 / (Math.min(...rested) * tickSec),
        limit: 1 / limits.repeatGapSec,
      },
      { kind: 'leap', startTick, value: shift / gapSec, limit: limits.leapPerSec },
      { kind: 'span', startTick, value: highest - lowest, limit: limits.spanSemitones },
    ] as const;
  });
}

function reachOf({ keys }: Struck): HandReach {
  return { lowest: keys[0]!, highest: keys.at(-1)! };
}
