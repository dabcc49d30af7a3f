import type { Ticks } from '../time/ticks.ts';
import {
  type Hit,
  type LeftHit,
  type Pattern,
  patternSteps,
  patternTicks,
  type RightHit,
} from './pattern.ts';
import { inHands, type WhichHands } from './patternMoves.ts';
import type { BassTone, VoiceTone } from './tones.ts';

/** A stretch of a pattern, `until` excluded. */
export type FigureStretch = { readonly from: Ticks; readonly until: Ticks };

function isIn({ from, until }: FigureStretch): (hit: Pick<Hit, 'at'>) => boolean {
  return ({ at }) => at >= from && at < until;
}

/** Plays all hits of the hands that are meant in one manner: a touch, or short or held. */
export function inManner(
  pattern: Pattern,
  which: WhichHands,
  manner: Partial<Pick<Hit, 'touch' | 'held'>>,
): Pattern {
  return inHands(pattern, which, (hits) => hits.map((hit) => ({ ...hit, ...manner })));
}

/**
 * Brings the hits of a place early by so many ticks: they sound on until where they ended and take
 * the chord they lead into. From the pattern's start they go to its end, for the next time round. A
 * hit that is in their way ends there.
 */
export function pushed(pattern: Pattern, which: WhichHands, at: Ticks, by: Ticks): Pattern {
  const end = patternTicks(pattern);
  const early = (at - by + end) % end;
  return inHands(pattern, which, <H extends Hit>(hits: readonly H[]) => {
    const pushedHit = hits.find((hit) => hit.at === at);
    if (!pushedHit) return hits;
    const length = pushedHit.length + by;
    const others = hits.filter((hit) => hit !== pushedHit && hit.at !== early);
    return [...others, { ...pushedHit, at: early, length, anticipates: true }].toSorted(
      (a, b) => a.at - b.at,
    );
  });
}

/** Ways to break a chord: which voice comes when, over and over. */
export const BROKEN_WAYS = {
  up: ['voice-1', 'voice-2', 'voice-3', 'voice-4'],
  'up and down': ['voice-1', 'voice-2', 'voice-3', 'voice-4', 'voice-3', 'voice-2'],
  'low, high': ['bottom', 'upper'],
} as const satisfies Readonly<Record<string, readonly VoiceTone[]>>;

export type BrokenWay = keyof typeof BROKEN_WAYS;

/**
 * Breaks the right hand's chords in a stretch: on every step on which one of its hits sounds there is
 * one voice after the other, in the touch of that hit on its first step, plain or ghosted on the
 * others. Single voices that are there are taken along.
 */
export function brokenChords(pattern: Pattern, way: BrokenWay, stretch: FigureStretch): Pattern {
  const inStretch = isIn(stretch);
  const broken = pattern.right.filter(inStretch);
  const steps = patternSteps(pattern).filter(inStretch);
  const voices: readonly VoiceTone[] = BROKEN_WAYS[way];
  const sounding = steps.flatMap((step) => {
    const hit = broken.findLast(({ at }) => at <= step.at);
    return hit && step.at < hit.at + hit.length ? [{ step, hit }] : [];
  });
  const singles = sounding.map(({ step, hit }, i): RightHit => {
    const { anticipates: _anticipates, ...manner } = hit;
    const isFirst = step.at === hit.at;
    return {
      ...(isFirst ? hit : manner),
      at: step.at,
      length: step.length,
      play: [voices[i % voices.length]!],
      touch: isFirst || hit.touch !== 'accent' ? hit.touch : 'plain',
    };
  });
  return {
    ...pattern,
    right: inOrder(
      pattern.right.filter((hit) => !inStretch(hit)),
      singles,
    ),
  };
}

/** Has the right hand's hits in a stretch play whole chords. */
export function wholeChords(pattern: Pattern, stretch: FigureStretch): Pattern {
  const inStretch = isIn(stretch);
  const right = pattern.right.map(
    (hit): RightHit => (inStretch(hit) ? { ...hit, play: ['all'] } : hit),
  );
  return { ...pattern, right };
}

/** Doubles the bass in octaves wherever it strikes the root in a stretch, or takes the octaves away where all have them. */
export function bassInOctaves(pattern: Pattern, stretch: FigureStretch): Pattern {
  const inStretch = isIn(stretch);
  const isRoot = (hit: LeftHit) => inStretch(hit) && hit.play.includes('root');
  const areDoubled = pattern.left.filter(isRoot).every(({ play }) => play.includes('octave'));
  const changed = (play: readonly BassTone[]): readonly BassTone[] => {
    const single = play.filter((tone) => tone !== 'octave');
    return areDoubled ? single : [...single, 'octave'];
  };
  const left = pattern.left.map((hit) => (isRoot(hit) ? { ...hit, play: changed(hit.play) } : hit));
  return { ...pattern, left };
}

/**
 * Leads the bass out of a stretch: its last hit there comes to the next root from a semitone below.
 * Where the bass strikes only once there, such a hit is added on the last step.
 */
export function approachAtEnd(pattern: Pattern, stretch: FigureStretch): Pattern {
  const inStretch = isIn(stretch);
  const there = pattern.left.filter(inStretch);
  const lastStep = patternSteps(pattern).findLast(inStretch);
  const last = there.length > 1 ? there.at(-1) : undefined;
  if (!lastStep) return pattern;
  const { at, length, touch, held } = last ?? { ...lastStep, touch: 'plain', held: true };
  const approach: LeftHit = { at, length, play: ['approach'], touch, held };
  const others = pattern.left
    .filter((hit) => hit.at !== at)
    .map((hit) =>
      hit.at < at && hit.at + hit.length > at ? { ...hit, length: at - hit.at } : hit,
    );
  return { ...pattern, left: inOrder(others, [approach]) };
}

function inOrder<H extends Hit>(some: readonly H[], others: readonly H[]): H[] {
  return [...some, ...others].toSorted((a, b) => a.at - b.at);
}
