import type { Stage } from '../../core/practice/stage.ts';
import type { Pattern } from '../../core/rhythm/pattern.ts';
import { ChordName } from '../parts/song/ChordName.tsx';
import { useProject } from '../parts/tool/useProject.ts';
import type { ShownDrill } from '../parts/transport/useDrill.ts';
import { PassageLine } from './PassageLine.tsx';
import { levelWords, passageWords } from './stageWords.ts';

/** The stretch of the song that is gone through, its pattern and its chords. */
function InSong({ stage, pattern }: { readonly stage: Stage; readonly pattern: Pattern }) {
  const sections = useProject((project) => project.song.sections);
  const isTurns = stage.passage.kind === 'two-chords';
  return (
    <div>
      <p className="practice-held practice-held-long">
        {!isTurns && (
          <span className="practice-passage-name">
            {passageWords(stage.passage, { song: { sections } })}
          </span>
        )}
        <span className="practice-pattern-name">{pattern.name}</span>
      </p>
      <PassageLine stage={stage} />
    </div>
  );
}

/** The one chord that is held, and the pattern. */
function Held({ pattern }: { readonly pattern: Pattern }) {
  const chord = useProject((project) => project.practice.drill.chord);
  return (
    <p className="practice-held">
      <ChordName chord={chord} />
      <span className="practice-pattern-name">{pattern.name}</span>
    </p>
  );
}

/** The tempo of this rung as large as the page allows, its place on the ladder, and what is gone through. */
export function DrillFigures({
  drill,
  pattern,
}: {
  readonly drill: ShownDrill;
  readonly pattern: Pattern;
}) {
  const passesPerRung = useProject((project) => project.practice.drill.ladder.passesPerRung);
  const { stage, rungs, here, bpm, place } = drill;
  const moves = stage && stage.passage.kind !== 'one-chord';
  const level = rungs[here]?.level;
  const { pass, passes } = place ?? { pass: 1, passes: passesPerRung };
  return (
    <>
      <div className={`practice-figures${moves ? ' practice-figures-brief' : ''}`}>
        <p className={`practice-tempo${bpm >= 99.5 ? ' practice-tempo-hundreds' : ''}`}>
          <strong>{Math.round(bpm)}</strong>
          <span className="visually-hidden"> beats a minute</span>
        </p>
        <div>
          <p className="practice-place" role="status">
            Rung <b>{here + 1}</b> of {rungs.length}
            {level !== undefined && <small>, {levelWords(level)}</small>}
          </p>
          <p className="practice-place" role="status">
            Pass <b>{pass}</b>
            {pass <= passes && ` of ${passes}`}
            {place?.isAtGoal && <small>, the goal</small>}
          </p>
          {!moves && <Held pattern={pattern} />}
        </div>
      </div>
      {moves && <InSong stage={stage} pattern={pattern} />}
    </>
  );
}
