import { createPortal } from 'react-dom';
import { capitalHeight, LETTERING, textWidth } from './lettering.ts';
import type { Notation } from './notation.ts';
import { PRINTABLE_MM, printedSheet } from './printedSheet.ts';
import { SystemDrawing } from './SystemDrawing.tsx';

/** The notation on A4 pages, beside the app in the document; only paper shows it. */
export function PrintedNotation({ notation }: { readonly notation: Notation }) {
  const { page, pages, wholeHeight } = printedSheet(notation);
  const { width } = page;
  return createPortal(
    <div className="notation-print" aria-hidden="true">
      {pages.map(({ systems }, i) => (
        <svg
          key={i}
          className="notation-page"
          viewBox={`0 0 ${width} ${wholeHeight}`}
          style={{ width: `${PRINTABLE_MM.width}mm`, height: `${PRINTABLE_MM.height}mm` }}
        >
          {i === 0 && (
            <text
              className="notation-text notation-title"
              x={width / 2}
              y={capitalHeight('title')}
              fontSize={
                LETTERING.title.size * Math.min(1, width / textWidth(notation.title, 'title'))
              }
              fontWeight={LETTERING.title.weight}
            >
              {notation.title}
            </text>
          )}
          {pages.length > 1 && (
            <text
              className="notation-text notation-page-number"
              x={width / 2}
              y={wholeHeight - 2}
              fontSize={LETTERING.words.size}
            >
              {i + 1}
            </text>
          )}
          {systems.map(({ system, y }) => (
            <SystemDrawing key={system.bars[0]?.index} notation={notation} system={system} y={y} />
          ))}
        </svg>
      ))}
    </div>,
    document.body,
  );
}
