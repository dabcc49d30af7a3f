import { type KeyboardEvent, useRef } from 'react';
import { flushSync } from 'react-dom';
import type { BarRange } from '../../../app/score.ts';
import type { SectionId } from '../../../core/ids.ts';
import type { Wash } from '../../../core/song/song.ts';
import type { Timeline } from '../../../core/song/timeline.ts';
import { useWidth } from '../../kit/useWidth.ts';
import { markedInEntry, playingName, playingNumber } from '../song/marking.ts';
import { barCount } from '../song/songWords.ts';
import { RibbonPlayhead } from './RibbonPlayhead.tsx';
import { blockNamePx, gapAt, RIBBON_PX, type RibbonBlock, ribbonLayout } from './ribbonLayout.ts';
import { useRibbonDrag } from './useRibbonDrag.ts';

/** A bracket over what is marked of one block. */
function Bracket({
  block,
  bars,
  marked,
}: {
  readonly block: RibbonBlock;
  readonly bars: number;
  readonly marked: BarRange;
}) {
  const left = block.x + (block.width * marked.firstBar) / bars;
  const width = (block.width * (marked.endBar - marked.firstBar)) / bars;
  return (
    <div className="songmap-bracket" style={{ left, top: block.row * RIBBON_PX.row, width }} />
  );
}

/**
 * The form in playing order as a ribbon of blocks, as wide as they have bars. Blocks are chosen by a
 * tap or the arrow keys and moved by dragging or Control and the arrows.
 */
export function Ribbon({
  timeline,
  washOf,
  chosen,
  range,
  onChoose,
  onMove,
  onRemove,
}: {
  readonly timeline: Timeline;
  readonly washOf: (sectionId: SectionId) => Wash;
  readonly chosen: number | undefined;
  readonly range: BarRange | undefined;
  readonly onChoose: (place: number) => void;
  readonly onMove: (from: number, to: number) => void;
  readonly onRemove: (place: number) => void;
}) {
  const strip = useRef<HTMLDivElement>(null);
  const width = useWidth(strip);
  const { sections } = timeline;
  const layout = ribbonLayout(
    sections.map((span) => span.bars),
    width,
  );
  const { drag, wasDrag, handlers } = useRibbonDrag(strip, layout, onMove);
  const last = sections.length - 1;

  const focusBlock = (place: number) =>
    strip.current?.querySelector<HTMLElement>(`[data-place="${place}"] button`)?.focus();

  const press = (event: KeyboardEvent) => {
    if (chosen === undefined) return;
    const beside = { ArrowLeft: chosen - 1, ArrowRight: chosen + 1, Home: 0, End: last }[event.key];
    if (beside !== undefined) {
      const place = Math.min(last, Math.max(0, beside));
      // The blocks have to stand in their new order before one of them can take the focus.
      flushSync(() => (event.ctrlKey ? onMove(chosen, place) : onChoose(place)));
      focusBlock(place);
    } else if (event.key === 'Delete') onRemove(chosen);
    else return;
    event.preventDefault();
  };

  return (
    <div
      role="toolbar"
      tabIndex={-1}
      className="songmap-ribbon"
      aria-label="Form, in playing order"
      ref={strip}
      style={{ height: layout.rows * RIBBON_PX.row }}
      onKeyDown={press}
      {...handlers}
    >
      <ol>
        {sections.map((span, place) => {
          const block = layout.blocks[place];
          const marked = markedInEntry(timeline, place, range);
          if (!block) return null;
          return (
            <li
              key={span.formEntryId ?? place}
              data-place={place}
              className={`songmap-block wash-${washOf(span.sectionId)}`}
              data-dragged={drag?.from === place || undefined}
              style={{ left: block.x, top: block.row * RIBBON_PX.row, width: block.width }}
            >
              <button
                type="button"
                tabIndex={place === (chosen ?? 0) ? 0 : -1}
                aria-current={place === chosen ? 'true' : undefined}
                onClick={() => !wasDrag() && onChoose(place)}
              >
                <span
                  className="songmap-block-name"
                  style={{ fontSize: blockNamePx(playingName(timeline, place), block.width) }}
                >
                  <span>{span.name}</span> {playingNumber(timeline, place)}
                </span>
                <span className="songmap-block-bars">{barCount(span.bars)}</span>
              </button>
              {marked && <span className="visually-hidden">marked for playing</span>}
            </li>
          );
        })}
      </ol>
      {sections.map((span, place) => {
        const block = layout.blocks[place];
        const marked = markedInEntry(timeline, place, range);
        return (
          block &&
          marked && (
            <Bracket
              key={span.formEntryId ?? place}
              block={block}
              bars={span.bars}
              marked={marked}
            />
          )
        );
      })}
      {drag && <DropGap {...gapAt(layout, drag.before)} />}
      <RibbonPlayhead layout={layout} />
    </div>
  );
}

/** Where a dragged block would go. */
function DropGap({ row, x }: RibbonBlock) {
  return <div className="songmap-gap" style={{ left: x, top: row * RIBBON_PX.row }} />;
}
