import { useLayoutEffect, useRef } from 'react';
import { COUNT_CENTRE } from './barSpacing.ts';
import { engravedNotes } from './engraver.ts';
import type { Units } from './glyphs.ts';
import { LETTERING, type Lettering } from './lettering.ts';
import type { Notation } from './notation.ts';
import { StaffInk } from './StaffInk.tsx';
import { NUMBER_HEIGHT, numberOf, wordsHeight } from './systemHeights.ts';
import type { PlacedBar, SheetSystem } from './systems.ts';

type TextProps = {
  readonly lettering: Lettering;
  readonly x: Units;
  readonly y: Units;
  readonly children: string;
};

function Lettered({ lettering, x, y, children }: TextProps) {
  const { size, weight } = LETTERING[lettering];
  return (
    <text
      className={`notation-text notation-${lettering}`}
      x={x}
      y={y}
      fontSize={size}
      fontWeight={weight}
    >
      {children}
    </text>
  );
}

/** Words and chord symbols over a bar, counts under it. */
function BarText({ bar, system }: { readonly bar: PlacedBar; readonly system: SheetSystem }) {
  const { heights } = system;
  const words = bar.words !== undefined && (
    <Lettered key="words" lettering="words" x={bar.columns[0]!.x} y={wordsHeight(bar, heights)}>
      {bar.words}
    </Lettered>
  );
  const columns = bar.columns.map(({ tick, x, chord, count }) => (
    <g key={tick}>
      {chord && (
        <Lettered lettering="chord" x={x} y={heights.chords}>
          {chord.text}
        </Lettered>
      )}
      {count && (
        <Lettered
          lettering={count.silent ? 'silentCount' : 'count'}
          x={x + COUNT_CENTRE}
          y={heights.counts}
        >
          {count.text}
        </Lettered>
      )}
    </g>
  ));
  return [words, ...columns];
}

/** The notes themselves, drawn by the engraver into a group of the sheet. */
function Notes({ system }: { readonly system: SheetSystem }) {
  const group = useRef<SVGGElement>(null);
  useLayoutEffect(() => group.current?.replaceChildren(engravedNotes(system)), [system]);
  return <g ref={group} className="notation-notes" />;
}

/** One system of the sheet, its top at `y`. */
export function SystemDrawing({
  notation,
  system,
  y,
}: {
  readonly notation: Notation;
  readonly system: SheetSystem;
  readonly y: Units;
}) {
  const number = numberOf(system.bars, notation.kind);
  return (
    <g className="notation-system" transform={`translate(0 ${y})`}>
      <StaffInk
        system={system}
        musicKey={notation.key}
        lastBar={notation.sheet.bars.length - 1}
        end={notation.kind === 'in-time' ? 'thick' : 'plain'}
      />
      {number !== undefined && (
        <Lettered lettering="barNumber" x={system.x} y={system.heights.right - NUMBER_HEIGHT}>
          {String(number)}
        </Lettered>
      )}
      {system.bars.map((bar) => (
        <BarText key={bar.index} bar={bar} system={system} />
      ))}
      <Notes system={system} />
    </g>
  );
}
