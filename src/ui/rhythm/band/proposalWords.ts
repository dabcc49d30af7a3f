import type { FirstHands } from '../../../core/rhythm/firstHands.ts';
import type { Hands } from '../../../core/rhythm/pattern.ts';
import type { Bpm } from '../../../core/time/tempoMap.ts';
import { PART_NAMES } from '../../parts/pattern/sourceNames.ts';

/** What hands ask at the band's tempo: the fastest at which they are comfortable (undefined: any), and the band's. */
export type Asked = { readonly comfortableBpm: Bpm | undefined; readonly bandBpm: Bpm };

/** What is asked of the hands, before they are taken. */
export function askedWords({ comfortableBpm, bandBpm }: Asked): string {
  const plays = `the band plays ${Math.round(bandBpm)}`;
  if (comfortableBpm === undefined) return `Comfortable at any tempo; ${plays}.`;
  const upTo = `Comfortable up to ${Math.floor(comfortableBpm)}; ${plays}.`;
  return comfortableBpm < bandBpm ? `${upTo} Begin slower, or take the playable version.` : upTo;
}

function strokes(count: number): string {
  return `${count} ${count === 1 ? 'hit' : 'hits'}`;
}

/** What the first proposal leaves out of the fuller version; undefined where that is the same. */
export function leftOutWords({ left, right }: Hands): string | undefined {
  const counts = [
    ...(left.length > 0 ? [`${strokes(left.length)} of the left hand`] : []),
    ...(right.length > 0 ? [`${strokes(right.length)} of the right hand`] : []),
  ];
  return counts.length > 0
    ? `Left out, so that two hands can play it at the band’s tempo: ${counts.join(' and ')}.`
    : undefined;
}

/** What else is to be known of a proposal: what plays more than was chosen, and a one that stays empty. */
export function proposalNotes({ raised, leavesTheOne }: FirstHands): string[] {
  return [
    ...raised.map(
      ({ part, hand }) =>
        `The ${PART_NAMES[part]} alone, as accents, would leave the ${hand} hand empty: its strong strokes are played.`,
    ),
    ...(leavesTheOne
      ? ['Off-beat: the band leaves the one empty, and so does the left hand.']
      : []),
  ];
}
