import type { Semitones } from '../harmony/pitch.ts';
import type { SectionId } from '../ids.ts';
import { groupBy } from '../rhythm/groupBy.ts';
import { type LaidBar, type LaidBars, layBars } from '../rhythm/laidBars.ts';
import type { Hit } from '../rhythm/pattern.ts';
import { onlyWhereMeterFits, type PatternAt } from '../rhythm/patternAt.ts';
import { eventsInBar } from '../rhythm/placedEvents.ts';
import type { Timeline } from '../song/timeline.ts';
import { barTicks, sameMeter } from '../time/meter.ts';
import { motion } from '../voicing/motion.ts';
import { heldKeys, type Voicing } from '../voicing/voicing.ts';
import { signatureDistance } from './signatureDistance.ts';

/**
 * A place where one section leads into another: between the timeline's bars `bar` − 1 and `bar`
 * (0-based), so that is what is played as a drill. `times` is how often it comes in just this way,
 * `bar` where it does so first. What the player must do there at once: move the hands (semitones of
 * both together), change rhythm (`otherRhythm`, the share of attacks that the two bars do not have
 * in common, 0 to 1), change scale (`fifths`, 0 to 6) and meter. `hardness` is their weighed sum.
 */
export type Join = {
  readonly bar: number;
  readonly from: SectionId;
  readonly to: SectionId;
  readonly times: number;
  readonly motion: Semitones;
  readonly otherRhythm: number;
  readonly fifths: number;
  readonly otherMeter: boolean;
  readonly hardness: number;
};

/** What counts for one unit of hardness: an octave of motion, a rhythm that shares nothing, four fifths, two new meters. Our own choice. */
const WEIGHTS = { semitone: 1 / 12, otherRhythm: 1, fifth: 1 / 4, otherMeter: 1 / 2 } as const;

/**
 * The joins of a song, hardest first, then in playing order. `voicings` has one entry for each of
 * the timeline's chords; where the hands rest at a join, the chords they hold before and after count.
 * A section that follows itself has a join, too.
 */
export function hardJoins(
  timeline: Timeline,
  voicings: readonly Voicing[],
  patternAt: PatternAt,
): Join[] {
  const laid = layBars(timeline, onlyWhereMeterFits(patternAt));
  if (!laid.ok) throw new Error(`bar ${laid.error.bar} got a pattern of another meter`);
  const places = timeline.bars.flatMap((bar, i) =>
    i > 0 && bar.section !== timeline.bars[i - 1]!.section ? [i] : [],
  );
  const joins = places.map((bar) => joinAt(timeline, voicings, laid.value, bar));
  const kinds = groupBy(joins, (join) => JSON.stringify({ ...join, bar: undefined }));
  return [...kinds.values()]
    .map((same) => ({ ...same[0]!, times: same.length }))
    .toSorted((a, b) => b.hardness - a.hardness || a.bar - b.bar);
}

function joinAt(
  timeline: Timeline,
  voicings: readonly Voicing[],
  laid: LaidBars,
  bar: number,
): Join {
  const [before, after] = [timeline.bars[bar - 1]!, timeline.bars[bar]!];
  const difficulty = {
    motion: motionBetween(timeline, voicings, before.section, after.section),
    otherRhythm: rhythmDifference(laid[bar - 1], laid[bar]),
    fifths: signatureDistance(
      timeline.chords.filter((chord) => chord.section === before.section),
      timeline.chords.filter((chord) => chord.section === after.section),
    ),
    otherMeter: !sameMeter(before.meter, after.meter),
  };
  return {
    bar,
    from: timeline.sections[before.section]!.sectionId,
    to: timeline.sections[after.section]!.sectionId,
    times: 1,
    ...difficulty,
    hardness:
      difficulty.motion * WEIGHTS.semitone +
      difficulty.otherRhythm * WEIGHTS.otherRhythm +
      difficulty.fifths * WEIGHTS.fifth +
      (difficulty.otherMeter ? WEIGHTS.otherMeter : 0),
  };
}

/** How far both hands move from what they hold last in one section to what they hold first in the next. */
function motionBetween(
  timeline: Timeline,
  voicings: readonly Voicing[],
  before: number,
  after: number,
): Semitones {
  const heldIn = (section: number) =>
    voicings.filter((voicing, i) => timeline.chords[i]?.section === section && voicing.length > 0);
  const [last, first] = [heldIn(before).at(-1), heldIn(after)[0]];
  if (!last || !first) return 0;
  const [from, to] = [heldKeys(last), heldKeys(first)];
  return motion(from.left, to.left) + motion(from.right, to.right);
}

/** A pattern that goes on is no new rhythm, whichever of its bars meet. */
function rhythmDifference(before: LaidBar | undefined, after: LaidBar | undefined): number {
  if (before?.pattern.id === after?.pattern.id) return 0;
  const [one, other] = [attacksIn(before), attacksIn(after)];
  const all = new Set([...one, ...other]);
  const shared = [...one].filter((attack) => other.has(attack));
  return all.size === 0 ? 0 : 1 - shared.length / all.size;
}

/** The hands' attacks in the bar of a pattern, by hand and place; a fill at a section's end is left aside. */
function attacksIn(laid: LaidBar | undefined): Set<string> {
  if (!laid) return new Set();
  const { pattern, patternBar } = laid;
  return new Set(
    (['left', 'right'] as const).flatMap((hand) =>
      eventsInBar<Hit>(pattern[hand], patternBar, barTicks(pattern.meter)).map(
        ({ inBar }) => `${hand} ${inBar}`,
      ),
    ),
  );
}
