import '../parts/transport/practice.css';
import './ladder.css';
import '../parts/transport/fields.css';
import '../parts/grid/patternGrid.css';
import '../parts/takes/takes.css';
import { drillPattern } from '../../app/score.ts';
import { PatternPicture } from '../parts/picture/PatternPicture.tsx';
import { HitLegend } from '../parts/takes/HitLegend.tsx';
import { HitMarks } from '../parts/takes/HitMarks.tsx';
import { useInput } from '../parts/takes/useHearing.ts';
import { useParts } from '../parts/tool/parts.ts';
import { useProject } from '../parts/tool/useProject.ts';
import { ClickFields } from '../parts/transport/ClickFields.tsx';
import { ClickRest } from '../parts/transport/ClickRest.tsx';
import { useDrill } from '../parts/transport/useDrill.ts';
import { DrillFigures } from './DrillFigures.tsx';
import { DrillNotes } from './DrillNotes.tsx';
import { DrillOffer } from './DrillOffer.tsx';
import { DrilledFields, LadderFields } from './DrillSettings.tsx';
import { goToRung } from './goToRung.ts';
import { IPlay } from './IPlay.tsx';
import { LadderPicture } from './LadderPicture.tsx';
import { RungButtons } from './RungButtons.tsx';
import { StageLine } from './StageLine.tsx';
import { TakePads } from './TakePads.tsx';
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
        <ClickFields meter={pattern.meter} />
      </div>
    </div>
  );
}
