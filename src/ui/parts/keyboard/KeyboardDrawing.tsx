import { memo } from 'react';
import type { KeyNumber } from '../../../core/harmony/pitch.ts';
import { suggestedFingering } from '../../../core/voicing/fingering.ts';
import { type HandName, keysOfHand, type Voicing } from '../../../core/voicing/voicing.ts';
import {
  drawingSizes,
  type KeyboardSpan,
  keyBox,
  keyBoxes,
  keyMiddle,
  spreadApart,
} from './keyboardGeometry.ts';
import { type Lead, leads } from './leads.ts';

const HANDS: readonly HandName[] = ['left', 'right'];

/** The keys of a span as two drawings, however many they are: white ones, and black ones over them. */
const Keys = memo(function Keys({
  lowest,
  highest,
  white,
  top,
}: KeyboardSpan & { readonly white: number; readonly top: number }) {
  const boxes = keyBoxes({ lowest, highest });
  const outline = (isBlack: boolean) =>
    boxes
      .filter((box) => box.isBlack === isBlack)
      .map(({ x, width, length }) => {
        const across = width * white;
        return `M${x * white} ${top}h${across}v${length * white}h${-across}z`;
      })
      .join('');
  return (
    <>
      <path className="keyboard-white" d={outline(false)} />
      <path className="keyboard-black" d={outline(true)} />
    </>
  );
});

/** A held key: a round mark for the right hand, a square one for the left. */
function HeldMark({
  x,
  y,
  size,
  hand,
}: {
  readonly x: number;
  readonly y: number;
  readonly size: number;
  readonly hand: HandName;
}) {
  const className = `keyboard-mark keyboard-${hand}`;
  if (hand === 'right') return <circle className={className} cx={x} cy={y} r={size / 2} />;
  const side = size * 0.92;
  return (
    <rect className={className} x={x - side / 2} y={y - side / 2} width={side} height={side} />
  );
}

/** A note's way to the next chord: a dot where it stays, an arrow where it moves. */
function LeadMark({
  lead,
  hand,
  xOf,
  top,
  bottom,
}: {
  readonly lead: Lead;
  readonly hand: HandName;
  readonly xOf: (key: KeyNumber) => number;
  readonly top: number;
  readonly bottom: number;
}) {
  const [from, to] = [xOf(lead.from), xOf(lead.to)];
  if (lead.from === lead.to)
    return (
      <circle
        className={`keyboard-stays keyboard-${hand}`}
        cx={from}
        cy={(top + bottom) / 2}
        r={3}
      />
    );
  const angle = Math.atan2(bottom - top, to - from);
  const barb = (turn: number) =>
    `${to - 7 * Math.cos(angle + turn)} ${bottom - 7 * Math.sin(angle + turn)}`;
  return (
    <path
      className={`keyboard-moves keyboard-${hand}`}
      d={`M${from} ${top}L${to} ${bottom}M${barb(0.5)}L${to} ${bottom}L${barb(-0.5)}`}
    />
  );
}

/** Least distance between two figures over the keys, in CSS pixels. */
const FIGURE_PX = 10;

/** The usual fingers over the keys that a hand holds, where there is a usual fingering. */
function Fingers({
  hand,
  held,
  xOf,
  baseline,
}: {
  readonly hand: HandName;
  readonly held: readonly KeyNumber[];
  readonly xOf: (key: KeyNumber) => number;
  readonly baseline: number;
}) {
  const places = spreadApart(held.map(xOf), FIGURE_PX);
  return suggestedFingering(held, hand)?.map((finger, i) => (
    <text key={held[i]} className={`keyboard-finger keyboard-${hand}`} x={places[i]} y={baseline}>
      {finger}
    </text>
  ));
}

/**
 * A stretch of keyboard with what both hands hold, and below it where each note goes next. Fingers
 * stand over the keys where a usual fingering is known.
 */
export function KeyboardDrawing({
  voicing,
  next,
  span,
  widthPx,
  showsFingers,
  label,
}: {
  readonly voicing: Voicing;
  /** The chord after; undefined draws no way on. */
  readonly next: Voicing | undefined;
  readonly span: KeyboardSpan;
  readonly widthPx: number;
  readonly showsFingers: boolean;
  readonly label: string;
}) {
  const { white, fingers, keys, ways, height } = drawingSizes(span, widthPx);
  const xOf = (key: KeyNumber) => keyMiddle(key, span) * white;
  return (
    <svg
      className="keyboard-drawing"
      role="img"
      aria-label={label}
      width={widthPx}
      height={height}
      viewBox={`0 0 ${widthPx} ${height}`}
    >
      <Keys {...span} white={white} top={keys.top} />
      {voicing.map(({ keyNumber, hand }) => (
        <HeldMark
          key={`${hand} ${keyNumber}`}
          x={xOf(keyNumber)}
          y={keys.top + (keyBox(keyNumber, span).length - 0.62) * white}
          size={0.86 * white}
          hand={hand}
        />
      ))}
      {showsFingers &&
        HANDS.map((hand) => (
          <Fingers
            key={hand}
            hand={hand}
            held={keysOfHand(voicing, hand)}
            xOf={xOf}
            baseline={fingers.baseline}
          />
        ))}
      {next &&
        HANDS.flatMap((hand) =>
          leads(keysOfHand(voicing, hand), keysOfHand(next, hand)).map((lead) => (
            <LeadMark
              key={`${hand} ${lead.from} ${lead.to}`}
              lead={lead}
              hand={hand}
              xOf={xOf}
              top={ways.top}
              bottom={ways.bottom}
            />
          )),
        )}
    </svg>
  );
}
