import type { PatternId } from '../../../core/ids.ts';
import type { HitHand } from '../../../core/practice/expectedHits.ts';
import type { TakeRemark } from '../../../core/practice/takeRemarks.ts';
import type { HandScore } from '../../../core/practice/takeScore.ts';
import { type Grade, toleranceBands } from '../../../core/practice/tolerance.ts';
import { unreachable } from '../../../core/result.ts';
import type { Seconds, Ticks } from '../../../core/time/ticks.ts';

/** One remark as it stands on the page: a sentence, and beside it the figure it rests on (may be empty). */
export type TakeLine = { readonly words: string; readonly figure: string };

/** Where a step is, as one says it: "beat 2", "2 and". */
export type SpokenStep = (patternTick: Ticks, patternId: PatternId | undefined) => string;

const MINE: Readonly<Record<HitHand, string>> = {
  left: 'Your left hand',
  right: 'Your right hand',
  both: 'You',
};

const VERBS = {
  leaves: { one: 'leaves notes out', both: 'leave notes out' },
  comes: { one: 'comes', both: 'come' },
  is: { one: 'is', both: 'are' },
  goes: { one: 'goes', both: 'go' },
} as const;

function who(hand: HitHand, verb: keyof typeof VERBS): string {
  return `${MINE[hand]} ${VERBS[verb][hand === 'both' ? 'both' : 'one']}`;
}

/** How far off, by the band that it lies in. */
const HOW_FAR: Readonly<Record<Grade, string>> = {
  'very-good': 'a touch',
  good: 'a little',
  fair: 'clearly',
  off: 'much too',
};

const HOW_EVEN: Readonly<Record<Grade, string>> = {
  'very-good': 'very even',
  good: 'even',
  fair: 'a little uneven',
  off: 'uneven',
};

/** Whole milliseconds. */
export function msWords(ms: number): string {
  return `${Math.round(ms)} ms`;
}

/** How late, early, or neither (within half a millisecond). */
export function latenessWords(laterMs: number): string {
  const ms = Math.round(laterMs);
  if (ms === 0) return '0 ms';
  return `${Math.abs(ms)} ms ${ms < 0 ? 'early' : 'late'}`;
}

function percentWords(percent: number): string {
  return `${Math.abs(percent).toFixed(1)} %`;
}

/** Whichever of a drift's two sides is the larger is what is told. */
function driftLine({ fasterPercent, gainPercent }: TakeRemark & { kind: 'drift' }): TakeLine {
  if (Math.abs(gainPercent) > Math.abs(fasterPercent))
    return {
      words: gainPercent > 0 ? 'You speed up as it goes on.' : 'You slow down as it goes on.',
      figure: percentWords(gainPercent),
    };
  return {
    words: fasterPercent > 0 ? 'You run ahead of the click.' : 'You fall behind the click.',
    figure: percentWords(fasterPercent),
  };
}

/** How far a step lies beside the rest of its hand, which may be late or early itself. */
function besideWords(laterMs: number): string {
  return `${msWords(Math.abs(laterMs))} ${laterMs < 0 ? 'ahead of' : 'behind'} the rest`;
}

function weakStepLine({ step }: TakeRemark & { kind: 'weak-step' }, spoken: SpokenStep): TakeLine {
  const place = spoken(step.patternTick, step.patternId);
  const hand = step.hand === 'both' ? '' : `, ${step.hand} hand`;
  const figures = [
    ...(step.missed > 0 ? [`${step.missed} of ${step.expected} left out`] : []),
    ...(step.laterMs === undefined ? [] : [besideWords(step.laterMs)]),
  ];
  return { words: `Look at ${place}${hand}.`, figure: figures.join(', ') };
}

/** What a remark says: words first, the figure beside. */
export function remarkLine(remark: TakeRemark, spoken: SpokenStep): TakeLine {
  switch (remark.kind) {
    case 'nothing-played':
      return { words: 'Nothing was heard from you.', figure: '' };
    case 'unrelated':
      return {
        words: 'What was heard hardly fits the pattern. Take it slower, or one hand alone.',
        figure: `${remark.matched} ${remark.matched === 1 ? 'hit fits' : 'hits fit'}`,
      };
    case 'clean':
      return { words: 'That was clean.', figure: '' };
    case 'missed':
      return {
        words: `${who(remark.hand, 'leaves')}.`,
        figure: `${remark.hits} of ${remark.expected}`,
      };
    case 'extra':
      return {
        words: 'There was more than the pattern has.',
        figure: `${remark.hits} of ${remark.played}`,
      };
    case 'wrong-keys':
      return { words: 'Some notes were wrong.', figure: `${remark.hits} of ${remark.played}` };
    case 'drift':
      return driftLine(remark);
    case 'early':
    case 'late':
      return {
        words: `${who(remark.hand, 'comes')} ${HOW_FAR[remark.grade]} ${remark.kind}.`,
        figure: `${msWords(remark.ms)} ${remark.kind}`,
      };
    case 'even':
    case 'uneven':
      return {
        words: `${who(remark.hand, 'is')} ${HOW_EVEN[remark.grade]}.`,
        figure: `± ${msWords(remark.ms)}`,
      };
    case 'hands-apart':
      return {
        words: `${who(remark.first, 'comes')} before the other.`,
        figure: msWords(remark.ms),
      };
    case 'late-changes':
      return { words: 'Chord changes come late.', figure: `${msWords(remark.ms)} later` };
    case 'weak-step':
      return weakStepLine(remark, spoken);
    default:
      return unreachable(remark);
  }
}

/** A hand's figures: typical lateness and unevenness; a dash where too little was played to say. */
export function handFigures({ hand, meanMs, unevennessMs }: HandScore): {
  readonly hand: string;
  readonly lateness: string;
  readonly unevenness: string;
} {
  const names: Readonly<Record<HitHand, string>> = { left: 'Left', right: 'Right', both: 'Both' };
  return {
    hand: names[hand],
    lateness: meanMs === undefined ? '–' : latenessWords(meanMs),
    unevenness: unevennessMs === undefined ? '–' : `± ${msWords(unevennessMs)}`,
  };
}

/** Which deviations count as what, for hits that are usually `gapSec` apart. */
export function bandsSentence(gapSec: Seconds): string {
  const bands = toleranceBands(gapSec);
  const [best, good, fair] = [bands['very-good'], bands.good, bands.fair].map((sec) =>
    Math.round(1000 * sec),
  );
  return `With hits ${Math.round(1000 * gapSec)} ms apart, within ${best} ms is very good, ${good} good, ${fair} fair. Clean: nine of ten within ${fair} ms, and hardly a hit too many.`;
}
