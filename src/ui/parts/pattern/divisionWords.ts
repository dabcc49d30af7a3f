import type { Division } from '../../../core/rhythm/pattern.ts';

/** How a beat is divided, as a teacher says it. */
export const DIVISION_WORDS: Readonly<Record<Division, string>> = {
  1: 'undivided',
  2: 'in halves',
  3: 'in three',
  4: 'in four',
  6: 'in six',
  8: 'in eight',
};
