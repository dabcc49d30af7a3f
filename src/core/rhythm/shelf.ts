import type { Bpm } from '../time/tempoMap.ts';
import type { Pattern } from './pattern.ts';

/**
 * A traditional pattern with what a musician wants to know before taking it: where the figure comes
 * from (`common practice`, or a text by name), one line on where it is used, the slowest and the
 * fastest usual tempo in felt beats a minute, and words to find it by (styles and feels).
 */
export type ShelfPattern = {
  readonly pattern: Pattern;
  readonly origin: string;
  readonly use: string;
  readonly tempoRange: readonly [slowest: Bpm, fastest: Bpm];
  readonly tags: readonly string[];
};
