import { drawnRungs } from './ladderLayout.ts';

const MOST_RUNGS = 11;

/** The tempo ladder as a ladder: the rung in use inked and marked, those already climbed filled. */
export function LadderPicture({
  rungs,
  here,
}: {
  readonly rungs: readonly number[];
  readonly here: number;
}) {
  return (
    <ol className="practice-ladder" aria-label="Tempo ladder">
      {drawnRungs(rungs, here, MOST_RUNGS)
        .toReversed()
        .map((rung) => (
          <li
            key={rung.index}
            className={`practice-rung practice-rung-${rung.standing}`}
            aria-current={rung.standing === 'here' ? 'step' : undefined}
          >
            <span>{rung.bpm}</span>
          </li>
        ))}
    </ol>
  );
}
