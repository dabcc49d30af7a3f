import { memo, useContext } from 'react';
import type { LeftHit, RightHit } from '../../core/rhythm/pattern.ts';
import type { Ticks } from '../../core/time/ticks.ts';
import type { HandName } from '../../core/voicing/voicing.ts';
import { HitStroke } from './HitStroke.tsx';
import { HitMarksContext, type HitRemark } from './hitMarks.ts';
import { hitPiece } from './hitShapes.ts';
import { MARK_ROOM } from './rowLayout.ts';
import type { Pixels, System } from './systemLayout.ts';
import { voiceRows } from './toneHeights.ts';
import { leftStrokes, rightStrokes, type ToneStroke, type Zone } from './zoneStrokes.ts';

type Props<H> = {
  readonly system: System;
  readonly hits: readonly H[];
  /** Upper edge and height of the hand's row. */
  readonly top: Pixels;
  readonly height: Pixels;
  /** Where the chosen hit of this hand stands. */
  readonly chosenAt: Ticks | undefined;
};

/** White between a hand's strokes and the spine, or the band outside. */
const FOOT: Pixels = 5;

/** Where in a hand's row its strokes are drawn: under the room for accents. */
function zoneOf({ top, height }: Props<unknown>): Zone {
  return { top: top + MARK_ROOM, height: height - MARK_ROOM - FOOT };
}

function strokesInSystem<H extends LeftHit | RightHit>(
  { system, hits, chosenAt }: Props<H>,
  hand: HandName,
  strokes: (hit: H) => readonly ToneStroke[],
  remarks: ReadonlyMap<Ticks, HitRemark>,
) {
  return hits.map((hit) => {
    const piece = hitPiece(system, hit);
    return (
      piece && (
        <HitStroke
          key={hit.at}
          hit={hit}
          hand={hand}
          piece={piece}
          strokes={strokes(hit)}
          selected={hit.at === chosenAt}
          remark={remarks.get(hit.at)}
        />
      )
    );
  });
}

/** What the right hand plays in one system. */
export const RightInk = memo(function RightInk(props: Props<RightHit>) {
  const rows = voiceRows(props.hits);
  const zone = zoneOf(props);
  const remarks = useContext(HitMarksContext).right;
  return strokesInSystem(props, 'right', (hit) => rightStrokes(hit, zone, rows), remarks);
});

/** What the left hand plays in one system. */
export const LeftInk = memo(function LeftInk(props: Props<LeftHit>) {
  const zone = zoneOf(props);
  const remarks = useContext(HitMarksContext).left;
  return strokesInSystem(props, 'left', (hit) => leftStrokes(hit, zone), remarks);
});
