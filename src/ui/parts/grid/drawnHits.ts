import { type Hit, patternSteps } from '../../../core/rhythm/pattern.ts';
import type { Edit } from '../../../state/edits/edit.ts';
import { addHit, type HitOf, removeHit } from '../../../state/edits/hits.ts';
import { hitOnStep } from './gridPlace.ts';
import { type HitChange, type HitPlace, hitAdded } from './hitChanges.ts';

function inTurn(edits: readonly Edit[]): Edit {
  return (project) => edits.reduce((so, edit) => edit(so), project);
}

/** The columns from one to another, whichever way. */
function columnsPassed(from: number, to: number): number[] {
  const first = Math.min(from, to);
  return Array.from({ length: Math.abs(to - from) + 1 }, (_, i) => first + i);
}

/** What drawing from the step of a place to another step writes: a new hit on every step at which the hand rests. */
export function hitsDrawn(place: HitPlace, to: number): Edit {
  const steps = patternSteps(place.shown);
  const hits: readonly Hit[] = place.shown[place.hand];
  const rests = columnsPassed(place.column, to).filter((column) => {
    const step = steps[column];
    return step && !hitOnStep(hits, step);
  });
  return inTurn(rests.flatMap((column) => hitAdded({ ...place, column })?.edit ?? []));
}

/** What rubbing out from the step of a place to another step takes away: every hit of the hand that sounds there. */
export function hitsRubbedOut(
  { patternId, scope, shown, hand, column }: HitPlace,
  to: number,
): Edit {
  const steps = patternSteps(shown);
  const hits: readonly Hit[] = shown[hand];
  const passed = columnsPassed(column, to).flatMap((each) => {
    const step = steps[each];
    return (step && hitOnStep(hits, step)?.at) ?? [];
  });
  return inTurn([...new Set(passed)].map((at) => removeHit(patternId, hand, at, scope)));
}

/**
 * The hit on a step once more: from a step at which a hit sounds right behind it, on a step at which
 * the hand rests the last hit before. Where a hit stands already the cursor only goes there.
 * Undefined where there is nothing to repeat, or no room behind it.
 */
export function hitRepeated(place: HitPlace): HitChange | undefined {
  const { patternId, scope, shown, hand } = place;
  const steps = patternSteps(shown);
  const step = steps[place.column];
  const hits: readonly Hit[] = shown[hand];
  const here = step && hitOnStep(hits, step);
  const hit = here ?? hits.findLast(({ at }) => step !== undefined && at < step.at);
  const column = here ? steps.findIndex(({ at }) => at >= here.at + here.length) : place.column;
  const target = steps[column];
  if (!hit || !target) return undefined;
  const again = { ...hit, at: target.at } as HitOf[typeof hand];
  const edit: Edit = hitOnStep(hits, target)
    ? (project) => project
    : addHit(patternId, hand, again, scope);
  return { edit, label: 'repeat hit', column };
}
