import type { PatternId } from '../ids.ts';
import { barTicks, beatLengths, beatStarts, type Meter } from '../time/meter.ts';
import type { Ticks } from '../time/ticks.ts';
import type { Source } from './sources.ts';
import type { Swing } from './swing.ts';
import type { BassTone, VoiceTone } from './tones.ts';

/** Steps in one beat. */
export const DIVISIONS = [1, 2, 3, 4, 6, 8] as const;

export type Division = (typeof DIVISIONS)[number];

export const TOUCHES = ['ghost', 'plain', 'accent'] as const;

export type Touch = (typeof TOUCHES)[number];

/**
 * One attack of one hand. `at` counts ticks from the pattern's start, unswung; `length` is how long
 * it stands in the pattern; `held` sounds for that length, otherwise short (staccato). A hit with
 * `anticipates` that sounds over a chord change takes the chord it leads into.
 */
export type Hit<Tone extends BassTone | VoiceTone = BassTone | VoiceTone> = {
  readonly at: Ticks;
  readonly length: Ticks;
  readonly play: readonly Tone[];
  readonly touch: Touch;
  readonly held: boolean;
  readonly anticipates?: boolean;
};

export type LeftHit = Hit<BassTone>;
export type RightHit = Hit<VoiceTone>;

/** Hits of both hands, each hand ascending with no two hits at one tick. */
export type Hands = {
  readonly left: readonly LeftHit[];
  readonly right: readonly RightHit[];
};

/** One bar of hits, counted from its start. `divisions` has one entry per felt beat; without it they are those of the pattern's last bar. */
export type Ending = Hands & { readonly divisions?: readonly Division[] };

/** How the sustaining pedal is used, where it is: changed with each chord (see `pedalSpans`). */
export type Pedal = 'by-chord';

/**
 * A rhythm for both hands over one or more bars of one meter, free of any chord. `divisions` has
 * one entry per felt beat of the pattern; the hits stand at ticks and the grid is a view of them.
 * `sources` are what the band plays in the same bars. `ending`, one bar long, replaces the last
 * bar before a section ends. `variationOf` names the pattern that this one was made of, as its easier
 * version or for another meter.
 */
export type Pattern = Hands & {
  readonly id: PatternId;
  readonly name: string;
  readonly meter: Meter;
  readonly bars: number;
  readonly divisions: readonly Division[];
  readonly swing: Swing;
  readonly sources: readonly Source[];
  readonly ending?: Ending;
  readonly variationOf?: PatternId;
  readonly pedal?: Pedal;
};

/** More bars than a pattern has: one that can be drawn has 1, 2 or 4, a file may hold more. */
export const MOST_PATTERN_BARS = 64;

/** Length of the whole pattern in ticks, ending not counted. */
export function patternTicks(pattern: Pick<Pattern, 'meter' | 'bars'>): Ticks {
  return pattern.bars * barTicks(pattern.meter);
}

/** The divisions of a pattern's last bar; its ending is divided by them where it says nothing else. */
export function lastBarDivisions(
  pattern: Pick<Pattern, 'meter' | 'bars' | 'divisions'>,
): Division[] {
  return patternBeats(pattern)
    .filter(({ bar }) => bar === pattern.bars - 1)
    .map(({ division }) => division);
}

/** One felt beat of a pattern: where it starts, how long it is, into how many steps it is divided. */
export type PatternBeat = {
  readonly bar: number;
  readonly beat: number;
  readonly start: Ticks;
  readonly length: Ticks;
  readonly division: Division;
};

/** All felt beats of the pattern in order, with their divisions; a missing division counts as 1. */
export function patternBeats(
  pattern: Pick<Pattern, 'meter' | 'bars' | 'divisions'>,
): PatternBeat[] {
  const starts = beatStarts(pattern.meter);
  const lengths = beatLengths(pattern.meter);
  return Array.from({ length: pattern.bars }, (_, bar) =>
    starts.map((start, beat) => ({
      bar,
      beat,
      start: bar * barTicks(pattern.meter) + start,
      length: lengths[beat]!,
      division: pattern.divisions[bar * starts.length + beat] ?? (1 as const),
    })),
  ).flat();
}

/** One place of the grid; `index` counts within its beat. */
export type Step = {
  readonly at: Ticks;
  readonly length: Ticks;
  readonly index: number;
  readonly beat: PatternBeat;
};

/** Where a step of a beat lies, 0 to its division (the beat's end), rounded to a whole tick. */
export function stepTick({ start, length, division }: PatternBeat, step: number): Ticks {
  return start + Math.round((step * length) / division);
}

/** Every step of the pattern's grid in order, end to end. */
export function patternSteps(pattern: Pick<Pattern, 'meter' | 'bars' | 'divisions'>): Step[] {
  return patternBeats(pattern).flatMap((beat) =>
    Array.from({ length: beat.division }, (_, index) => ({
      at: stepTick(beat, index),
      length: stepTick(beat, index + 1) - stepTick(beat, index),
      index,
      beat,
    })),
  );
}

/** The ending as a pattern of one bar, without the band and without an ending of its own; undefined where there is none. */
export function endingBar(pattern: Pattern): Pattern | undefined {
  const { ending, ...main } = pattern;
  if (!ending) return undefined;
  const { left, right, divisions = lastBarDivisions(pattern) } = ending;
  return { ...main, left, right, divisions, bars: 1, sources: [] };
}

/** The hits of the pattern's last bar, counted from its start. */
export function lastBarHands(pattern: Hands & Pick<Pattern, 'meter' | 'bars'>): Hands {
  const start = (pattern.bars - 1) * barTicks(pattern.meter);
  const inBar = <H extends Hit>(hits: readonly H[]): H[] =>
    hits.filter(({ at }) => at >= start).map((hit) => ({ ...hit, at: hit.at - start }));
  return { left: inBar(pattern.left), right: inBar(pattern.right) };
}

/**
 * A changed pattern whose ending stands on the steps it stood on before: where its last bar is divided
 * otherwise now, an ending without divisions of its own takes those that the last bar had.
 */
export function withEndingGridOf(before: Pattern, changed: Pattern): Pattern {
  const { ending } = changed;
  if (!ending || ending.divisions) return changed;
  const divisions = endingBar(before)?.divisions ?? lastBarDivisions(before);
  const now = lastBarDivisions(changed);
  const isOther = now.length === divisions.length && now.some((d, i) => d !== divisions[i]);
  return isOther ? { ...changed, ending: { ...ending, divisions } } : changed;
}
