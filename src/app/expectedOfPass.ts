import {
  type ExpectedHit,
  expectedHits,
  type HitHand,
  type InputSees,
} from '../core/practice/expectedHits.ts';
import type { SoundingHands } from '../core/practice/soundingHands.ts';
import type { PracticeTarget } from '../core/practice/takeRecord.ts';
import type { PatternAt } from '../core/rhythm/patternAt.ts';
import { perform } from '../core/rhythm/perform.ts';
import { barAt } from '../core/song/timeline.ts';
import type { Bpm } from '../core/time/tempoMap.ts';
import type { Seconds } from '../core/time/ticks.ts';
import { type Score, scoreSeconds, scoreTick } from './score.ts';
import type { SoundingPass } from './soundingPass.ts';

/** Which hands the player plays, and what of that the input can tell. */
export type PlayerPart = { readonly hand: HitHand; readonly sees: InputSees };

/**
 * What the player is to play in a stretch of music, with which hand, and when its chords change; on the
 * audio clock, ascending. `target` is what is practised by it, where that has a name.
 */
export type ExpectedStretch = {
  readonly pass: SoundingPass;
  readonly hand: HitHand;
  readonly target?: PracticeTarget;
  readonly expected: readonly ExpectedHit[];
  readonly changesSec: readonly Seconds[];
};

/** The hands that are left to the player: those the tool does not sound, or both where it sounds both or none. */
export function playersHand(sounding: SoundingHands): HitHand {
  if (sounding === 'left') return 'right';
  return sounding === 'right' ? 'left' : 'both';
}

/** The tempo that a pass starts in. */
export function bpmOf({ tempoMap }: Score): Bpm {
  const [first] = tempoMap;
  if (!first) throw new Error('a tempo map needs a mark at tick 0');
  return first.tempo.bpm;
}

/** See `ExpectedStretch`, but for its target. `patternAt` tells which pattern's ticks a bar of the score's timeline counts in. */
export function expectedInPass(
  pass: SoundingPass,
  player: PlayerPart,
  patternAt: PatternAt,
): ExpectedStretch {
  const { score, originSec, fromSec, toSec } = pass;
  const sounds = (sec: Seconds) => sec >= fromSec && sec < toSec;
  const expected = hitsOf(score, player)
    .map((hit) => ({ ...hit, ...patternOf(score, hit.atSec, patternAt) }))
    .map((hit) => ({ ...hit, atSec: originSec + hit.atSec }))
    .filter((hit) => sounds(hit.atSec));
  const changesSec = changesOf(score, originSec).filter(sounds);
  return { pass, hand: player.hand, expected, changesSec };
}

/** The hits of the player's hands in seconds from the score's start. */
function hitsOf(score: Score, { hand, sees }: PlayerPart): ExpectedHit[] {
  const own = score.notes.filter(({ part }) => hand === 'both' || part === hand);
  const zeroSec = scoreSeconds(score, 0);
  const timed = perform(own, score.tempoMap).map((note) => ({
    ...note,
    startSec: note.startSec + zeroSec,
  }));
  return expectedHits(timed, sees, 60 / bpmOf(score));
}

function patternOf(
  score: Score,
  atSec: Seconds,
  patternAt: PatternAt,
): Pick<ExpectedHit, 'patternId'> {
  const bar = barAt(score.timeline, Math.round(scoreTick(score, atSec)));
  const pattern = score.pattern ?? (bar && patternAt(bar, score.timeline.bars.indexOf(bar)));
  return pattern ? { patternId: pattern.id } : {};
}

/** When another chord begins, the first one left aside. */
function changesOf(score: Score, originSec: Seconds): Seconds[] {
  return score.timeline.chords
    .filter(({ startTick }) => startTick > score.fromTick && startTick < score.toTick)
    .map(({ startTick }) => originSec + scoreSeconds(score, startTick));
}
