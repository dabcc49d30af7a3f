import type { Seconds } from '../core/time/ticks.ts';
import type { DueNote, Pass } from './pass.ts';

/** A hit that an edit moves by no more than this (swing at a slow tempo) is still the same hit. */
export const NEAR_SEC: Seconds = 0.25;

/** Notes that are not known to come from one hit of the pattern must be so much nearer to be the same. */
const OTHER_HIT_SEC: Seconds = 0.1;

type Pair = { readonly old: number; readonly revised: number; readonly apart: Seconds };

function apart(old: DueNote, revised: DueNote): Seconds {
  const { patternTick } = old.note;
  const isOneHit = patternTick !== undefined && patternTick === revised.note.patternTick;
  return Math.abs(old.atSec - revised.atSec) + (isOneHit ? 0 : OTHER_HIT_SEC);
}

function isSameKey({ note: a }: DueNote, { note: b }: DueNote): boolean {
  return a.keyNumber === b.keyNumber && a.part === b.part;
}

/** Pairs notes of one part and key that are near each other, one to one, the nearest first. */
function nearestPairs(old: readonly DueNote[], revised: readonly DueNote[]): Pair[] {
  const candidates: Pair[] = [];
  for (const [i, a] of old.entries())
    for (const [j, b] of revised.entries())
      if (isSameKey(a, b) && apart(a, b) <= NEAR_SEC)
        candidates.push({ old: i, revised: j, apart: apart(a, b) });
  const takenOld = new Set<number>();
  const takenRevised = new Set<number>();
  return candidates
    .toSorted((a, b) => a.apart - b.apart)
    .filter((pair) => {
      if (takenOld.has(pair.old) || takenRevised.has(pair.revised)) return false;
      takenOld.add(pair.old);
      takenRevised.add(pair.revised);
      return true;
    });
}

/**
 * Which notes of a revised pass are still to sound when everything due before `horizonSec` has been
 * handed over. In general those at or after it; but a note that the revision moves over the horizon
 * sounds once all the same: it is left out if `old` has it as handed over, and sounds, possibly late,
 * if `old` has it as waiting. Notes are the same by part, key number and nearness, and rather so if
 * one hit of the pattern made both. All times are of the clock; those of `old` answer to the revised
 * pass's tempo.
 */
export function notesToSound<P extends Pass>(
  old: readonly (DueNote & { readonly isWaiting: boolean })[],
  revised: readonly DueNote<P>[],
  horizonSec: Seconds,
): DueNote<P>[] {
  const isNear = ({ atSec }: DueNote) => Math.abs(atSec - horizonSec) <= NEAR_SEC;
  const oldNear = old.filter(isNear);
  const revisedNear = revised.filter(isNear);
  const isWaiting = new Map(
    nearestPairs(oldNear, revisedNear).map((pair) => [
      revisedNear[pair.revised],
      oldNear[pair.old]?.isWaiting,
    ]),
  );
  return revised.filter((due) => isWaiting.get(due) ?? due.atSec >= horizonSec);
}
