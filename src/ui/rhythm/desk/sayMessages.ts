import { unreachable } from '../../../core/result.ts';
import type { CountsError } from '../../../core/rhythm/countTokens.ts';

/** Why something that was said is not written: it can't be read, or it has a number of bars no pattern has. */
export type SaidProblem = CountsError | { readonly kind: 'bars'; readonly bars: number };

/** The place in a text, counted from 1 as people do. */
function place(at: number): string {
  return `at character ${at + 1}`;
}

/** What is wrong with what was said, where, and what can be said instead. */
export function saidSentence(problem: SaidProblem): string {
  switch (problem.kind) {
    case 'nothing-said':
      return 'Type the counts that sound, as you would say them: 1 & 2 & 3 e & a.';
    case 'too-much-said':
      return `That is more than can be said: ${problem.characters.toLocaleString('en')} characters, and ${problem.most.toLocaleString('en')} are the most. Say one pattern, of up to 4 bars.`;
    case 'unknown-count':
      return `“${problem.text}” is no count (${place(problem.at)}). Say numbers with e, &, a, trip, let, la, li or ta.`;
    case 'stray-bracket':
      return `The bracket ${problem.text} closes none that was opened (${place(problem.at)}).`;
    case 'open-bracket':
      return `A bracket is opened and not closed (${place(problem.at)}).`;
    case 'no-such-beat':
      return `There is no count ${problem.text} here (${place(problem.at)}): a bar of this meter counts to ${problem.beats}.`;
    case 'no-such-step':
      return `No beat can be divided so that it has these counts together, from “${problem.text}” on (${place(problem.at)}).`;
    case 'bars':
      return `These are ${problem.bars} bars. A pattern has 1, 2 or 4; leave some away or add some.`;
    default:
      return unreachable(problem);
  }
}
