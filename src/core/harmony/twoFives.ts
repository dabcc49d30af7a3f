import type { Chord } from './chord.ts';
import { above, heardLine, isDominantSeventh, isSecond, nextRoot } from './heardChords.ts';

/**
 * A ii–V: places of the second and of the dominant (or its tritone substitute) among the chords, and
 * of the chord a fifth (a semitone) below it, where that follows.
 */
export type TwoFive = {
  readonly second: number;
  readonly dominant: number;
  readonly arrival?: number;
};

/**
 * Every ii–V of a line in order: a minor, half-diminished or diminished chord and then, on the next
 * root, a dominant seventh a fourth above it (Dm7 G7) or its tritone substitute (Dm7 D♭7). In a chain
 * of them the arrival of one can be the second of the next.
 */
export function twoFives(chords: ReadonlyArray<Chord | 'no-chord'>): TwoFive[] {
  const line = heardLine(chords);
  return line.flatMap((second, place) => {
    const next = nextRoot(line, place);
    const dominant = next === undefined ? undefined : line[next];
    if (!second || next === undefined || !dominant) return [];
    const isFourth = dominant.root === above(second.root, 5);
    const isSemitone = dominant.root === above(second.root, 11);
    if (!isSecond(second) || !isDominantSeventh(dominant) || !(isFourth || isSemitone)) return [];
    if (line[place + 1]?.root === second.root) return [];
    const after = nextRoot(line, next);
    const goal = above(second.root, 10);
    const arrives = after !== undefined && line[after]?.root === goal;
    return [{ second: place, dominant: next, ...(arrives ? { arrival: after } : {}) }];
  });
}
