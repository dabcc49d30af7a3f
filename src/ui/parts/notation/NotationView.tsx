import './notation.css';
import { use, useMemo, useRef, useState } from 'react';
import { flushSync } from 'react-dom';
import { type FittedSheet, fittingSheet } from './fittingSheet.ts';
import type { Notation } from './notation.ts';
import { fontsReady } from './notationFonts.ts';
import { PrintedNotation } from './PrintedNotation.tsx';
import { SheetPicture } from './SheetPicture.tsx';
import { useRoom } from './useRoom.ts';

/** `panel` fills the room that its place on the page leaves, as large as it fits; `flow` takes the height it needs. */
export type NotationSize = 'panel' | 'flow';

/** Distance of two staff lines at most where the sheet may be as high as it needs. */
const FLOW_STAFF_SPACE_PX = 12;

/** Height of the line under the sheet, with its gap. */
const TOOLS_PX = 54;

/** Prints the sheet alone: it is put on pages for as long as the browser's print dialogue takes. */
function usePrinting(): { readonly isPrinting: boolean; readonly print: () => void } {
  const [isPrinting, setPrinting] = useState(false);
  return {
    isPrinting,
    print: () => {
      // The pages must stand in the document, drawn, before the dialogue looks at it.
      flushSync(() => setPrinting(true));
      addEventListener('afterprint', () => setPrinting(false), { once: true });
      window.print();
    },
  };
}

/**
 * A sheet as notation with a button that prints it, drawn anew when its width changes. Waits for
 * its fonts, so it stands inside a `Suspense`; this file is loaded only where notation is shown
 * (`PatternNotation`, `VoicingNotation`).
 */
export function NotationView({
  notation,
  size,
}: {
  readonly notation: Notation;
  readonly size: NotationSize;
}) {
  use(fontsReady);
  const place = useRef<HTMLDivElement>(null);
  const room = useRoom(place);
  const { isPrinting, print } = usePrinting();
  const sheet = useMemo((): FittedSheet | undefined => {
    if (room.width === 0 || notation.sheet.bars.length === 0) return undefined;
    return size === 'panel'
      ? fittingSheet(notation, { ...room, height: room.height - TOOLS_PX })
      : fittingSheet(notation, { width: room.width, height: Infinity }, FLOW_STAFF_SPACE_PX);
  }, [notation, room, size]);
  return (
    <div className={`notation-in-${size}`} ref={place}>
      <div className="notation">
        <div className="notation-frame">
          {sheet && <SheetPicture notation={notation} sheet={sheet} />}
        </div>
        <div className="notation-tools">
          {notation.kind === 'in-time' && (
            <p className="hint">Bold counts are struck, light ones only counted.</p>
          )}
          <button type="button" onClick={print}>
            Print
          </button>
        </div>
      </div>
      {isPrinting && <PrintedNotation notation={notation} />}
    </div>
  );
}
