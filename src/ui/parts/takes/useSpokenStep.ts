import type { Pattern } from '../../../core/rhythm/pattern.ts';
import { spokenTick } from '../pattern/spokenTick.ts';
import { useProject } from '../tool/useProject.ts';
import type { SpokenStep } from './takeWords.ts';

/**
 * How the steps of this song's patterns are told: counted in their pattern, which is named where it is
 * not the one at hand.
 */
export function useSpokenStep(atHand: Pattern | undefined): SpokenStep {
  const patterns = useProject((project) => project.patterns);
  return (tick, patternId) => {
    const pattern = patterns.find(({ id }) => id === patternId) ?? atHand;
    if (!pattern) return 'one place';
    const place = spokenTick(pattern, tick);
    return pattern.id === atHand?.id ? place : `${place} of “${pattern.name}”`;
  };
}
