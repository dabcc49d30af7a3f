import { memo } from 'react';
import type { LeftHit, Pattern, RightHit } from '../../core/rhythm/pattern.ts';
import type { Source } from '../../core/rhythm/sources.ts';
import type { Ticks } from '../../core/time/ticks.ts';
import type { HandName } from '../../core/voicing/voicing.ts';
import type { Chosen } from './gridPlace.ts';
import { HitStroke } from './HitStroke.tsx';
import { hitPiece } from './hitShapes.ts';
import { LaneInk } from './LaneInk.tsx';
import { type Close, Rules } from './Rules.tsx';
import { MARK_ROOM, type PlacedRow, type RowLayout, rowKey } from './rowLayout.ts';
import type { System } from './systemLayout.ts';
import { voiceRows } from './toneHeights.ts';
import { leftStrokes, rightStrokes, type ToneStroke, type Zone } from './zoneStrokes.ts';

/** White between a hand's strokes and the spine, or the band outside. */
const ZONE_FOOT = 5;

/** Where in a hand's row its strokes are drawn: under the room for accents. */
function zoneOf({ top, height }: Pick<PlacedRow, 'top' | 'height'>): Zone {
  return { top: top + MARK_ROOM, height: height - MARK_ROOM - ZONE_FOOT };
}

type HandProps<H> = {
  readonly system: System;
  readonly hits: readonly H[];
  readonly zone: Zone;
  readonly chosenAt: Ticks | undefined;
};

function strokesInSystem<H extends LeftHit | RightHit>(
  { system, hits, chosenAt }: HandProps<H>,
  hand: HandName,
  strokes: (hit: H) => readonly ToneStroke[],
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
        />
      )
    );
  });
}

function RightInk(props: HandProps<RightHit>) {
  const rows = voiceRows(props.hits);
  return strokesInSystem(props, 'right', (hit) => rightStrokes(hit, props.zone, rows));
}

function LeftInk(props: HandProps<LeftHit>) {
  return strokesInSystem(props, 'left', (hit) => leftStrokes(hit, props.zone));
}

type Props = {
  readonly system: System;
  readonly layout: RowLayout;
  readonly pattern: Pick<Pattern, 'left' | 'right' | 'bars'>;
  readonly close: Close;
  readonly chosen: Chosen | undefined;
};

/** Everything that is drawn in one system but the counts: rules, both hands in ink, the band faint outside. */
export const SystemInk = memo(function SystemInk(props: Props) {
  const { system, layout, pattern, close, chosen } = props;
  const hitOf = (hand: HandName) =>
    chosen?.kind === 'hit' && chosen.hand === hand ? chosen.hit.at : undefined;
  const strokeOf = ({ id }: Source) =>
    chosen?.kind === 'stroke' && chosen.source.id === id ? chosen.stroke.at : undefined;
  return (
    <svg className="pattern-ink-sheet" height={layout.height} aria-hidden="true" focusable="false">
      <Rules system={system} layout={layout} bars={pattern.bars} close={close} />
      {layout.rows.map((placed) => {
        const { row } = placed;
        if (row.kind === 'counts') return null;
        if (row.kind === 'source')
          return (
            <LaneInk
              key={rowKey(row)}
              system={system}
              source={row.source}
              top={placed.top}
              height={placed.height}
              chosenAt={strokeOf(row.source)}
            />
          );
        const shared = { system, zone: zoneOf(placed), chosenAt: hitOf(row.hand) };
        return row.hand === 'right' ? (
          <RightInk key="right" {...shared} hits={pattern.right} />
        ) : (
          <LeftInk key="left" {...shared} hits={pattern.left} />
        );
      })}
    </svg>
  );
});
