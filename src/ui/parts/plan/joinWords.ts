import type { Join } from '../../../core/practice/joins.ts';
import type { Timeline } from '../../../core/song/timeline.ts';

type Difficulty = Pick<Join, 'motion' | 'otherRhythm' | 'fifths' | 'otherMeter'>;

/** Rhythms that share less than half of their attacks are another rhythm. */
const OTHER = 0.5;

function counted(count: number, one: string): string {
  return `${count} ${one}${count === 1 ? '' : 's'}`;
}

/** What makes a join hard: “the hands travel 9 semitones, the rhythm is another one”; that nothing changes where nothing does. */
export function joinWords({ motion, otherRhythm, fifths, otherMeter }: Difficulty): string {
  const reasons = [
    ...(motion > 0 ? [`the hands travel ${counted(motion, 'semitone')}`] : []),
    ...(otherRhythm >= OTHER ? ['the rhythm is another one'] : []),
    ...(otherRhythm > 0 && otherRhythm < OTHER ? ['the rhythm changes a little'] : []),
    ...(fifths > 0 ? [`the scale changes by ${counted(fifths, 'note')}`] : []),
    ...(otherMeter ? ['the meter changes'] : []),
  ];
  return reasons.length > 0 ? reasons.join(', ') : 'the hands stay, the rhythm goes on';
}

/** The two sections of a join: “Verse to Chorus”. */
export function joinName(
  { sections }: Pick<Timeline, 'sections'>,
  join: Pick<Join, 'from' | 'to'>,
): string {
  const nameOf = (id: Join['from']) => sections.find((span) => span.sectionId === id)?.name ?? '';
  return `${nameOf(join.from)} to ${nameOf(join.to)}`;
}
