import './practice.css';
import { drillPattern } from '../../app/score.ts';
import { rungsOf } from '../../core/practice/tempoLadder.ts';
import { beatStarts } from '../../core/time/meter.ts';
import { ChordName } from '../ChordName.tsx';
import { useParts } from '../parts.ts';
import { usePlayback, useProject } from '../useProject.ts';
import { Beats } from './Beats.tsx';
import { ClickSettings } from './ClickSettings.tsx';
import { DrillSettings } from './DrillSettings.tsx';
import { LadderPicture } from './LadderPicture.tsx';

function RungButtons() {
  const { playback } = useParts();
  return (
    <div className="practice-rung-buttons">
      <button type="button" onClick={() => playback.changeRung(-1)}>
        Rung down
      </button>
      <button type="button" onClick={() => playback.changeRung(1)}>
        Rung up
      </button>
    </div>
  );
}

/** One chord, one pattern, tempo climbing: the tempo of this rung as large as the page allows. */
export function DrillPage() {
  const playing = usePlayback();
  const drill = useProject((project) => project.practice.drill);
  const pattern = useProject(drillPattern);
  const place = playing.status === 'playing' ? playing.drill : undefined;
  const rungs = rungsOf(drill.ladder);
  const here = (place?.rung ?? 1) - 1;
  if (!pattern) return <p>Make a pattern on Rhythm first; it is drilled here.</p>;
  return (
    <div className="practice-drill">
      <h2 className="visually-hidden">Drill</h2>
      <LadderPicture rungs={rungs} here={here} />
      <section className="practice-stand" aria-label="This rung">
        <p className="practice-tempo">
          <strong>{rungs[Math.min(here, rungs.length - 1)]}</strong>
          <span className="visually-hidden"> beats a minute</span>
        </p>
        <p className="practice-place" role="status">
          Rung <b>{place?.rung ?? 1}</b> of {rungs.length}
          <span className="practice-gap" /> Pass <b>{place?.pass ?? 1}</b> of{' '}
          {drill.ladder.passesPerRung}
        </p>
        <p className="practice-held">
          <ChordName chord={drill.chord} />
          <span className="practice-pattern-name">{pattern.name}</span>
        </p>
        <Beats count={beatStarts(pattern.meter).length} />
        <RungButtons />
      </section>
      <div className="practice-side">
        <DrillSettings />
        <ClickSettings meter={pattern.meter} />
      </div>
    </div>
  );
}
