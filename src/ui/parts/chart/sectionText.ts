import type { Key } from '../../../core/harmony/key.ts';
import { formatChartBars } from '../../../core/song/chart.ts';
import type { Section } from '../../../core/song/song.ts';
import type { ChordNamingChoice } from '../tool/viewState.ts';
import { chordNamingIn } from './chordNames.ts';

/** Bars to a line of a chart's text, as on the chart. */
const BARS_PER_LINE = 4;

/** A chart's text with four bars to a line; reading it gives the same chart. */
export function inLinesOfFour(chartText: string): string {
  const bars = chartText.split('|').slice(1, -1);
  const lines: string[] = [];
  for (let i = 0; i < bars.length; i += BARS_PER_LINE)
    lines.push(`|${bars.slice(i, i + BARS_PER_LINE).join('|')}|`);
  return lines.join('\n');
}

/** The chart of a section as it stands in the text view, its chords named as chosen. */
export function sectionText(section: Section, choice: ChordNamingChoice, key: Key): string {
  return inLinesOfFour(formatChartBars(section, section.meter, chordNamingIn(choice, key)));
}

/** Where the unrepaired text of a section's chart is kept on the device. */
export function draftPlace(projectId: string, sectionId: string): string {
  return `${projectId}/${sectionId}`;
}
