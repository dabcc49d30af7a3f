import * as fc from 'fast-check';
import { fifthsOf, type Key } from '../../src/core/harmony/key.ts';
import { ROOTS } from './chords.ts';

/** The 30 keys with at most seven signs. */
export const KEYS: readonly Key[] = (['major', 'minor'] as const).flatMap((mode) =>
  ROOTS.map((tonic) => ({ tonic, mode })).filter((key) => Math.abs(fifthsOf(key)) <= 7),
);

export function anyKey(): fc.Arbitrary<Key> {
  return fc.constantFrom(...KEYS);
}
