import { drawnRungs } from './ladderLayout.ts';

const MOST_RUNGS = 11;

/**
 * The tempo ladder as a ladder: the rung in use inked and marked, those already climbed darker, the
 * one that comes next underlined. A tap on a rung chooses it.
 */
export function LadderPicture({
  rungs,
  here,
  wanted,
  onChoose,
}: {
  readonly rungs: readonly number[];
  readonly here: number;
  readonly wanted: number | undefined;
  readonly onChoose: (rung: number) => void;
}) {
  return (
    <ol className="practice-ladder" aria-label="Tempo ladder">
      {drawnRungs(rungs, here, MOST_RUNGS)
        .toReversed()
        .map(({ bpm, index, standing }) => (
          <li key={index}>
            <button
              type="button"
              className={`practice-rung practice-rung-${standing}`}
              aria-current={standing === 'here' ? 'step' : undefined}
              aria-label={`Rung ${index + 1}: ${bpm} beats a minute${index === wanted ? ', next' : ''}`}
              onClick={() => onChoose(index)}
            >
              <span className={index === wanted ? 'practice-rung-wanted' : undefined}>{bpm}</span>
            </button>
          </li>
        ))}
    </ol>
  );
}
