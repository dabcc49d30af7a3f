import { patternsThatFit } from '../../core/rhythm/fittedPattern.ts';
import type { Pattern } from '../../core/rhythm/pattern.ts';
import type { Section } from '../../core/song/song.ts';
import { timelineOf } from '../../core/song/timeline.ts';
import { formatMeter } from '../../core/time/meter.ts';

const LIST = new Intl.ListFormat('en-GB');

/**
 * Where in a section the hands rest because its pattern's meter is too different, why, and what to do;
 * undefined where they play throughout.
 */
export function restSentence(section: Section, pattern: Pattern): string | undefined {
  const timeline = timelineOf({ sections: [section], form: [{ id: 'it', sectionId: section.id }] });
  const patternAt = patternsThatFit(() => pattern, timeline);
  const resting = timeline.bars.flatMap((bar, i) => (patternAt(bar, i) ? [] : [String(i + 1)]));
  if (resting.length === 0) return undefined;
  const why = `“${pattern.name}” is in ${formatMeter(pattern.meter)}, so the hands rest`;
  if (resting.length === timeline.bars.length)
    return `${why} here. Choose a pattern in ${formatMeter(section.meter)}, or make one on Rhythm.`;
  return `${why} in ${resting.length === 1 ? 'bar' : 'bars'} ${LIST.format(resting)}.`;
}
