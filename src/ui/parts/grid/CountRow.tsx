import { memo } from 'react';
import type { PatternBeat } from '../../../core/rhythm/pattern.ts';
import { DIVISION_WORDS } from '../pattern/divisionWords.ts';
import { CountFigures } from './CountFigures.tsx';
import type { PlacedRow } from './rowLayout.ts';
import type { PlacedStep, System } from './systemLayout.ts';

type Props = {
  readonly placed: PlacedRow;
  readonly system: System;
  readonly bars: number;
  readonly syllables: readonly string[];
  readonly tabColumn: number | undefined;
  readonly rowIndex: number;
};

function Beat({
  steps,
  beat,
  syllables,
  tabColumn,
  bars,
}: Pick<Props, 'syllables' | 'tabColumn' | 'bars'> & {
  readonly steps: readonly PlacedStep[];
  readonly beat: PatternBeat;
}) {
  const first = steps[0]!;
  const last = steps.at(-1)!;
  const isHere = tabColumn !== undefined && steps.some(({ column }) => column === tabColumn);
  const where = bars > 1 ? `Bar ${beat.bar + 1}, beat` : 'Beat';
  return (
    <div
      role="gridcell"
      tabIndex={isHere ? 0 : -1}
      aria-colindex={first.column + 1}
      aria-colspan={steps.length}
      aria-haspopup="menu"
      aria-label={`${where} ${beat.beat + 1}, ${DIVISION_WORDS[beat.division]}`}
      data-row="counts"
      data-column={first.column}
      className="pattern-count-beat"
      style={{ left: first.x, width: last.x + last.width - first.x }}
    >
      <CountFigures steps={steps} syllables={syllables} left={first.x} />
    </div>
  );
}

/** The spine: the spoken count of one system, a place for every felt beat, where its division is chosen. */
export const CountRow = memo(function CountRow(props: Props) {
  const { placed, system, rowIndex } = props;
  const heads = system.steps.filter(({ index }) => index === 0);
  return (
    <div
      role="row"
      aria-rowindex={rowIndex + 1}
      className="pattern-row pattern-row-counts"
      style={{ top: placed.top, height: placed.height }}
    >
      <div role="rowheader" className="visually-hidden">
        Count
      </div>
      {heads.map((head) => (
        <Beat
          key={head.column}
          {...props}
          beat={head.beat}
          steps={system.steps.filter(({ beat }) => beat.start === head.beat.start)}
        />
      ))}
    </div>
  );
});
