import type { HandLimits } from '../../../core/rhythm/handLimits.ts';
import { spanWords } from '../../parts/pattern/levelWords.ts';

/** An answer to what a hand can do: the limit that it means, and its words. */
export type HandAnswer = { readonly value: number; readonly words: string };

/** One thing that is asked of a player's hands, with the answers that can be chosen. */
export type HandQuestion = {
  readonly limit: keyof HandLimits;
  readonly asks: string;
  readonly answers: readonly HandAnswer[];
};

const OCTAVE = 12;

/** So many a second, as the time from one to the next. */
function rates(...perSecond: readonly number[]): HandAnswer[] {
  return perSecond.map((rate) => ({ value: 1 / rate, words: `${rate} a second` }));
}

/** What a player is asked; the usual limits are among the answers. */
export const HAND_QUESTIONS: readonly HandQuestion[] = [
  {
    limit: 'spanSemitones',
    asks: 'The hand reaches',
    answers: [7, 8, 9, 10, 11, 12, 13, 14, 15, 16].map((semitones) => ({
      value: semitones,
      words: spanWords(semitones),
    })),
  },
  {
    limit: 'strikeGapSec',
    asks: 'Strikes on other keys',
    answers: rates(3, 4, 5, 6, 7, 8, 9, 10, 11, 12, 13),
  },
  { limit: 'repeatGapSec', asks: 'One key again', answers: rates(2, 3, 4, 5, 6, 7, 8, 9, 10) },
  {
    limit: 'leapPerSec',
    asks: 'A leap of an octave takes',
    answers: [0.8, 0.6, 0.5, 0.4, 0.3, 0.25, 0.2, 0.15].map((sec) => ({
      value: OCTAVE / sec,
      words: `${sec} s`,
    })),
  },
];
