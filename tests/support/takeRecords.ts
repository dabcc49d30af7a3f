import * as fc from 'fast-check';
import type { TakeRecord } from '../../src/core/practice/takeRecord.ts';
import type { TakeScore } from '../../src/core/practice/takeScore.ts';
import { expectedHit, scoreOf } from './takes.ts';

/** A score of four hits of the left hand on the beats, clean unless the last is missed. */
export function fourHits(isClean = true): TakeScore {
  const hits = [0, 1, 2, 3].map((beat) =>
    expectedHit(beat / 2, 'left', { patternTick: beat * 480 }),
  );
  return scoreOf(hits.map((hit, i) => [hit, i === 3 && !isClean ? 'missed' : 0]));
}

/** A clean take of the pattern `p` with both hands at 100, with what `parts` says instead. */
export function takeRecord(parts: Partial<TakeRecord> = {}): TakeRecord {
  return {
    atMs: 0,
    target: { kind: 'pattern', patternId: 'p' },
    hand: 'both',
    bpm: 100,
    passes: 1,
    sees: 'hands',
    score: fourHits(),
    ...parts,
  };
}

/** Any takes, with scores of hits that are played, early or late, missed and extra. */
export function takeRecords(): fc.Arbitrary<TakeRecord> {
  const hand = fc.constantFrom('left', 'right', 'both' as const);
  const id = fc.string({ minLength: 1, maxLength: 6 });
  const hit = fc.record({
    hand,
    later: fc.oneof(fc.constant('missed' as const), fc.integer({ min: -70, max: 70 })),
    patternTick: fc.option(fc.constantFrom(0, 480, 960), { nil: undefined }),
    key: fc.option(fc.integer({ min: 40, max: 60 }), { nil: undefined }),
  });
  const score = fc.array(hit, { maxLength: 24 }).map((hits) =>
    scoreOf(
      hits.map(({ hand: each, later, patternTick, key }, i) => [
        expectedHit(i / 2, each, {
          keys: key === undefined ? [] : [key],
          ...(patternTick !== undefined && { patternTick, patternId: 'p' }),
        }),
        later,
      ]),
    ),
  );
  const target = fc.oneof(
    id.map((patternId) => ({ kind: 'pattern', patternId }) as const),
    id.map((sectionId) => ({ kind: 'section', sectionId }) as const),
    fc.tuple(id, id).map(([from, to]) => ({ kind: 'join', from, to }) as const),
    fc.constant({ kind: 'song' } as const),
    fc
      .tuple(fc.nat(99), fc.integer({ min: 1, max: 9 }))
      .map(([firstBar, bars]) => ({ kind: 'bars', firstBar, endBar: firstBar + bars }) as const),
  );
  return fc
    .record({
      atMs: fc.nat(2 ** 42),
      target,
      hand,
      bpm: fc.double({ min: 20, max: 300, noNaN: true }),
      level: fc.constantFrom(1, 2, 3, 4, 5, undefined),
      passes: fc.nat(9),
      sees: fc.constantFrom('keys', 'hands', 'onsets' as const),
      score,
    })
    .map(({ level, ...take }) => (level === undefined ? take : { ...take, level }) as TakeRecord);
}
