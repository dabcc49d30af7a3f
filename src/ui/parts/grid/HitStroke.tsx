import type { Hit } from '../../../core/rhythm/pattern.ts';
import type { HandName } from '../../../core/voicing/voicing.ts';
import { toneName } from '../pattern/toneNames.ts';
import type { HitRemark } from './hitMarks.ts';
import { type HitPiece, type StrokeShape, strokeShape } from './hitShapes.ts';
import type { Pixels } from './systemLayout.ts';
import type { ToneStroke } from './zoneStrokes.ts';

type Props = {
  readonly hit: Hit;
  readonly hand: HandName;
  readonly piece: HitPiece;
  readonly strokes: readonly ToneStroke[];
  readonly selected: boolean;
  readonly remark?: HitRemark | undefined;
};

function Word({ text, shape }: { readonly text: string; readonly shape: StrokeShape }) {
  const { word } = shape;
  if (word.turned)
    return (
      <text
        className="pattern-word pattern-word-turned"
        transform={`translate(${word.x} ${word.y}) rotate(-90)`}
        style={{ fontSize: word.size }}
        dy="0.34em"
      >
        {text}
      </text>
    );
  const className = word.outside ? 'pattern-word pattern-word-outside' : 'pattern-word';
  return (
    <text className={className} x={word.x} y={word.y} style={{ fontSize: word.size }} dy="0.34em">
      {text}
    </text>
  );
}

/** The round brackets of a ghost. */
function Brackets({
  shape,
  top,
  bottom,
}: {
  readonly shape: StrokeShape;
  readonly top: Pixels;
  readonly bottom: Pixels;
}) {
  const half = (bottom - top) / 2;
  return (
    <path
      className="pattern-line pattern-bracket"
      d={`M${shape.from - 2} ${top}q-7 ${half} 0 ${2 * half}M${shape.to + 2} ${top}q7 ${half} 0 ${2 * half}`}
    />
  );
}

function Tone({
  hit,
  piece,
  stroke,
}: {
  readonly hit: Hit;
  readonly piece: HitPiece;
  readonly stroke: ToneStroke;
}) {
  const text = toneName(stroke.tone).mark;
  const shape = strokeShape(hit, piece, stroke, text);
  const starts = piece.fromShare === 0;
  if (!starts && !hit.held) return null;
  return (
    <>
      <path className="pattern-ink" d={shape.outline} />
      {hit.touch === 'ghost' && starts && (
        <Brackets shape={shape} top={stroke.top} bottom={stroke.bottom} />
      )}
      {shape.dot !== undefined && (
        <circle
          className="pattern-dot"
          cx={shape.dot}
          cy={(stroke.top + stroke.bottom) / 2}
          r={3.2}
        />
      )}
      {starts && <Word text={text} shape={shape} />}
    </>
  );
}

/** The accent over a stroke, as it stands over a note. */
function Accent({ x, y }: { readonly x: Pixels; readonly y: Pixels }) {
  return <path className="pattern-line pattern-accent" d={`M${x} ${y - 13}l15 5 -15 5`} />;
}

/** A tie with an arrow that leads over the end of a hit into what follows. */
function LeadsOver({ x, y }: { readonly x: Pixels; readonly y: Pixels }) {
  return <path className="pattern-line" d={`M${x - 9} ${y}q18 -20 36 -2m-10 -2l10 2 2 -10`} />;
}

/** A wavy line under the attack of a hit, as a teacher draws it under what is too hard. */
function Wave({ x, y }: { readonly x: Pixels; readonly y: Pixels }) {
  return <path className="pattern-wave" d={`M${x} ${y}q3.5 -6 7 0${'t7 0'.repeat(4)}`} />;
}

const REMARK_CLASSES: Readonly<Record<HitRemark, string>> = {
  'left out': ' pattern-left-out',
  'too much': '',
};

/** One hit in one system, drawn in ink: its tones, accent, arrow, a frame where it is selected, a teacher's remark. */
export function HitStroke({ hit, hand, piece, strokes, selected, remark }: Props) {
  const top = Math.min(...strokes.map((stroke) => stroke.top));
  const bottom = Math.max(...strokes.map((stroke) => stroke.bottom));
  const starts = piece.fromShare === 0;
  const low = strokes.length > 1 ? Math.max(...strokes.map((s) => (s.top + s.bottom) / 2)) : 0;
  return (
    <g
      className={`pattern-hit pattern-${hand} pattern-${hit.touch}${remark ? REMARK_CLASSES[remark] : ''}`}
    >
      {selected && (
        <rect
          className="pattern-selected"
          x={piece.from - 4}
          y={top - 4}
          width={piece.to - piece.from + 8}
          height={bottom - top + 8}
          rx={5}
        />
      )}
      {strokes.length > 1 && starts && (
        <path className="pattern-stem" d={`M${piece.from + 1.5} ${top + 4}V${low}`} />
      )}
      {strokes.map((stroke) => (
        <Tone key={stroke.tone} hit={hit} piece={piece} stroke={stroke} />
      ))}
      {hit.touch === 'accent' && starts && <Accent x={piece.from + 3} y={top} />}
      {remark === 'too much' && starts && <Wave x={piece.from} y={bottom + 4} />}
      {hit.anticipates && piece.toShare === 1 && <LeadsOver x={piece.to + 2} y={top + 6} />}
    </g>
  );
}
