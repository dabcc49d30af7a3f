import './practice.css';
import './ladder.css';
import './fields.css';
import '../patternGrid/patternGrid.css';
import '../takes/takes.css';
import { drillPattern } from '../../app/score.ts';
import { useParts } from '../parts.ts';
import { PatternPicture } from '../patternGrid/PatternPicture.tsx';
import { DrillNotes } from '../takes/DrillNotes.tsx';
import { HitLegend } from '../takes/HitLegend.tsx';
import { HitMarks } from '../takes/HitMarks.tsx';
import { IPlay } from '../takes/IPlay.tsx';
import { TakePads } from '../takes/TakePads.tsx';
import { useInput } from '../takes/useHearing.ts';
import { useProject } from '../useProject.ts';
import { ClickRest } from './ClickRest.tsx';
import { ClickSettings } from './ClickSettings.tsx';
import { DrillFigures } from './DrillFigures.tsx';
import { DrillOffer } from './DrillOffer.tsx';
import { DrilledFields, LadderFields } from './DrillSettings.tsx';
import { goToRung } from './goToRung.ts';
import { LadderPicture } from './LadderPicture.tsx';
import { RungButtons } from './RungButtons.tsx';
import { StageLine } from './StageLine.tsx';
import { useDrill } from './useDrill.ts';
import { useDrilledPattern } from './useDrilledPattern.ts';

/** A stage of the drill, tempo climbing: the tempo of this rung as large as the page allows. */
export function DrillPage() {
  const parts = useParts();
  const drill = useDrill();
  const { stage, rungs, here, wanted } = drill;
  const pattern = useDrilledPattern(stage, rungs[here]?.level);
  const drilled = useProject(drillPattern);
  const input = useInput();
  if (!pattern || !drilled) return <p>Make a pattern on Rhythm first; it is drilled here.</p>;
  return (
    <div className="practice-drill">
      <h2 className="visually-hidden">Drill</h2>
      <StageLine drill={drill} />
      <LadderPicture
        rungs={rungs}
        here={here}
        wanted={wanted && wanted.stage?.id === stage?.id ? wanted.rung : undefined}
        onChoose={(rung) => goToRung(parts, { rung, ...(stage && { stage }) })}
      />
      <section className="practice-stand" aria-label="This rung">
        <DrillFigures drill={drill} pattern={pattern} />
        <PatternPicture
          pattern={pattern}
          label={`Pattern: ${pattern.name}`}
          over={(system, rows) =>
            input && (
              <HitMarks
                key={`${pattern.id} ${system.right} ${rows.height}`}
                pattern={pattern}
                system={system}
                rows={rows}
              />
            )
          }
        />
        {input === 'pads' && <TakePads />}
        <div className="practice-rung-buttons">
          <RungButtons drill={drill} />
          <ClickRest />
        </div>
      </section>
      <div className="practice-side">
        <DrillNotes pattern={pattern} />
        <DrillOffer />
        <DrilledFields />
        <IPlay />
        {input && <HitLegend input={input} />}
        <LadderFields />
        <ClickSettings meter={pattern.meter} />
      </div>
    </div>
  );
}
