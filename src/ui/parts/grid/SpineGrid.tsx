import { type SyntheticEvent, useMemo, useRef, useState } from 'react';
import {
  type Division,
  type Pattern,
  patternSteps,
  patternTicks,
} from '../../../core/rhythm/pattern.ts';
import type { Scope } from '../../../state/edits/hits.ts';
import { setDivision } from '../../../state/edits/pattern.ts';
import { useParts } from '../tool/parts.ts';
import { DivisionMenu } from './DivisionMenu.tsx';
import { cellOf, placeOf } from './gridCells.ts';
import { beatIndexOf, type Chosen, type Place } from './gridPlace.ts';
import { bringIntoSight } from './inSight.ts';
import { chosenIn, handsIn, NOTHING_TIED, placeIn, tiedInto } from './inSystem.ts';
import { Playhead } from './Playhead.tsx';
import { SystemView } from './SystemView.tsx';
import { voiceRows } from './toneHeights.ts';
import { useGridKeys } from './useGridKeys.ts';
import { useGridLayout } from './useGridLayout.ts';
import { useGridPointer } from './useGridPointer.ts';

type Props = {
  readonly pattern: Pattern;
  readonly scope: Scope;
  /** What of the pattern is shown: see `shownPattern`. */
  readonly shown: Pattern;
  /** Where the cursor is, and what stands there. */
  readonly place: Place | undefined;
  readonly chosen: Chosen | undefined;
  readonly onPlace: (place: Place) => void;
  /** Puts the focus on the buttons of the chosen hit. */
  readonly onOpenHit: () => void;
};

const FIRST_PLACE: Place = { row: 'right', column: 0 };

/** After a tap the frame of what is chosen is enough; a key, or leaving the place, brings back that of the focus. */
function seenAgain({ target }: SyntheticEvent): void {
  if (target instanceof HTMLElement) delete target.dataset['by'];
}

/**
 * The pattern on its spine of counts, to be seen and changed by mouse, touch and keys. It is one tab
 * stop; the cursor is where the focus is or was last.
 */
export function SpineGrid(props: Props) {
  const { pattern, scope, shown, place, chosen, onPlace, onOpenHit } = props;
  const { store } = useParts();
  const grid = useRef<HTMLDivElement>(null);
  const divided = useRef<Element>(null);
  const [dividing, setDividing] = useState<number>();
  const { frame, systems, rows, syllables, least } = useGridLayout(shown);
  const { meter, bars, divisions } = shown;
  const steps = useMemo(() => patternSteps({ meter, bars, divisions }), [meter, bars, divisions]);
  const voices = useMemo(() => voiceRows(shown.right), [shown.right]);
  const roundTicks = patternTicks(shown);

  const goTo = (next: Place, by: 'key' | 'pointer') => {
    const cell = cellOf(grid.current, next);
    if (!cell) return;
    if (by === 'pointer') cell.dataset['by'] = by;
    else delete cell.dataset['by'];
    if (cell === document.activeElement) return;
    cell.focus({ preventScroll: true });
    bringIntoSight(cell);
  };
  const openDivision = (at: Place) => {
    divided.current = cellOf(grid.current, at) ?? null;
    setDividing(at.column);
  };
  const patternId = pattern.id;
  const pointer = useGridPointer({
    patternId,
    scope,
    shown,
    steps,
    systems,
    layout: rows,
    grid,
    goTo: (next) => goTo(next, 'pointer'),
  });
  const keys = useGridKeys({
    patternId,
    scope,
    shown,
    goTo: (next) => goTo(next, 'key'),
    onDivide: openDivision,
    onOpenHit,
  });

  const beat = dividing === undefined ? undefined : steps[dividing]?.beat;
  const divide = (division: Division) => {
    if (!beat) return;
    const edit = setDivision(patternId, beatIndexOf(shown, beat), division, scope);
    store.edit(edit, { label: 'division of a beat' });
    setDividing(undefined);
  };
  return (
    <div ref={frame} className="pattern-frame" style={{ minHeight: least }}>
      <div
        ref={grid}
        role="grid"
        aria-label={`${pattern.name}: counts and hands`}
        aria-rowcount={rows.rows.length}
        aria-colcount={steps.length}
        tabIndex={-1}
        className="pattern-grid"
        onFocus={(event) => {
          const at = placeOf(event.target);
          if (at) onPlace(at);
        }}
        {...keys}
        {...pointer}
        onKeyDownCapture={seenAgain}
        onBlur={seenAgain}
      >
        {systems.map((system) => (
          <SystemView
            key={system.firstBar}
            system={system}
            rows={rows}
            syllables={syllables}
            bars={bars}
            voices={voices}
            {...handsIn(system, shown)}
            {...(scope === 'main' ? tiedInto(system, shown, roundTicks) : NOTHING_TIED)}
            roundTicks={roundTicks}
            tabPlace={placeIn(system, place ?? FIRST_PLACE)}
            close={scope === 'ending' ? 'final' : 'repeat'}
            chosen={chosenIn(system, chosen, roundTicks)}
          />
        ))}
        <div className="pattern-pulled" />
        {scope === 'main' && (
          <Playhead pattern={pattern} systems={systems} height={rows.height} grid={grid} />
        )}
      </div>
      {beat && (
        <DivisionMenu
          beat={beat.beat + 1}
          division={beat.division}
          anchor={divided}
          onChoose={divide}
          onClose={() => setDividing(undefined)}
        />
      )}
    </div>
  );
}
