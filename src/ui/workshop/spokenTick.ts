import { countSyllables } from '../../core/rhythm/counts.ts';
import { type Pattern, patternSteps } from '../../core/rhythm/pattern.ts';
import type { Ticks } from '../../core/time/ticks.ts';
import { spokenStep } from '../patternGrid/spokenPlace.ts';

/** Where a tick of a pattern is counted, as one says it: "beat 2", "bar 2, 4 and". Between two steps it is the earlier one. */
export function spokenTick(pattern: Pattern, tick: Ticks): string {
  const steps = patternSteps(pattern);
  const at = Math.max(
    steps.findLastIndex((step) => step.at <= tick),
    0,
  );
  return spokenStep(steps[at]!, countSyllables(pattern)[at] ?? '', pattern.bars);
}
