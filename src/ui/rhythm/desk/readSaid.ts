import { err, type Result } from '../../../core/result.ts';
import { formatCounts, parseCounts, type SaidCounts } from '../../../core/rhythm/counts.ts';
import type { Pattern } from '../../../core/rhythm/pattern.ts';
import { PATTERN_BARS } from '../../../state/edits/pattern.ts';
import type { RhythmTarget } from '../../../state/edits/writeRhythm.ts';
import type { SaidProblem } from './sayMessages.ts';
import { struckBy } from './targets.ts';

/** Reads what was said into a pattern's meter, in as many bars as a pattern can have. */
export function readSaid(text: string, pattern: Pattern): Result<SaidCounts, SaidProblem> {
  const counts = parseCounts(text, pattern.meter, pattern.divisions);
  if (!counts.ok) return counts;
  const { bars } = counts.value;
  return PATTERN_BARS.some((known) => known === bars) ? counts : err({ kind: 'bars', bars });
}

/** What a target plays now, as it is said; empty where it plays nothing. */
export function saidBy(pattern: Pattern, target: RhythmTarget): string {
  const struck = struckBy(pattern, target);
  return struck.length > 0 ? formatCounts(struck, pattern) : '';
}
