import '../parts/grid/patternGrid.css';
import '../parts/grid/ink.css';
import '../kit/sheets.css';
import { useMemo, useRef, useState } from 'react';
import { flushSync } from 'react-dom';
import type { Level } from '../../core/rhythm/levels.ts';
import type { Pattern } from '../../core/rhythm/pattern.ts';
import type { Scope } from '../../state/edits/hits.ts';
import { chosenAt, type Place, placeWithin, shownPattern } from '../parts/grid/gridPlace.ts';
import { HitMarksContext } from '../parts/grid/hitMarks.ts';
import { SpineGrid } from '../parts/grid/SpineGrid.tsx';
import { PatternNotation } from '../parts/notation/PatternNotation.tsx';
import { useShownPattern } from '../parts/pattern/usePatterns.ts';
import { useView } from '../parts/tool/useProject.ts';
import { BandPage } from './band/BandPage.tsx';
import { DerivePage } from './band/DerivePage.tsx';
import { useBandFile } from './band/useBandFile.ts';
import { Desk } from './desk/Desk.tsx';
import { type DeskTab, FIRST_DESK_TAB } from './desk/DeskTabs.tsx';
import { hitRemarksOf, useLevels } from './desk/useLevels.ts';
import { HearLine } from './HearLine.tsx';
import { PatternLine } from './PatternLine.tsx';

type Asides = {
  readonly tab: DeskTab;
  readonly onTab: (tab: DeskTab) => void;
  readonly onBringBand: () => void;
  readonly onDeriveAgain: () => void;
};

/** The first button of the panel under the grid, what is pressed before the others. */
function firstButton(panel: HTMLElement | null): HTMLElement | null {
  return panel?.querySelector('button[aria-pressed="true"], button') ?? null;
}

/** One pattern, open to be changed. */
function Workshop(props: { readonly pattern: Pattern } & Asides) {
  const { pattern, tab, onTab, onBringBand, onDeriveAgain } = props;
  const [wantedScope, setScope] = useState<Scope>('main');
  const [placed, setPlace] = useState<Place>();
  const isNotated = useView(({ notated }) => notated.includes('rhythm'));
  const [level, setLevel] = useState<Level>();
  const panel = useRef<HTMLDivElement>(null);
  const sheet = useRef<HTMLDivElement>(null);
  const scope = pattern.ending ? wantedScope : 'main';
  const shown = useMemo(() => shownPattern(pattern, scope), [pattern, scope]);
  const place = useMemo(() => placed && placeWithin(shown, placed), [shown, placed]);
  const chosen = useMemo(() => place && chosenAt(shown, place), [shown, place]);
  const levels = useLevels(shown, level, tab === 'levels');
  const show = (next: Scope) => {
    setScope(next);
    setPlace(undefined);
  };
  return (
    <div className="pattern-page" ref={sheet}>
      <h2 className="visually-hidden">Rhythm</h2>
      <div className="pattern-lines">
        <PatternLine pattern={pattern} onBringBand={onBringBand} />
        <HearLine
          pattern={pattern}
          scope={scope}
          onScope={show}
          onEnding={() => onTab('ending')}
          onBringBand={onBringBand}
          onDeriveAgain={onDeriveAgain}
        />
      </div>
      {isNotated ? (
        <PatternNotation pattern={pattern} />
      ) : (
        <>
          <HitMarksContext value={hitRemarksOf(levels)}>
            <SpineGrid
              pattern={pattern}
              scope={scope}
              shown={shown}
              place={place}
              chosen={chosen}
              onPlace={setPlace}
              onOpenHit={() => {
                flushSync(() => onTab('hit'));
                firstButton(panel.current)?.focus();
              }}
            />
          </HitMarksContext>
          <Desk
            pattern={pattern}
            scope={scope}
            shown={shown}
            place={place}
            chosen={chosen}
            levels={levels}
            tab={tab}
            panel={panel}
            onTab={onTab}
            onScope={show}
            onLevel={setLevel}
            onPlace={setPlace}
            onLeave={() =>
              sheet.current?.querySelector<HTMLElement>('[role=grid] [tabindex="0"]')?.focus()
            }
          />
        </>
      )}
    </div>
  );
}

/** Rhythm: a pattern on its spine of counts, the hands beside it, the band outside; and where bands come in. */
export function RhythmPage() {
  const pattern = useShownPattern();
  const { given, begin, close, give } = useBandFile();
  const [isDeriving, setDeriving] = useState(false);
  const [tab, setTab] = useState<DeskTab>(FIRST_DESK_TAB);
  if (!pattern) return <p>There is no pattern yet.</p>;
  return (
    <div
      className="pattern-drop"
      onDragOver={(event) => event.preventDefault()}
      onDrop={(event) => {
        event.preventDefault();
        const file = event.dataTransfer.files[0];
        if (file) give(file);
      }}
    >
      {given && (
        <BandPage file={given.file} fileCount={given.fileCount} onFile={give} onClose={close} />
      )}
      {!given && isDeriving && (
        <DerivePage key={pattern.id} pattern={pattern} onClose={() => setDeriving(false)} />
      )}
      {!given && !isDeriving && (
        <Workshop
          key={pattern.id}
          pattern={pattern}
          tab={tab}
          onTab={setTab}
          onBringBand={begin}
          onDeriveAgain={() => setDeriving(true)}
        />
      )}
    </div>
  );
}
