import type { Note } from '../../src/core/rhythm/note.ts';
import type { Pattern } from '../../src/core/rhythm/pattern.ts';
import { type RealiseOptions, realise } from '../../src/core/rhythm/realise.ts';
import type { Timeline } from '../../src/core/song/timeline.ts';
import { valueOf } from './music.ts';
import { chartTimeline, noteLines, plainVoicings } from './patterns.ts';

/** What both hands play of one pattern (or of none) over a timeline, with plain voicings. */
export function played(
  timeline: Timeline,
  p: Pattern | undefined,
  options: RealiseOptions = {},
): Note[] {
  return valueOf(realise(timeline, plainVoicings(timeline), () => p, options));
}

/** The left hand's notes over a chart in 4/4, as lines. */
export function left(chart: string, p: Pattern, options: RealiseOptions = {}): string[] {
  return noteLines(played(chartTimeline(chart), p, options), 'left');
}

/** The right hand's notes over a chart in 4/4, as lines. */
export function right(chart: string, p: Pattern, options: RealiseOptions = {}): string[] {
  return noteLines(played(chartTimeline(chart), p, options), 'right');
}

/** A pattern whose hits are all changed alike. */
export function withHits(
  p: Pattern,
  change: Partial<Omit<Pattern['left'][number], 'play'>>,
): Pattern {
  return {
    ...p,
    left: p.left.map((hit) => ({ ...hit, ...change })),
    right: p.right.map((hit) => ({ ...hit, ...change })),
  };
}
