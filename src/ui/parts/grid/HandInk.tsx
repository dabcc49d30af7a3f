import { memo, useContext } from 'react';
import type { Hit, LeftHit, RightHit } from '../../../core/rhythm/pattern.ts';
import type { Ticks } from '../../../core/time/ticks.ts';
import { sameProps } from '../../kit/sameProps.ts';
import { HitStroke } from './HitStroke.tsx';
import { HitMarksContext, type HitRemark } from './hitMarks.ts';
import { hitPiece } from './hitShapes.ts';
import { MARK_ROOM } from './rowLayout.ts';
import type { Pixels, System } from './systemLayout.ts';
import { leftStrokes, rightStrokes, type Zone } from './zoneStrokes.ts';

type Props<H> = {
  readonly system: System;
  readonly hits: readonly H[];
  /** Hits at the end of the round before, of so many ticks, that still sound here. */
  readonly tied: readonly H[];
  readonly roundTicks: Ticks;
  /** Upper edge and height of the hand's row. */
  readonly top: Pixels;
  readonly height: Pixels;
  /** Where the chosen hit of this hand stands. */
  readonly chosenAt: Ticks | undefined;
};

type HitProps<H> = {
  readonly system: System;
  readonly hit: H;
  /** How long before where it stands it was struck: a round, where it is tied over from the one before. */
  readonly agoTicks: Ticks;
  readonly top: Pixels;
  readonly height: Pixels;
  readonly selected: boolean;
  readonly remark: HitRemark | undefined;
};

/** White between a hand's strokes and the spine, or the band outside. */
const FOOT: Pixels = 5;

/** Where in a hand's row its strokes are drawn: under the room for accents. */
function zoneOf({ top, height }: Pick<Props<unknown>, 'top' | 'height'>): Zone {
  return { top: top + MARK_ROOM, height: height - MARK_ROOM - FOOT };
}

/** The part of a hit in its system. */
function pieceOf({ system, hit, agoTicks }: Pick<HitProps<Hit>, 'system' | 'hit' | 'agoTicks'>) {
  return hitPiece(system, { at: hit.at - agoTicks, length: hit.length });
}

const RightHitInk = memo(function RightHitInk({
  voices,
  ...props
}: HitProps<RightHit> & { readonly voices: number }) {
  const piece = pieceOf(props);
  const strokes = rightStrokes(props.hit, zoneOf(props), voices);
  return piece && <HitStroke {...props} hand="right" piece={piece} strokes={strokes} />;
});

const LeftHitInk = memo(function LeftHitInk(props: HitProps<LeftHit>) {
  const piece = pieceOf(props);
  const strokes = leftStrokes(props.hit, zoneOf(props));
  return piece && <HitStroke {...props} hand="left" piece={piece} strokes={strokes} />;
});

/** What is handed on to each hit of a row, in drawing order; nothing of it changes with the other hits. */
function hitsDrawn<H extends Hit>(
  { system, hits, tied, roundTicks, top, height, chosenAt }: Props<H>,
  remarks: ReadonlyMap<Ticks, HitRemark>,
): HitProps<H>[] {
  const drawn = (agoTicks: Ticks) => (hit: H) => {
    const selected = hit.at === chosenAt;
    return { system, hit, agoTicks, top, height, selected, remark: remarks.get(hit.at) };
  };
  return [...tied.map(drawn(roundTicks)), ...hits.map(drawn(0))];
}

/** What the right hand plays in one system, its zone divided into so many voices. */
export const RightInk = memo(function RightInk(
  props: Props<RightHit> & { readonly voices: number },
) {
  const remarks = useContext(HitMarksContext).right;
  return hitsDrawn(props, remarks).map((each) => (
    <RightHitInk key={each.hit.at - each.agoTicks} {...each} voices={props.voices} />
  ));
}, sameProps);

/** What the left hand plays in one system. */
export const LeftInk = memo(function LeftInk(props: Props<LeftHit>) {
  const remarks = useContext(HitMarksContext).left;
  return hitsDrawn(props, remarks).map((each) => (
    <LeftHitInk key={each.hit.at - each.agoTicks} {...each} />
  ));
}, sameProps);
