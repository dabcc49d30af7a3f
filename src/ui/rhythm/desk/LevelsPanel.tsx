import { formatChordSymbol } from '../../../core/harmony/chordSymbol.ts';
import { HAND_LIMITS } from '../../../core/rhythm/handLimits.ts';
import { LEVELS, type Level } from '../../../core/rhythm/levels.ts';
import type { Pattern } from '../../../core/rhythm/pattern.ts';
import { thinnedPattern } from '../../../core/rhythm/thinnedPattern.ts';
import { addVariation } from '../../../state/edits/variations.ts';
import { newPatternId } from '../../../state/newIds.ts';
import { sameData } from '../../../state/sameData.ts';
import {
  comfortWords,
  LEVEL_WORDS,
  loadWords,
  strainWords,
} from '../../parts/pattern/levelWords.ts';
import { useTrial } from '../../parts/pattern/useTrial.ts';
import { scoreSentence } from '../../parts/tool/messages.ts';
import { useParts } from '../../parts/tool/parts.ts';
import { useProject } from '../../parts/tool/useProject.ts';
import { HandsButton } from './HandsButton.tsx';
import type { LevelChoice } from './useLevels.ts';

type Props = {
  readonly pattern: Pattern;
  /** What of the pattern is shown: see `shownPattern`. */
  readonly shown: Pattern;
  readonly levels: LevelChoice;
  readonly onLevel: (level: Level | undefined) => void;
};

const LEVEL_NUMBERS = Object.keys(LEVELS).map(Number) as Level[];

/** So many strains are named; the others are marked on the spine all the same. */
const NAMED_STRAINS = 3;

function hits({ left, right }: Pick<Pattern, 'left' | 'right'>): number {
  return left.length + right.length;
}

function Load({ levels }: Pick<Props, 'levels'>) {
  const chord = useProject((project) => project.practice.drill.chord);
  const { load, thinned, bpm, limits } = levels;
  if (!load.ok) return <p className="desk-problem">{scoreSentence(load.error)}</p>;
  const { left, right } = load.value;
  const strains = [...right.strains, ...left.strains];
  return (
    <div className="desk-load">
      <p>
        <b>{comfortWords([left, right])}.</b> An estimate for{' '}
        {sameData(limits, HAND_LIMITS) ? 'an average player' : 'your hands as you set them'}, on{' '}
        {formatChordSymbol(chord)} at {Math.round(bpm)}.
      </p>
      <p>
        <i className="workshop-right">Right hand</i> {loadWords(right)}.{' '}
        <i className="workshop-left">Left hand</i> {loadWords(left)}.
      </p>
      {strains.length > 0 && (
        <p>
          <b className="desk-wave">Too much</b>:{' '}
          {strains
            .slice(0, NAMED_STRAINS)
            .map((strain) => strainWords(thinned, strain))
            .join('; ')}
          {strains.length > NAMED_STRAINS && `; and ${strains.length - NAMED_STRAINS} more`}.
        </p>
      )}
    </div>
  );
}

/** Easier versions of a pattern, drawn on the spine before they are taken, and what it asks of the hands. */
export function LevelsPanel({ pattern, shown, levels, onLevel }: Props) {
  const { store, view } = useParts();
  const trial = useTrial();
  const { level, bpm, limits, thinned } = levels;
  const choose = (next: Level) => {
    const wanted = next === level ? undefined : next;
    onLevel(wanted);
    if (wanted) trial.turn(thinnedPattern(pattern, wanted, bpm, limits));
    else trial.stop();
  };
  const take = (taken: Level) => {
    const id = newPatternId(store.snapshot());
    const variation = thinnedPattern(pattern, taken, bpm, limits);
    store.edit(addVariation(pattern.id, id, `level ${taken}`, variation), {
      label: 'easier version',
    });
    trial.stop();
    onLevel(undefined);
    view.set({ patternId: id });
  };
  return (
    <div className="desk-levels">
      <div className="desk-line">
        <div role="group" aria-label="Level" className="pattern-buttons">
          <span className="pattern-caption" aria-hidden="true">
            Level
          </span>
          {LEVEL_NUMBERS.map((each) => (
            <button
              key={each}
              type="button"
              aria-label={`Level ${each}`}
              aria-pressed={level === each}
              onClick={() => choose(each)}
            >
              {each}
            </button>
          ))}
        </div>
        <p role="status" className="desk-says">
          {level === undefined
            ? 'Choose how much of it is played, from a first lesson to everything.'
            : `${LEVEL_WORDS[level]}: ${hits(thinned)} of ${hits(shown)} hits.`}
        </p>
        {level !== undefined && (
          <>
            <button
              type="button"
              aria-pressed={trial.heard !== undefined}
              onClick={() => trial.hear(trial.heard ?? thinned)}
            >
              {trial.heard ? 'Stop' : 'Hear it'}
            </button>
            <button type="button" className="strong" onClick={() => take(level)}>
              Take as a variation
            </button>
          </>
        )}
        <HandsButton />
      </div>
      <Load levels={levels} />
    </div>
  );
}
