import type { ExpectedHit, InputSees } from '../core/practice/expectedHits.ts';
import type { HitMatching } from '../core/practice/matchHits.ts';
import { matchTake, WIDEST_WINDOW_SEC } from '../core/practice/matchTake.ts';
import { withHands } from '../core/practice/playedHands.ts';
import { gatherChords, type PlayedNote } from '../core/practice/playedHits.ts';
import { scoreTake, type TakeScore } from '../core/practice/takeScore.ts';
import type { Seconds } from '../core/time/ticks.ts';
import type { ExpectedStretch } from './expectedOfPass.ts';

/**
 * What was played to some stretches (in order of time) against what was expected there. What was
 * played in a count-in, or while nothing played, does not count.
 */
export function matchStretches(
  stretches: readonly ExpectedStretch[],
  notes: readonly PlayedNote[],
  sees: InputSees,
): HitMatching {
  const expected = stretches.flatMap((stretch) => stretch.expected);
  const counting = notes.filter((note) => stretches.some((each) => isWithin(each, note.atSec)));
  const handed = sees === 'keys' ? withHands(counting, expected) : counting;
  return matchTake(expected, gatherChords(handed));
}

/** Whether a hit at a time may belong to a stretch's music; a little early or late it still does. */
function isWithin({ pass }: ExpectedStretch, atSec: Seconds): boolean {
  const beginSec = Math.max(pass.fromSec, pass.originSec);
  return atSec >= beginSec - WIDEST_WINDOW_SEC && atSec < pass.toSec + WIDEST_WINDOW_SEC;
}

/** The part of a matching that lies in a stretch of time: hits that were expected, and extra ones, in it. */
export function matchingBetween(
  matching: HitMatching,
  fromSec: Seconds,
  toSec: Seconds,
): HitMatching {
  const lies = ({ atSec }: { readonly atSec: Seconds }) => atSec >= fromSec && atSec < toSec;
  return {
    pairs: matching.pairs.filter((pair) => lies(pair.expected)),
    missed: matching.missed.filter(lies),
    extra: matching.extra.filter(lies),
  };
}

/** The score of all that was played to some stretches. */
export function scoreOfAll(
  stretches: readonly ExpectedStretch[],
  notes: readonly PlayedNote[],
  sees: InputSees,
): TakeScore {
  return scoreTake(matchStretches(stretches, notes, sees), {
    changesSec: stretches.flatMap((each) => each.changesSec),
  });
}

/** Parts of a matching as one, in their order. */
export function joined(parts: readonly HitMatching[]): HitMatching {
  return {
    pairs: parts.flatMap((part) => part.pairs),
    missed: parts.flatMap((part) => part.missed),
    extra: parts.flatMap((part) => part.extra),
  };
}

/** Expected hits before a time only: what came later was cut off. */
export function cutAt(stretch: ExpectedStretch, sec: Seconds): ExpectedStretch {
  const { pass, expected, changesSec } = stretch;
  if (pass.toSec <= sec) return stretch;
  return {
    ...stretch,
    pass: { ...pass, toSec: Math.max(sec, pass.fromSec) },
    expected: expected.filter((hit: ExpectedHit) => hit.atSec < sec),
    changesSec: changesSec.filter((change) => change < sec),
  };
}
