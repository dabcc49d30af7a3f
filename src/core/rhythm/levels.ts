import { tempoBeatTicks } from '../time/meter.ts';
import { type Bpm, secondsPerTick } from '../time/tempoMap.ts';
import type { Seconds, Ticks } from '../time/ticks.ts';
import { HAND_LIMITS, type HandLimits, type HandReach, handShift } from './handLimits.ts';
import {
  DIVISIONS,
  type Hands,
  type Hit,
  type Pattern,
  patternBeats,
  patternTicks,
} from './pattern.ts';
import { patternSwing } from './patternSwing.ts';
import type { BassTone, VoiceTone } from './tones.ts';

/** How much of a pattern is played, from first lesson to everything that is playable. */
export type Level = 1 | 2 | 3 | 4 | 5;

/**
 * What a level lets a player do. `finestSteps`: how many steps a beat may be divided into for its
 * hits (1: on the beat only). `strikeGapSec` and `repeatGapSec`: shortest time between two hits of
 * one hand, and between two that strike the same key, as far as a pattern can tell. `leapPerSec`: see `HandLimits`.
 * `crossGapSec`: shortest time between hits of different hands that are not struck together.
 */
export type LevelLimits = {
  readonly finestSteps: number;
  readonly strikeGapSec: Seconds;
  readonly repeatGapSec: Seconds;
  readonly leapPerSec: number;
  readonly crossGapSec: Seconds;
};

/** The levels (own choice, from what teachers ask of beginners up to `HAND_LIMITS`). */
export const LEVELS: Readonly<Record<Level, LevelLimits>> = {
  1: { finestSteps: 1, strikeGapSec: 0.45, repeatGapSec: 0.45, leapPerSec: 12, crossGapSec: 0.45 },
  2: { finestSteps: 3, strikeGapSec: 0.3, repeatGapSec: 0.35, leapPerSec: 24, crossGapSec: 0.25 },
  3: { finestSteps: 4, strikeGapSec: 0.2, repeatGapSec: 0.25, leapPerSec: 36, crossGapSec: 0.15 },
  4: { finestSteps: 8, strikeGapSec: 0.13, repeatGapSec: 0.18, leapPerSec: 48, crossGapSec: 0.1 },
  5: { ...HAND_LIMITS, finestSteps: Number.POSITIVE_INFINITY, crossGapSec: 0 },
};

/** The pattern that the hits stand in. */
export type LevelGrid = Pick<Pattern, 'meter' | 'bars' | 'divisions' | 'swing'>;

/** Where each tone lies over the root or the lowest voice, roughly, in semitones: a pattern knows no chord. */
const TONE_HEIGHTS: Readonly<Record<BassTone | VoiceTone, HandReach>> = {
  root: { lowest: 0, highest: 0 },
  third: { lowest: 4, highest: 4 },
  fifth: { lowest: 7, highest: 7 },
  sixth: { lowest: 9, highest: 9 },
  seventh: { lowest: 10, highest: 10 },
  octave: { lowest: 12, highest: 12 },
  tenth: { lowest: 16, highest: 16 },
  'fifth-below': { lowest: -5, highest: -5 },
  approach: { lowest: -1, highest: -1 },
  all: { lowest: 0, highest: 8 },
  upper: { lowest: 4, highest: 8 },
  top: { lowest: 8, highest: 8 },
  middle: { lowest: 4, highest: 4 },
  bottom: { lowest: 0, highest: 0 },
  'voice-1': { lowest: 0, highest: 0 },
  'voice-2': { lowest: 4, highest: 4 },
  'voice-3': { lowest: 8, highest: 8 },
  'voice-4': { lowest: 12, highest: 12 },
  'voice-5': { lowest: 16, highest: 16 },
  'voice-6': { lowest: 20, highest: 20 },
};

function reachOf(hit: Hit): HandReach {
  const tones = hit.play.map((tone) => TONE_HEIGHTS[tone]);
  return {
    lowest: Math.min(...tones.map((tone) => tone.lowest)),
    highest: Math.max(...tones.map((tone) => tone.highest)),
  };
}

/** Voices that strike none of the other's keys have heights apart; the whole chord has all of them. */
function strikeSameKey(from: BassTone | VoiceTone, to: BassTone | VoiceTone): boolean {
  if (from === 'all' || to === 'all') return true;
  const [a, b] = [TONE_HEIGHTS[from], TONE_HEIGHTS[to]];
  return a.lowest <= b.highest && b.lowest <= a.highest;
}

/** What a level asks of two hits, at one tempo, in one pattern. */
export type LevelChecks = {
  /** Whether the level lets a hit stand at its place in its beat. */
  readonly mayStand: (hit: Hit) => boolean;
  /** The shortest time in which a hand may go from one hit to the next. */
  readonly followSec: (from: Hit, to: Hit) => Seconds;
  /** The shortest time between hits of different hands that are not struck together. */
  readonly crossSec: Seconds;
  /** From one place of the pattern to the next time another comes, as they are swung. */
  readonly gapSec: (from: Ticks, to: Ticks) => Seconds;
};

/** The limits of a level for a player whose hands do so much: the level's own, or the hands' where these do less; level 5 is what the hands do. */
export function levelLimits(level: Level, hands: HandLimits = HAND_LIMITS): LevelLimits {
  const own = LEVELS[level];
  if (level === 5) return { ...own, ...hands };
  return {
    ...own,
    strikeGapSec: Math.max(own.strikeGapSec, hands.strikeGapSec),
    repeatGapSec: Math.max(own.repeatGapSec, hands.repeatGapSec),
    leapPerSec: Math.min(own.leapPerSec, hands.leapPerSec),
  };
}

/** See `LevelChecks`. `bpm` counts what the meter's tempo counts: a dotted quarter in 6/8. `hands`: what the player's do. */
export function levelChecks(
  level: Level,
  bpm: Bpm,
  grid: LevelGrid,
  hands: HandLimits = HAND_LIMITS,
): LevelChecks {
  const limits = levelLimits(level, hands);
  const tickSec = secondsPerTick({ bpm, beatTicks: tempoBeatTicks(grid.meter) });
  const end = patternTicks(grid);
  const swung = patternSwing(grid);
  return {
    mayStand: (hit) => stepsNeeded(hit.at, grid) <= limits.finestSteps,
    followSec: (from, to) => {
      const repeats = from.play.some((tone) => to.play.some((next) => strikeSameKey(tone, next)));
      const shift = handShift(reachOf(from), reachOf(to), hands.spanSemitones);
      const shortest = repeats ? limits.repeatGapSec : limits.strikeGapSec;
      return Math.max(shortest, shift / limits.leapPerSec);
    },
    crossSec: limits.crossGapSec,
    gapSec: (from, to) => (swung(to > from ? to : to + end) - swung(from)) * tickSec,
  };
}

/** Whether a gap is as long as is asked for; a gap of exactly that length passes, whatever the rounding. */
export function isLongEnough(gapSec: Seconds, askedSec: Seconds): boolean {
  return gapSec >= askedSec - 1e-9;
}

/** Into how many steps its beat must be divided at least for a tick to stand on one of them. */
function stepsNeeded(tick: Ticks, grid: LevelGrid): number {
  const beat = patternBeats(grid).findLast(({ start }) => start <= tick);
  if (!beat) return Number.POSITIVE_INFINITY;
  const found = DIVISIONS.find((steps) => ((tick - beat.start) * steps) % beat.length === 0);
  return found ?? Number.POSITIVE_INFINITY;
}

/** Whether both hands keep to a level, played round and round at a tempo. `limits`: what the player's hands do. */
export function keepsToLevel(
  hands: Hands,
  level: Level,
  bpm: Bpm,
  grid: LevelGrid,
  limits: HandLimits = HAND_LIMITS,
): boolean {
  const { mayStand, followSec, crossSec, gapSec } = levelChecks(level, bpm, grid, limits);
  const standsAndFollows = (hits: readonly Hit[]) =>
    hits.every((hit, i) => {
      const next = hits[(i + 1) % hits.length]!;
      return mayStand(hit) && isLongEnough(gapSec(hit.at, next.at), followSec(hit, next));
    });
  const crosses = (from: readonly Hit[], to: readonly Hit[]) =>
    from.every((a) => to.every((b) => a.at === b.at || isLongEnough(gapSec(a.at, b.at), crossSec)));
  return (
    standsAndFollows(hands.left) &&
    standsAndFollows(hands.right) &&
    crosses(hands.left, hands.right) &&
    crosses(hands.right, hands.left)
  );
}
