import type { DrillRung } from '../../core/practice/drillRungs.ts';
import { drawnRungs } from './ladderLayout.ts';

const MOST_RUNGS = 11;

/** A rung in words: its place, its tempo and its level, if it has one. */
function rungName(index: number, { bpm, level }: DrillRung): string {
  const words = `Rung ${index + 1}: ${bpm} beats a minute`;
  return level === undefined ? words : `${words}, level ${level}`;
}

/**
 * The ladder as a ladder: the rung in use inked and marked, those already climbed darker, the one that
 * comes next underlined; the level beside the tempo where levels climb. A tap on a rung chooses it.
 */
export function LadderPicture({
  rungs,
  here,
  wanted,
  onChoose,
}: {
  readonly rungs: readonly DrillRung[];
  readonly here: number;
  readonly wanted: number | undefined;
  readonly onChoose: (rung: number) => void;
}) {
  const levelsClimb = new Set(rungs.map(({ level }) => level)).size > 1;
  return (
    <ol className="practice-ladder" aria-label="Tempo ladder">
      {drawnRungs(rungs, here, MOST_RUNGS)
        .toReversed()
        .map(({ index, standing, ...rung }) => (
          <li key={index}>
            <button
              type="button"
              className={`practice-rung practice-rung-${standing}`}
              aria-current={standing === 'here' ? 'step' : undefined}
              aria-label={`${rungName(index, rung)}${index === wanted ? ', next' : ''}`}
              onClick={() => onChoose(index)}
            >
              <span className={index === wanted ? 'practice-rung-wanted' : undefined}>
                {rung.bpm}
                {levelsClimb && (
                  <small>{rung.level === undefined ? 'full' : `level ${rung.level}`}</small>
                )}
              </span>
            </button>
          </li>
        ))}
    </ol>
  );
}
