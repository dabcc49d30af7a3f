import type { Project } from '../core/project.ts';
import { ok, type Result } from '../core/result.ts';
import { HAND_LIMITS, type HandLimits } from '../core/rhythm/handLimits.ts';
import { type Pattern, patternTicks } from '../core/rhythm/pattern.ts';
import { type HandLoad, handLoad, type Strain } from '../core/rhythm/playable.ts';
import { tempoBeatTicks } from '../core/time/meter.ts';
import type { Bpm } from '../core/time/tempoMap.ts';
import type { Ticks } from '../core/time/ticks.ts';
import type { HandName } from '../core/voicing/voicing.ts';
import { oneChordScore, type ScoreProblem } from './score.ts';

/** A strain, and the tick of the pattern's hit that it is in. */
export type HitStrain = Strain & { readonly at: Ticks };

/** What a pattern asks of each hand; its strains by the hits they are in, each hit and kind once. */
export type PatternLoad = Readonly<
  Record<HandName, Omit<HandLoad, 'strains'> & { readonly strains: readonly HitStrain[] }>
>;

/**
 * What a pattern asks of the hands, played round and round on the held chord in the project's
 * voicing, at a tempo in felt beats a minute; its ending is not looked at. `limits`: what
 * the player's hands can do. See `handLoad`.
 */
export function patternLoad(
  project: Project,
  pattern: Pattern,
  bpm: Bpm,
  limits: HandLimits = HAND_LIMITS,
): Result<PatternLoad, ScoreProblem> {
  const score = oneChordScore(project, pattern, 2 * pattern.bars, bpm);
  if (!score.ok) return score;
  const { notes } = score.value;
  const load = handLoad(notes, bpm, tempoBeatTicks(pattern.meter), limits);
  const hitAt = (hand: HandName) => {
    const places = new Map<Ticks, Ticks>();
    for (const { part, startTick, patternTick } of notes)
      if (part === hand && patternTick !== undefined) places.set(startTick, patternTick);
    return places;
  };
  const ofHand = (hand: HandName) => ({
    ...load[hand],
    strains: strainsByHit(load[hand].strains, hitAt(hand), patternTicks(pattern)),
  });
  return ok({ left: ofHand('left'), right: ofHand('right') });
}

function strainsByHit(
  strains: readonly Strain[],
  hitAt: ReadonlyMap<Ticks, Ticks>,
  end: Ticks,
): HitStrain[] {
  const byHit = new Map<string, HitStrain>();
  for (const strain of strains) {
    const at = (hitAt.get(strain.startTick) ?? strain.startTick) % end;
    const key = `${at} ${strain.kind}`;
    const before = byHit.get(key);
    if (!before || strain.value > before.value) byHit.set(key, { ...strain, at });
  }
  return [...byHit.values()].toSorted((a, b) => a.at - b.at);
}
