import type { PatternId } from '../ids.ts';
import type { Pattern } from './pattern.ts';

/** The pattern that is chosen, or the first there is where none is or it is gone. */
export function chosenPattern(
  { patterns }: { readonly patterns: readonly Pattern[] },
  patternId: PatternId | undefined,
): Pattern | undefined {
  return patterns.find((pattern) => pattern.id === patternId) ?? patterns[0];
}
