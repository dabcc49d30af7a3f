import './practice.css';
import '../patternGrid/patternGrid.css';
import '../takes/takes.css';
import { useMemo } from 'react';
import { drillPattern } from '../../app/score.ts';
import { rungsOf } from '../../core/practice/tempoLadder.ts';
import { ChordName } from '../ChordName.tsx';
import { useParts } from '../parts.ts';
import { PatternPicture } from '../patternGrid/PatternPicture.tsx';
import { DrillNotes } from '../takes/DrillNotes.tsx';
import { HistoryButton } from '../takes/HistoryButton.tsx';
import { HitLegend } from '../takes/HitLegend.tsx';
import { HitMarks } from '../takes/HitMarks.tsx';
import { IPlay } from '../takes/IPlay.tsx';
import { TakePads } from '../takes/TakePads.tsx';
import { useInput } from '../takes/useHearing.ts';
import { usePlayback, useProject, useView } from '../useProject.ts';
import { ClickSettings } from './ClickSettings.tsx';
import { DrillSettings } from './DrillSettings.tsx';
import { goToRung, goToRungBeside } from './goToRung.ts';
import { LadderPicture } from './LadderPicture.tsx';
import { PlanButton } from './PlanButton.tsx';

function RungButtons({ onChange }: { readonly onChange: (by: 1 | -1) => void }) {
  return (
    <>
      <button type="button" onClick={() => onChange(-1)}>
        Rung down
      </button>
      <button type="button" onClick={() => onChange(1)}>
        Rung up
      </button>
    </>
  );
}

/** One chord, one pattern, tempo climbing: the tempo of this rung as large as the page allows. */
export function DrillPage() {
  const parts = useParts();
  const playing = usePlayback();
  const drill = useProject((project) => project.practice.drill);
  const pattern = useProject(drillPattern);
  const place = playing.status === 'playing' ? playing.drill : undefined;
  const rungs = rungsOf(drill.ladder);
  const startRung = useView((state) => state.rung);
  const here = place ? place.rung - 1 : Math.min(startRung, rungs.length - 1);
  const wanted = playing.status === 'playing' ? playing.wanted?.rung : undefined;
  const input = useInput();
  const handsAlone = useMemo(() => pattern && { ...pattern, sources: [] }, [pattern]);
  if (!pattern || !handsAlone) return <p>Make a pattern on Rhythm first; it is drilled here.</p>;
  return (
    <div className="practice-drill">
      <h2 className="visually-hidden">Drill</h2>
      <LadderPicture
        rungs={rungs}
        here={here}
        wanted={wanted}
        onChoose={(rung) => goToRung(parts, { rung })}
      />
      <section className="practice-stand" aria-label="This rung">
        <div className="practice-figures">
          <p className="practice-tempo">
            <strong>{rungs[here]}</strong>
            <span className="visually-hidden"> beats a minute</span>
          </p>
          <div>
            <p className="practice-place" role="status">
              Rung <b>{here + 1}</b> of {rungs.length}
            </p>
            <p className="practice-place" role="status">
              Pass <b>{place?.pass ?? 1}</b> of {drill.ladder.passesPerRung}
            </p>
            <p className="practice-held">
              <ChordName chord={drill.chord} />
              <span className="practice-pattern-name">{pattern.name}</span>
            </p>
          </div>
        </div>
        <PatternPicture
          pattern={handsAlone}
          label={`Pattern: ${pattern.name}`}
          over={(system, rows) =>
            input && (
              <HitMarks
                key={`${pattern.id} ${system.right} ${rows.height}`}
                pattern={handsAlone}
                system={system}
                rows={rows}
              />
            )
          }
        />
        {input && <HitLegend input={input} />}
        {input === 'pads' && <TakePads />}
        <div className="practice-rung-buttons">
          <RungButtons onChange={(by) => goToRungBeside(parts, by)} />
          <p className="practice-wanted" role="status">
            {wanted !== undefined && `then rung ${wanted + 1}, ${rungs[wanted]}`}
          </p>
          <PlanButton />
          <HistoryButton />
        </div>
      </section>
      <div className="practice-side">
        <DrillNotes pattern={pattern} />
        <IPlay />
        <DrillSettings />
        <ClickSettings meter={pattern.meter} />
      </div>
    </div>
  );
}
