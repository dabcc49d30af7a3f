import { unplayable } from '../../../app/score.ts';
import type { NothingPlayable } from '../../../state/selectors.ts';
import { scoreSentence } from '../tool/messages.ts';

/** That no hands fit a chord of the song, and what to do. */
export function NothingPlayableNote({ problem }: { readonly problem: NothingPlayable }) {
  return <p className="practice-problem">{scoreSentence(unplayable(problem.span))}</p>;
}
