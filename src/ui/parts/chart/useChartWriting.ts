import type { Chord } from '../../../core/harmony/chord.ts';
import type { FormEntryId } from '../../../core/ids.ts';
import type { Chart } from '../../../core/song/chart.ts';
import { type Pace, withChordRow } from '../../../core/song/chordRow.ts';
import type { Section } from '../../../core/song/song.ts';
import type { Ticks } from '../../../core/time/ticks.ts';
import { setSectionChart } from '../../../state/edits/chart.ts';
import { setEntryEnding } from '../../../state/edits/ending.ts';
import type { BarsMoved } from '../../../state/edits/movedBars.ts';
import type { Store } from '../../../state/store.ts';
import { useParts } from '../tool/parts.ts';
import { withBarsWritten } from './barsWritten.ts';
import { readCellText } from './cellText.ts';
import type { ChartCell } from './chartLayout.ts';
import { entrySentence } from './chartMessages.ts';
import {
  withBarAfter,
  withChangeMoved,
  withChordAt,
  withoutBar,
  withoutChordAt,
} from './chordChanges.ts';

/** What can be written into a section's chart; every act is one undoable edit. */
export type ChartWriting = {
  /** Writes what was typed into a cell; a sentence where it can't be read, and the chart stays. */
  readonly write: (cell: ChartCell, text: string) => string | undefined;
  /** Moves the change at a tick; false where it can't go there. */
  readonly move: (from: Ticks, to: Ticks) => boolean;
  readonly addBarAfter: (bar: number) => void;
  readonly takeOutBar: (bar: number) => void;
  /** Writes one chord at a tick, until the next change; or a row of chords over the chart from there on, at a pace. */
  readonly writeRow: (tick: Ticks, chords: readonly Chord[], pace: Pace) => void;
  /** Replaces the whole chart; `moved` are the bars that an added or a lost one moves. */
  readonly replace: (chart: Chart, label: string, moved?: BarsMoved) => void;
};

/** Writing into the chart of a section. */
export function useChartWriting(section: Section): ChartWriting {
  const { store } = useParts();
  return chartWriting(store, section, (chart, label, moved) =>
    store.edit(setSectionChart(section.id, chart.slots, chart.barMeters, moved), { label }),
  );
}

/** Writing into the other ending of one playing; `part` is its section with the ending's own chart. */
export function useEndingWriting(
  part: Section,
  entry: FormEntryId,
  replacesBars: number,
): ChartWriting {
  const { store } = useParts();
  return chartWriting(store, part, (chart, label) =>
    store.edit(setEntryEnding(entry, { ...chart, replacesBars }), { label }),
  );
}

function chartWriting(
  store: Store,
  section: Section,
  replace: ChartWriting['replace'],
): ChartWriting {
  const { slots, barMeters } = section;
  return {
    replace,
    write: (cell, text) => {
      const { song } = store.snapshot();
      const entry = readCellText(text, section.meter, song.key);
      if (!entry.ok) return entrySentence(entry.error);
      const { value } = entry;
      if (value.kind === 'bars')
        replace(withBarsWritten(section, cell.bar, value.chart), 'write bars');
      else if (value.kind === 'chord')
        replace({ slots: withChordAt(slots, cell.startTick, value.chord), barMeters }, 'set chord');
      else if (cell.slot !== undefined)
        replace({ slots: withoutChordAt(slots, cell.startTick), barMeters }, 'remove chord');
      return undefined;
    },
    move: (from, to) => {
      const moved = withChangeMoved(slots, from, to);
      const isMoved = moved.some((slot, i) => slot.durationTicks !== slots[i]?.durationTicks);
      if (isMoved) replace({ slots: moved, barMeters }, 'move chord');
      return isMoved;
    },
    writeRow: (tick, chords, pace) => {
      const [chord, ...others] = chords;
      if (!chord) return;
      if (others.length > 0) replace(withChordRow(section, tick, chords, pace), 'write chords');
      else replace({ slots: withChordAt(slots, tick, chord), barMeters }, 'set chord');
    },
    addBarAfter: (bar) => replace(withBarAfter(section, bar), 'add bar', { from: bar + 1, by: 1 }),
    takeOutBar: (bar) =>
      replace(withoutBar(section, bar), 'take out bar', { from: bar + 1, by: -1 }),
  };
}
