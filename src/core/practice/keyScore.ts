import type { HitPair } from './matchHits.ts';

/** Which keys were struck in the hits that were played: hits with a key that is not in them, such keys, keys left out. */
export type KeyScore = {
  readonly hits: number;
  readonly wrongHits: number;
  readonly wrongKeys: number;
  readonly absentKeys: number;
};

/** See `KeyScore`; undefined where no pair knows its keys. */
export function keyScore(pairs: readonly HitPair[]): KeyScore | undefined {
  const seen = pairs.filter(
    ({ expected, played }) => expected.keys.length > 0 && played.keys.length > 0,
  );
  if (seen.length === 0) return undefined;
  const wrong = seen.map(
    ({ expected, played }) => played.keys.filter((key) => !expected.keys.includes(key)).length,
  );
  const absent = seen.map(
    ({ expected, played }) => expected.keys.filter((key) => !played.keys.includes(key)).length,
  );
  return {
    hits: seen.length,
    wrongHits: wrong.filter((count) => count > 0).length,
    wrongKeys: wrong.reduce((sum, count) => sum + count, 0),
    absentKeys: absent.reduce((sum, count) => sum + count, 0),
  };
}
