import { barTicks, tempoBeatTicks } from '../time/meter.ts';
import type { Ticks } from '../time/ticks.ts';
import { type Draft, isStandingOut, merged, strokesOf } from './handDrafts.ts';
import { type HandFrame, placesIn } from './handPlaces.ts';
import { PLAYED_PRESENCE, type Source, type SourcePart } from './sources.ts';

/** Parts that keep time whatever happens: that they sound on a one says nothing, unless they stand out there. */
const TIME_KEEPERS: readonly SourcePart[] = ['hi-hat', 'cymbal', 'percussion', 'sung'];

/** Whether the band marks a tick: with more than what keeps time, or that with an accent. */
function isMarked(sources: readonly Source[], tick: Ticks): boolean {
  return sources.some(({ part, strokes }) => {
    const stroke = strokes.find((s) => s.at === tick && s.presence >= PLAYED_PRESENCE);
    if (!stroke) return false;
    return !TIME_KEEPERS.includes(part) || isStandingOut(stroke, strokes);
  });
}

/**
 * Whether the band lives from leaving the one empty, as in off-beat styles: on no downbeat of the frame it
 * plays more than keeps time.
 */
export function leavesTheOne(sources: readonly Source[], frame: HandFrame): boolean {
  return !placesIn(frame, 'downbeats').some((tick) => isMarked(sources, tick));
}

/** Whether a bass line goes over a downbeat with a note that came shortly before, and means it. */
function isPushedOver(sources: readonly Source[], tick: Ticks, frame: HandFrame): boolean {
  const end = frame.bars * barTicks(frame.meter);
  const beat = tempoBeatTicks(frame.meter);
  const bass = strokesOf(sources, 'bass');
  return bass.some(({ at, length }) => {
    const before = (tick - at + end) % end;
    return before > 0 && before <= beat && length > before;
  });
}

const THE_ONE: Omit<Draft, 'at'> = { play: ['root'], touch: 'plain', length: 'held', ownLength: 0 };

/**
 * A left hand with a root on the one (common practice of accompanying): on every downbeat that the band marks, and on
 * the first in any case where it marks one at all. A downbeat that the bass line is tied over stays as it is, and
 * so does a band that leaves the one empty (`leavesTheOne`).
 */
export function withTheOne(
  drafts: readonly Draft[],
  sources: readonly Source[],
  frame: HandFrame,
): readonly Draft[] {
  if (drafts.length === 0 || leavesTheOne(sources, frame)) return drafts;
  const missing = placesIn(frame, 'downbeats').filter(
    (tick) =>
      (tick === 0 || isMarked(sources, tick)) &&
      !drafts.some(({ at }) => at === tick) &&
      !isPushedOver(sources, tick, frame),
  );
  return merged(
    drafts,
    missing.map((at) => ({ ...THE_ONE, at })),
  );
}
