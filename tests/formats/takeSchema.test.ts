import * as fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { decodeTake, encodeTake } from '../../src/formats/takeSchema.ts';
import { errorOf } from '../support/music.ts';
import { takeRecord, takeRecords } from '../support/takeRecords.ts';

describe('a take as it is kept', () => {
  it('is read as it was written, after the database has cloned it', () =>
    fc.assert(
      fc.property(takeRecords(), (take) => {
        expect(decodeTake(structuredClone(encodeTake(take)))).toEqual({ ok: true, value: take });
      }),
    ));

  it.each<[string, unknown, string]>([
    ['nothing', undefined, ''],
    ['a text', 'take', ''],
    ['a later way of writing', { ...encodeTake(takeRecord()), version: 2 }, 'version'],
    [
      'a property that nobody knows',
      { version: 1, take: { ...takeRecord(), mood: 'good' } },
      'take.mood',
    ],
    ['a tempo of 0', encodeTake(takeRecord({ bpm: 0 })), 'take.bpm'],
    ['a time that is no number', encodeTake(takeRecord({ atMs: Number.NaN })), 'take.atMs'],
    [
      'a score that lacks its hands',
      { version: 1, take: { ...takeRecord(), score: { ...takeRecord().score, hands: undefined } } },
      'take.score.hands',
    ],
  ])('is not read from %s', (_, row, path) =>
    expect(errorOf(decodeTake(row))).toEqual({ kind: 'no-take', path }),
  );
});
