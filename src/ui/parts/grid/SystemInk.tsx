import type { LeftHit, RightHit } from '../../../core/rhythm/pattern.ts';
import type { Source } from '../../../core/rhythm/sources.ts';
import type { Ticks } from '../../../core/time/ticks.ts';
import type { HandName } from '../../../core/voicing/voicing.ts';
import type { Chosen } from './gridPlace.ts';
import { LeftInk, RightInk } from './HandInk.tsx';
import type { Tied } from './inSystem.ts';
import { LaneInk } from './LaneInk.tsx';
import { type Close, Rules } from './Rules.tsx';
import { type PlacedRow, type RowLayout, rowKey } from './rowLayout.ts';
import type { System } from './systemLayout.ts';

type Props = Tied & {
  readonly system: System;
  readonly layout: RowLayout;
  /** Bars of the whole pattern, and the voices that its right hand is drawn in (`voiceRows`). */
  readonly bars: number;
  readonly voices: number;
  readonly left: readonly LeftHit[];
  readonly right: readonly RightHit[];
  /** How long a round is, out of which something may be tied over into the system. */
  readonly roundTicks: Ticks;
  readonly close: Close;
  readonly chosen: Chosen | undefined;
};

/** Everything that is drawn in one system but the counts: rules, both hands in ink, the band faint outside. */
export function SystemInk(props: Props) {
  const { system, layout, bars, voices, left, right, close, chosen } = props;
  const { tiedLeft, tiedRight, roundTicks } = props;
  const hitOf = (hand: HandName) =>
    chosen?.kind === 'hit' && chosen.hand === hand ? chosen.hit.at : undefined;
  const strokeOf = ({ id }: Source) =>
    chosen?.kind === 'stroke' && chosen.source.id === id ? chosen.stroke.at : undefined;
  const rowInk = ({ row, top, height }: PlacedRow) => {
    const key = rowKey(row);
    const shared = { system, top, height };
    const inRound = { ...shared, roundTicks };
    if (row.kind === 'source')
      return <LaneInk key={key} {...shared} source={row.source} chosenAt={strokeOf(row.source)} />;
    if (row.kind === 'counts') return null;
    return row.hand === 'right' ? (
      <RightInk
        key={key}
        {...inRound}
        hits={right}
        tied={tiedRight}
        chosenAt={hitOf('right')}
        voices={voices}
      />
    ) : (
      <LeftInk key={key} {...inRound} hits={left} tied={tiedLeft} chosenAt={hitOf('left')} />
    );
  };
  return (
    <svg className="pattern-ink-sheet" height={layout.height} aria-hidden="true" focusable="false">
      <Rules system={system} layout={layout} bars={bars} close={close} />
      {layout.rows.map(rowInk)}
    </svg>
  );
}
