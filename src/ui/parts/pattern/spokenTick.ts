import { countSyllables } from '../../../core/rhythm/counts.ts';
import {
  endingBar,
  type Pattern,
  patternSteps,
  patternTicks,
} from '../../../core/rhythm/pattern.ts';
import type { Ticks } from '../../../core/time/ticks.ts';
import { spokenStep } from './spokenPlace.ts';

/**
 * Where a tick of a pattern is counted, as one says it: "beat 2", "bar 2, 4 and"; ticks of the ending go on
 * from the pattern's end: "beat 2 of the ending". Between two steps it is the earlier one.
 */
export function spokenTick(pattern: Pattern, tick: Ticks): string {
  const inEnding = tick - patternTicks(pattern);
  const ending = inEnding < 0 ? undefined : endingBar(pattern);
  if (ending) return `${spokenTick(ending, inEnding)} of the ending`;
  const steps = patternSteps(pattern);
  const at = Math.max(
    steps.findLastIndex((step) => step.at <= tick),
    0,
  );
  return spokenStep(steps[at]!, countSyllables(pattern)[at] ?? '', pattern.bars);
}
