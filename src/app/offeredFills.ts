import type { Project } from '../core/project.ts';
import { endingPhrase } from '../core/rhythm/endingPhrase.ts';
import { endingFills, type Fill } from '../core/rhythm/fills.ts';
import { HAND_LIMITS, type HandLimits } from '../core/rhythm/handLimits.ts';
import { type Ending, lastBarHands, type Pattern } from '../core/rhythm/pattern.ts';
import type { Bpm } from '../core/time/tempoMap.ts';
import { patternLoad } from './patternLoad.ts';

/**
 * The fills that a pattern's ending can have (`endingFills`) and that ask no more of the hands than
 * they can do, in the project's voicing on the held chord, than the pattern itself already does. None
 * where no hands fit that chord.
 */
export function offeredFills(
  project: Project,
  pattern: Pattern,
  bpm: Bpm,
  limits: HandLimits = HAND_LIMITS,
): Fill[] {
  const strainsWith = (ending: Ending): readonly string[] | undefined => {
    const load = patternLoad(project, endingPhrase(pattern, ending), bpm, limits);
    if (!load.ok) return undefined;
    const { left, right } = load.value;
    return [
      ...left.strains.map(({ kind, at }) => `left ${kind} ${at}`),
      ...right.strains.map(({ kind, at }) => `right ${kind} ${at}`),
    ];
  };
  const known = strainsWith(lastBarHands(pattern));
  if (!known) return [];
  return endingFills(pattern, bpm, limits).filter(({ ending }) =>
    strainsWith(ending)?.every((strain) => known.includes(strain)),
  );
}
