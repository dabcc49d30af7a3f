import { patternsThatFit } from '../../core/rhythm/fittedPattern.ts';
import type { Pattern } from '../../core/rhythm/pattern.ts';
import { patternForBar } from '../../core/rhythm/patternAt.ts';
import { patternCourse } from '../../core/song/patternCourse.ts';
import type { FormEntry, Section } from '../../core/song/song.ts';
import { timelineOf } from '../../core/song/timeline.ts';
import { formatMeter, type Meter, sameMeter } from '../../core/time/meter.ts';
import type { BarsOfPattern } from '../../state/edits/sectionPatterns.ts';

const LIST = new Intl.ListFormat('en-GB');

/**
 * A pattern that does not fit bars of its section, in a sentence. `meter` is that of the first of these
 * bars, `bars` (0-based) are those of them that are in it, `endBar` is where something else is played.
 */
export type Rest = BarsOfPattern & {
  readonly pattern: Pattern;
  readonly meter: Meter;
  readonly sentence: string;
};

/**
 * Where in a section, or in one playing of it, the hands rest because a pattern's meter is too different,
 * and why, for each pattern that is played there; none where they play throughout or are meant to rest.
 */
export function restsIn(
  section: Section,
  patterns: readonly Pattern[],
  entry: FormEntry = { id: 'it', sectionId: section.id },
): Rest[] {
  const timeline = timelineOf({ sections: [section], form: [entry] });
  const { bars } = timeline;
  const patternAt = patternsThatFit(patternForBar(patterns, timeline), timeline);
  const course = timeline.sections.flatMap((span) => patternCourse(span));
  return course.flatMap(({ bar, patternId }, i) => {
    const pattern = patterns.find(({ id }) => id === patternId);
    const endBar = course[i + 1]?.bar ?? bars.length;
    const resting = bars.flatMap((each, at) =>
      pattern && at >= bar && at < endBar && !patternAt(each, at) ? [at] : [],
    );
    const meter = bars[resting[0] ?? -1]?.meter;
    if (!pattern || !meter) return [];
    return [
      {
        pattern,
        patternId: pattern.id,
        meter,
        bars: resting.filter((at) => sameMeter(bars[at]!.meter, meter)),
        endBar,
        sentence: sentenceOf(pattern, resting, bars.length === resting.length),
      },
    ];
  });
}

function sentenceOf(pattern: Pattern, resting: readonly number[], isThroughout: boolean): string {
  const why = `“${pattern.name}” is in ${formatMeter(pattern.meter)}, so the hands rest`;
  if (isThroughout) return `${why} here.`;
  const bars = LIST.format(resting.map((bar) => String(bar + 1)));
  return `${why} in ${resting.length === 1 ? 'bar' : 'bars'} ${bars}.`;
}
