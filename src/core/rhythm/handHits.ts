import { unreachable } from '../result.ts';
import { barTicks } from '../time/meter.ts';
import { TICKS_PER_QUARTER, type Ticks } from '../time/ticks.ts';
import type { Draft } from './handDrafts.ts';
import { type HandFrame, placesIn } from './handPlaces.ts';
import type { Hit } from './pattern.ts';

/** A stroke that lasts this share of the way to the next hit is held, and this much is legato. */
const HELD_SHARE = 0.5;
const LEGATO_SHARE = 0.75;

/** A short hit stands for an eighth. */
export const SHORT_TICKS: Ticks = TICKS_PER_QUARTER / 2;

/** In whole sixteenths, at least one, or in sextuplets where the hit stands off the sixteenths. */
function onGrid(length: Ticks, at: Ticks): Ticks {
  const unit = at % (TICKS_PER_QUARTER / 4) === 0 ? TICKS_PER_QUARTER / 4 : TICKS_PER_QUARTER / 6;
  return Math.max(1, Math.round(length / unit)) * unit;
}

/** How long a hit stands and whether it sounds so long, with so many ticks to the hand's next hit. */
function lengthOf({ at, length, ownLength }: Draft, gap: Ticks): Pick<Hit, 'length' | 'held'> {
  switch (length) {
    case 'held':
      return { length: gap, held: true };
    case 'short':
      return { length: Math.min(gap, SHORT_TICKS), held: false };
    case 'own':
      if (ownLength >= LEGATO_SHARE * gap) return { length: gap, held: true };
      if (ownLength >= HELD_SHARE * gap || ownLength >= TICKS_PER_QUARTER)
        return { length: Math.min(gap, onGrid(ownLength, at)), held: true };
      return { length: Math.min(gap, onGrid(2 * ownLength, at)), held: false };
    default:
      return unreachable(length);
  }
}

/**
 * Whether a hit leads into what comes: it starts between beats, and the next beat, over which it is held,
 * opens a bar or a stress group, where chords change. One that goes on to the group after that does
 * not, for it could as well lead there.
 */
function anticipates(
  at: Ticks,
  length: Ticks,
  beats: readonly Ticks[],
  groups: readonly Ticks[],
): boolean {
  const next = beats.find((beat) => beat >= at);
  const group = groups.findIndex((start) => start >= at);
  const after = groups[group + 1] ?? Number.POSITIVE_INFINITY;
  return (
    next !== at &&
    next !== undefined &&
    next === groups[group] &&
    at + length > next &&
    at + length < after
  );
}

/**
 * Hits with their lengths settled: none goes on into the hand's next, the last none into the first of the
 * next time round, none for more than a bar. `drafts` ascend.
 */
export function settled(drafts: readonly Draft[], frame: HandFrame): Hit[] {
  const bar = barTicks(frame.meter);
  const end = frame.bars * bar;
  const twice = { ...frame, bars: 2 * frame.bars };
  const beats = placesIn(twice, 'beats');
  const groups = placesIn(twice, 'groups');
  const roundAgain = end + (drafts[0]?.at ?? 0);
  return drafts.map((draft, i) => {
    const gap = Math.min(bar, (drafts[i + 1]?.at ?? roundAgain) - draft.at);
    const { length, held } = lengthOf(draft, gap);
    const leads = held && anticipates(draft.at, length, beats, groups);
    const hit = { at: draft.at, length, play: draft.play, touch: draft.touch, held };
    return leads ? { ...hit, anticipates: true } : hit;
  });
}
