import { notate } from '../../src/core/rhythm/notate.ts';
import type { Pattern } from '../../src/core/rhythm/pattern.ts';
import { withoutSwing } from '../../src/core/rhythm/patternMoves.ts';
import { realise } from '../../src/core/rhythm/realise.ts';
import type { Sheet } from '../../src/core/rhythm/sheet.ts';
import type { Timeline } from '../../src/core/song/timeline.ts';
import { formatMeter } from '../../src/core/time/meter.ts';
import type { Notation } from '../../src/ui/parts/notation/notation.ts';
import { keyNamed, valueOf } from './music.ts';
import { chartTimeline, pattern, plainVoicings } from './patterns.ts';

/** What a pattern plays over a timeline, with plain voicings, as a sheet. */
export function sheetOver(played: Pattern, timeline: Timeline): Sheet {
  const notes = realise(timeline, plainVoicings(timeline), () => withoutSwing(played));
  return notate(valueOf(notes), timeline);
}

/** A pattern over a chart in its meter as notation in C, with what `parts` says instead. */
export function notationOf(
  played: Pattern,
  chart: string,
  parts: Partial<Notation> = {},
): Notation {
  return {
    title: played.name,
    sheet: sheetOver(played, chartTimeline(chart, formatMeter(played.meter))),
    key: keyNamed('C'),
    kind: 'in-time',
    words: [],
    ...parts,
  };
}

/** So many bars in 4/4 over C in which the right hand plays the same, with what `parts` says instead. */
export function barsOf(count: number, right = 'CCCCCCCC', parts: Partial<Notation> = {}): Notation {
  const p = pattern('4/4', { right: right.repeat(count) }, { bars: count });
  return notationOf(p, `|${' C |'.repeat(count)}`, parts);
}
