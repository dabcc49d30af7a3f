import type { Key } from '../../../core/harmony/key.ts';
import type { Meter } from '../../../core/time/meter.ts';
import { bracePath } from './curves.ts';
import {
  ACCIDENTALS,
  BASS_CLEF,
  meterNumber,
  SPACE,
  STAFF_REACH,
  TREBLE_CLEF,
  type Units,
} from './glyphs.ts';
import { STAVES } from './notation.ts';
import { BASS_SIGNATURE_DROP, signatureSigns } from './staffPlaces.ts';
import { type PlacedBar, type SheetSystem, SIGN_WIDTH } from './systems.ts';

/** Half a bar line, so that the last one ends where the staves do. */
const HALF_LINE: Units = 0.9;

const LINES = [-2, -1, 0, 1, 2] as const;

/** The five lines of both staves, the line that joins them and the brace. */
function StaffLines({ x, width, heights }: SheetSystem) {
  const [top, bottom] = [heights.right - STAFF_REACH, heights.left + STAFF_REACH];
  return (
    <>
      {STAVES.flatMap((hand) =>
        LINES.map((line) => {
          const y = heights[hand] + line * SPACE;
          return (
            <path key={hand + line} className="notation-staff-line" d={`M${x} ${y}H${width}`} />
          );
        }),
      )}
      <path className="notation-bar-line" d={`M${x} ${top}V${bottom}`} />
      <path className="notation-shape" d={bracePath(x - 2, top, bottom)} />
    </>
  );
}

function Sign({ text, x, y }: { readonly text: string; readonly x: Units; readonly y: Units }) {
  return (
    <text className="notation-sign" x={x} y={y}>
      {text}
    </text>
  );
}

/** Clefs and key signature at the beginning of a system; each clef stands on the line of its note. */
function Signature({ system, musicKey }: { readonly system: SheetSystem; readonly musicKey: Key }) {
  const { right, left } = system.heights;
  const drop = BASS_SIGNATURE_DROP * (SPACE / 2);
  return (
    <>
      <Sign text={TREBLE_CLEF.text} x={system.clefX} y={right + SPACE} />
      <Sign text={BASS_CLEF.text} x={system.clefX} y={left - SPACE} />
      {signatureSigns(musicKey).map(({ letter, alteration, place }, i) => {
        const { text } = ACCIDENTALS[alteration]!;
        const x = system.keyX + i * SIGN_WIDTH;
        const y = -place * (SPACE / 2);
        return [
          <Sign key={`r${letter}`} text={text} x={x} y={right + y} />,
          <Sign key={`l${letter}`} text={text} x={x} y={left + y + drop} />,
        ];
      })}
    </>
  );
}

function TimeSignature({ meter, x, system }: { meter: Meter; x: Units; system: SheetSystem }) {
  const [upper, lower] = [meterNumber(meter.beats), meterNumber(meter.unit)];
  const width = Math.max(upper.width, lower.width);
  return STAVES.map((hand) => (
    <g key={hand}>
      <Sign text={upper.text} x={x + (width - upper.width) / 2} y={system.heights[hand] - SPACE} />
      <Sign text={lower.text} x={x + (width - lower.width) / 2} y={system.heights[hand] + SPACE} />
    </g>
  ));
}

type LineProps = { readonly x: Units; readonly system: SheetSystem };

function BarLine({ x, system: { heights } }: LineProps) {
  const [top, bottom] = [heights.right - STAFF_REACH, heights.left + STAFF_REACH];
  return <path className="notation-bar-line" d={`M${x} ${top}V${bottom}`} />;
}

/** The thick line of a repeat sign or of the end, with its thin one on the side of the music. */
function ThickLine({ x, system, music }: LineProps & { readonly music: 'left' | 'right' }) {
  const { heights } = system;
  const [top, bottom] = [heights.right - STAFF_REACH, heights.left + STAFF_REACH];
  const out = music === 'left' ? -1 : 1;
  return (
    <>
      <path className="notation-thick-line" d={`M${x - 2.5 * out} ${top}V${bottom}`} />
      <BarLine x={x + 4.5 * out} system={system} />
    </>
  );
}

function RepeatDots({ x, system }: LineProps) {
  return STAVES.flatMap((hand) =>
    [-0.5, 0.5].map((space) => (
      <circle
        key={`${hand}${space}`}
        className="notation-shape"
        cx={x}
        cy={system.heights[hand] + space * SPACE}
        r={2.2}
      />
    )),
  );
}

/** Time signature, bar line and repeat signs of one bar. `end` is how the music ends with it, if it does. */
function BarSigns({
  bar,
  system,
  isLast,
  end,
}: {
  readonly bar: PlacedBar;
  readonly system: SheetSystem;
  readonly isLast: boolean;
  readonly end: 'thick' | 'plain';
}) {
  const { opens, closes, meterX, notesX, endX } = bar;
  return (
    <>
      {meterX !== undefined && (
        <TimeSignature meter={bar.written.bar.meter} x={meterX} system={system} />
      )}
      {opens && (
        <>
          <ThickLine x={notesX - 10} system={system} music="right" />
          <RepeatDots x={notesX + 0.5} system={system} />
        </>
      )}
      {closes && <RepeatDots x={endX - 14} system={system} />}
      {closes || (isLast && end === 'thick') ? (
        <ThickLine x={endX - 5} system={system} music="left" />
      ) : (
        <BarLine x={endX - HALF_LINE} system={system} />
      )}
    </>
  );
}

/** Staves, clefs, signatures and bar lines of a system. */
export function StaffInk({
  system,
  musicKey,
  lastBar,
  end,
}: {
  readonly system: SheetSystem;
  readonly musicKey: Key;
  readonly lastBar: number;
  readonly end: 'thick' | 'plain';
}) {
  return (
    <>
      <StaffLines {...system} />
      <Signature system={system} musicKey={musicKey} />
      {system.bars.map((bar) => (
        <BarSigns
          key={bar.index}
          bar={bar}
          system={system}
          isLast={bar.index === lastBar}
          end={end}
        />
      ))}
    </>
  );
}
