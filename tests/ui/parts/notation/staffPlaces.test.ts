import { describe, expect, it } from 'vitest';
import {
  pitchAtPlace,
  signatureSigns,
  staffPlace,
} from '../../../../src/ui/parts/notation/staffPlaces.ts';
import { keyNamed } from '../../../support/music.ts';

describe('places on the staves', () => {
  // Common practice: clefs name G4 on the second line and F3 on the second line from the top.
  it.each([
    ['right', 'G', 4, -2],
    ['right', 'C', 4, -6],
    ['right', 'F', 5, 4],
    ['left', 'F', 3, 2],
    ['left', 'C', 4, 6],
    ['left', 'E', 1, -13],
  ] as const)('on the staff of the %s hand %s%i stands at %i', (hand, letter, octave, place) => {
    expect(staffPlace({ letter, octave }, hand)).toBe(place);
    expect(pitchAtPlace(place, hand)).toEqual({ letter, octave });
  });
});

describe('key signatures', () => {
  // reference.md 2.1; the order of the signs is common practice.
  it.each([
    ['C', ''],
    ['G', 'F♯'],
    ['D', 'F♯ C♯'],
    ['E', 'F♯ C♯ G♯ D♯'],
    ['C♯', 'F♯ C♯ G♯ D♯ A♯ E♯ B♯'],
    ['F', 'B♭'],
    ['E♭', 'B♭ E♭ A♭'],
    ['C♭', 'B♭ E♭ A♭ D♭ G♭ C♭ F♭'],
    ['A minor', ''],
    ['F♯ minor', 'F♯ C♯ G♯'],
    ['E♭ minor', 'B♭ E♭ A♭ D♭ G♭ C♭'],
  ])('of %s is %s', (name, signs) => {
    const written = signatureSigns(keyNamed(name)).map(
      ({ letter, alteration }) => letter + (alteration > 0 ? '♯' : '♭'),
    );
    expect(written.join(' ')).toBe(signs);
  });

  it('of a key with double signs is that of the same key spelled plainly', () =>
    expect(signatureSigns(keyNamed('G♯'))).toEqual(signatureSigns(keyNamed('A♭'))));

  // Common practice: sharps zigzag downwards from the top line, flats from the middle line.
  it('stands on its usual places', () => {
    expect(signatureSigns(keyNamed('C♯')).map(({ place }) => place)).toEqual([
      4, 1, 5, 2, -1, 3, 0,
    ]);
    expect(signatureSigns(keyNamed('C♭')).map(({ place }) => place)).toEqual([
      0, 3, -1, 2, -2, 1, -3,
    ]);
  });
});
