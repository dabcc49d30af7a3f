import type { FittedSheet } from './fittingSheet.ts';
import type { Notation } from './notation.ts';
import { SystemDrawing } from './SystemDrawing.tsx';
import { spokenNotation } from './spokenNotation.ts';

/** The sheet as one picture, told in words to those who can't see it. */
export function SheetPicture({
  notation,
  sheet,
}: {
  readonly notation: Notation;
  readonly sheet: FittedSheet;
}) {
  const { width, height, pxPerUnit, systems } = sheet;
  return (
    <svg
      className="notation-sheet"
      role="img"
      aria-label={spokenNotation(notation)}
      viewBox={`0 0 ${width} ${height}`}
      width={width * pxPerUnit}
      height={height * pxPerUnit}
    >
      {systems.map(({ system, y }) => (
        <SystemDrawing key={system.bars[0]?.index} notation={notation} system={system} y={y} />
      ))}
    </svg>
  );
}
