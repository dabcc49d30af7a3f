import { expect, it } from 'vitest';
import {
  arrangementWords,
  distanceWords,
  playedKey,
} from '../../../../src/ui/parts/transport/arrangementWords.ts';
import { keyNamed } from '../../../support/music.ts';

it('names the key that is heard, spelled plainly, and the level where there is one', () => {
  expect(arrangementWords(keyNamed('D'), { semitones: 0 })).toBe('In D');
  expect(arrangementWords(keyNamed('D'), { semitones: 1 })).toBe('In E♭');
  expect(arrangementWords(keyNamed('B minor'), { semitones: -2, level: 2 })).toBe(
    'In A minor, level 2',
  );
});

it('says how far that is from what is written', () => {
  expect([0, 1, -2, 12, -7].map(distanceWords)).toEqual([
    'as written',
    'a half step higher',
    'a whole step lower',
    'an octave higher',
    'a fifth lower',
  ]);
});

it('comes back to the same tonic an octave away', () => {
  expect(playedKey(keyNamed('F♯ minor'), 12)).toEqual(keyNamed('F♯ minor'));
});
