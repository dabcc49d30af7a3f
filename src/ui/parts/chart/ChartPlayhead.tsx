import { type RefObject, useRef } from 'react';
import type { FormEntryId, SectionId } from '../../../core/ids.ts';
import type { Ticks } from '../../../core/time/ticks.ts';
import { useFrame } from '../../kit/useFrame.ts';
import { useParts } from '../tool/parts.ts';
import { usePlayback } from '../tool/useProject.ts';
import { type ChartLine, cellAt, chartPlace } from './chartLayout.ts';

/** Marks the cell whose chord sounds; `slot` undefined marks none. */
function markSounding(grid: HTMLElement, slot: number | undefined): void {
  for (const cell of grid.querySelectorAll('[data-now]')) cell.removeAttribute('data-now');
  if (slot !== undefined) grid.querySelector(`[data-slot="${slot}"]`)?.setAttribute('data-now', '');
}

function ticksOf(lines: readonly ChartLine[]): Ticks {
  return lines
    .flatMap(({ bars }) => bars)
    .reduce((total, { lengthTicks }) => total + lengthTicks, 0);
}

/**
 * A thin red line that runs through the chart while its section is heard; the chord that sounds is
 * marked. Where a return has another ending than the chart, the line waits outside.
 */
export function ChartPlayhead({
  sectionId,
  endingOf,
  lines,
  grid,
}: {
  readonly sectionId: SectionId;
  /** The playing whose other ending the chart is; undefined for the section's own. */
  readonly endingOf: FormEntryId | undefined;
  readonly lines: readonly ChartLine[];
  /** The chart's grid, with one child for each line. */
  readonly grid: RefObject<HTMLElement | null>;
}) {
  const { playback } = useParts();
  const ink = useRef<HTMLDivElement>(null);
  const shown = useRef<number | undefined>(undefined);
  const isRunning = usePlayback().status === 'playing';
  useFrame(isRunning, () => {
    const sheet = grid.current;
    if (!sheet || !ink.current) return;
    const position = playback.position();
    const span = position?.request.kind === 'song' ? position.section : undefined;
    const ending = position?.chord?.inEnding && span?.formEntryId;
    const isHere = span?.sectionId === sectionId && ending === endingOf;
    const start = endingOf === undefined ? span?.startTick : span && span.endTick - ticksOf(lines);
    const tick = position && isHere && start !== undefined ? position.tick - start : -1;
    const place = chartPlace(lines, tick);
    const row = place && sheet.querySelectorAll<HTMLElement>('[role=row]')[place.line];
    ink.current.hidden = !row;
    if (place && row) {
      const x = place.across * sheet.clientWidth;
      ink.current.style.transform = `translate(${x}px, ${row.offsetTop}px)`;
      ink.current.style.height = `${row.offsetHeight}px`;
    }
    const slot = cellAt(
      lines.flatMap((line) => line.bars),
      tick,
    )?.sounds;
    if (slot === shown.current) return;
    shown.current = slot;
    markSounding(sheet, slot);
  });
  return <div className="chart-playhead" ref={ink} hidden />;
}
