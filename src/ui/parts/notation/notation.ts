import type { Key } from '../../../core/harmony/key.ts';
import type { Sheet } from '../../../core/rhythm/sheet.ts';
import type { HandName } from '../../../core/voicing/voicing.ts';

/** The staves from the upper to the lower. */
export const STAVES: readonly HandName[] = ['right', 'left'];

/** Words over the beginning of a bar (0-based). */
export type BarWords = { readonly bar: number; readonly text: string };

/** Bars (0-based, both included) that stand between repeat signs. */
export type RepeatedBars = { readonly firstBar: number; readonly lastBar: number };

/**
 * Music to be shown as notation under a key signature. `in-time` has a meter and spoken counts
 * under the staves; `chords` is a row of whole notes, one for each chord, without either.
 */
export type Notation = {
  readonly title: string;
  readonly sheet: Sheet;
  readonly key: Key;
  readonly kind: 'in-time' | 'chords';
  readonly words: readonly BarWords[];
  readonly repeated?: RepeatedBars;
};
