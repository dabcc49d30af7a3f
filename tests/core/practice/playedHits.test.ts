import * as fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { gatherChords, type PlayedNote } from '../../../src/core/practice/playedHits.ts';
import type { HandName } from '../../../src/core/voicing/voicing.ts';

function note(atSec: number, keyNumber: number, hand?: HandName): PlayedNote {
  return { atSec, keyNumber, ...(hand && { hand }) };
}

describe('notes gathered into hits', () => {
  it('a rolled chord is one hit, at its first note', () =>
    expect(gatherChords([note(1, 60), note(1.03, 67), note(1.015, 64)], 0.05)).toEqual([
      { atSec: 1, keys: [60, 64, 67] },
    ]));

  it('the spread counts from the first note, so a run does not become one chord', () =>
    expect(gatherChords([note(0, 60), note(0.04, 62), note(0.08, 64)], 0.05)).toEqual([
      { atSec: 0, keys: [60, 62] },
      { atSec: 0.08, keys: [64] },
    ]));

  it('hands are kept apart', () =>
    expect(
      gatherChords([note(0, 36, 'left'), note(0.01, 60, 'right'), note(0.02, 48, 'left')]),
    ).toEqual([
      { atSec: 0, hand: 'left', keys: [36, 48] },
      { atSec: 0.01, hand: 'right', keys: [60] },
    ]));

  it('a key struck again is a hit of its own, however soon', () =>
    expect(gatherChords([note(0, 60), note(0.02, 60)])).toHaveLength(2));

  it('what has no key is a hit of its own', () =>
    expect(
      gatherChords([
        { atSec: 0, hand: 'left' },
        { atSec: 0.02, hand: 'left' },
      ]),
    ).toHaveLength(2));

  it('nothing gives nothing', () => expect(gatherChords([])).toEqual([]));

  it('no note is lost or doubled, and the hits ascend', () =>
    fc.assert(
      fc.property(
        fc.array(
          fc.record({
            atSec: fc.double({ min: 0, max: 3, noNaN: true }),
            keyNumber: fc.integer({ min: 30, max: 40 }),
            hand: fc.constantFrom<HandName>('left', 'right'),
          }),
        ),
        (notes) => {
          const hits = gatherChords(notes);
          const keys = hits.flatMap((hit) => hit.keys).toSorted((a, b) => a - b);
          expect(keys).toEqual(notes.map((each) => each.keyNumber).toSorted((a, b) => a - b));
          expect(hits.every((hit, i) => i === 0 || hit.atSec >= hits[i - 1]!.atSec)).toBe(true);
        },
      ),
    ));
});
