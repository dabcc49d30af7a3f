import type { PracticeTarget } from '../core/practice/takeRecord.ts';
import type { Project } from '../core/project.ts';
import type { Timeline } from '../core/song/timeline.ts';
import { selectTimeline } from '../state/selectors.ts';
import { type BarRange, type DrillRequest, drillPattern, type PlayRequest } from './score.ts';
import { stageNow } from './stageScore.ts';

/**
 * What is practised where something is asked to play: a drill's pattern, a section, a join, the song or
 * bars of it. Undefined for what is only listened to, and where there is nothing of the kind.
 */
export function targetOf(request: PlayRequest, project: Project): PracticeTarget | undefined {
  if (request.kind === 'drill') return targetOfDrill(request, project);
  if (request.kind !== 'song') return undefined;
  return request.range ? targetOfBars(selectTimeline(project), request.range) : { kind: 'song' };
}

/** A drill on chords by themselves is one of its pattern. */
function targetOfDrill({ stage }: DrillRequest, project: Project): PracticeTarget | undefined {
  const passage = stageNow(project, stage)?.passage;
  if (passage?.kind === 'section' || passage?.kind === 'join') return passage;
  const pattern = drillPattern(project);
  return pattern && { kind: 'pattern', patternId: pattern.id };
}

/** What bars of a song are: exactly one playing of a section, all of the song, a join, or just bars. */
export function targetOfBars(timeline: Timeline, range: BarRange): PracticeTarget | undefined {
  const bars = timeline.bars.slice(range.firstBar, range.endBar);
  const [first, last] = [bars[0], bars.at(-1)];
  if (!first || !last) return undefined;
  const sectionOf = (place: number) => timeline.sections[place]!;
  const isStart = first.barInSection === 0;
  const isEnd = last.barInSection + 1 === sectionOf(last.section).bars;
  if (first.section === last.section && isStart && isEnd)
    return { kind: 'section', sectionId: sectionOf(first.section).sectionId };
  if (bars.length === timeline.bars.length) return { kind: 'song' };
  const meet = bars.length === 2 && first.section + 1 === last.section;
  if (meet && last.barInSection === 0)
    return {
      kind: 'join',
      from: sectionOf(first.section).sectionId,
      to: sectionOf(last.section).sectionId,
    };
  return { kind: 'bars', firstBar: range.firstBar, endBar: range.firstBar + bars.length };
}
