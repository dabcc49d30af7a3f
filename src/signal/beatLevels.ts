/**
 * Ways in which a row of beats may stand to the beats that players count: so many beats in the place
 * of so many found, beginning somewhere within the first of them.
 */
export type BeatLevel = {
  /** Beats counted for `found` beats found. */
  readonly counted: number;
  readonly found: number;
  /** Where the first counted beat lies, in beats counted, from 0 to before 1. */
  readonly offset: number;
};

/** Offsets of a pulse that attacks of straight or triple divisions may have drawn away from the beat. */
const OFFSETS = [0, 1 / 4, 1 / 3, 1 / 2, 2 / 3, 3 / 4];

/** The beats themselves. */
export const AS_FOUND: BeatLevel = { counted: 1, found: 1, offset: 0 };

/** The beats themselves, and every row with their tempo beside them. */
export const OFF_BEATS: readonly BeatLevel[] = level(1, 1, OFFSETS);

/** Every level looked at: as found, on an off-beat, twice, half, three and four to one, three to two. */
export const BEAT_LEVELS: readonly BeatLevel[] = [
  OFF_BEATS,
  level(2, 1, [0, 1 / 2]),
  level(1, 2, OFFSETS),
  level(3, 1, [0]),
  level(1, 3, [0, 1 / 3, 2 / 3]),
  level(3, 2, [0, 1 / 2]),
  level(2, 3, [0, 1 / 3, 2 / 3]),
  level(4, 1, [0]),
  level(1, 4, [0, 1 / 4, 1 / 2, 3 / 4]),
  level(4, 3, [0, 1 / 3, 2 / 3]),
  level(3, 4, [0, 1 / 4, 1 / 2, 3 / 4]),
].flat();

function level(counted: number, found: number, offsets: readonly number[]): BeatLevel[] {
  return offsets.map((offset) => ({ counted, found, offset }));
}

/** The beats counted at a level, in the unit of `beats`: between those found they lie evenly. */
export function beatsAtLevel(
  beats: readonly number[],
  { counted, found, offset }: BeatLevel,
): number[] {
  const placed: number[] = [];
  const step = found / counted;
  for (let n = 0; ; n++) {
    const place = (offset + n) * step;
    const whole = Math.floor(place + 1e-9);
    if (whole >= beats.length) break;
    const part = place - whole;
    if (part < 1e-6) placed.push(beats[whole]!);
    else if (whole + 1 < beats.length)
      placed.push(beats[whole]! + part * (beats[whole + 1]! - beats[whole]!));
  }
  return placed;
}
