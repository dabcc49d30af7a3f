import { describe, expect, it } from 'vitest';
import { fifthsOf, scaleOf } from '../../../src/core/harmony/key.ts';
import { formatPitchClass } from '../../../src/core/harmony/pitch.ts';
import { majorKey, minorKey } from '../../support/music.ts';

/** The 15 signatures (docs/sources.md#key-signatures): fifths, major and minor tonic, both scales. */
const SIGNATURES = [
  [-7, 'C♭', 'A♭', 'C♭ D♭ E♭ F♭ G♭ A♭ B♭', 'A♭ B♭ C♭ D♭ E♭ F♭ G♭'],
  [-6, 'G♭', 'E♭', 'G♭ A♭ B♭ C♭ D♭ E♭ F', 'E♭ F G♭ A♭ B♭ C♭ D♭'],
  [-5, 'D♭', 'B♭', 'D♭ E♭ F G♭ A♭ B♭ C', 'B♭ C D♭ E♭ F G♭ A♭'],
  [-4, 'A♭', 'F', 'A♭ B♭ C D♭ E♭ F G', 'F G A♭ B♭ C D♭ E♭'],
  [-3, 'E♭', 'C', 'E♭ F G A♭ B♭ C D', 'C D E♭ F G A♭ B♭'],
  [-2, 'B♭', 'G', 'B♭ C D E♭ F G A', 'G A B♭ C D E♭ F'],
  [-1, 'F', 'D', 'F G A B♭ C D E', 'D E F G A B♭ C'],
  [0, 'C', 'A', 'C D E F G A B', 'A B C D E F G'],
  [1, 'G', 'E', 'G A B C D E F♯', 'E F♯ G A B C D'],
  [2, 'D', 'B', 'D E F♯ G A B C♯', 'B C♯ D E F♯ G A'],
  [3, 'A', 'F♯', 'A B C♯ D E F♯ G♯', 'F♯ G♯ A B C♯ D E'],
  [4, 'E', 'C♯', 'E F♯ G♯ A B C♯ D♯', 'C♯ D♯ E F♯ G♯ A B'],
  [5, 'B', 'G♯', 'B C♯ D♯ E F♯ G♯ A♯', 'G♯ A♯ B C♯ D♯ E F♯'],
  [6, 'F♯', 'D♯', 'F♯ G♯ A♯ B C♯ D♯ E♯', 'D♯ E♯ F♯ G♯ A♯ B C♯'],
  [7, 'C♯', 'A♯', 'C♯ D♯ E♯ F♯ G♯ A♯ B♯', 'A♯ B♯ C♯ D♯ E♯ F♯ G♯'],
] as const;

function spelled(scale: ReturnType<typeof scaleOf>): string {
  return scale.map(formatPitchClass).join(' ');
}

describe('key signatures', () => {
  it.each(SIGNATURES)(
    '%i fifths: %s major and %s minor',
    (fifths, major, minor, ofMajor, ofMinor) => {
      expect(fifthsOf(majorKey(major))).toBe(fifths);
      expect(fifthsOf(minorKey(minor))).toBe(fifths);
      expect(spelled(scaleOf(majorKey(major)))).toBe(ofMajor);
      expect(spelled(scaleOf(minorKey(minor)))).toBe(ofMinor);
    },
  );

  it('of keys that are not written lie outside −7 to 7', () => {
    expect(fifthsOf(majorKey('G♯'))).toBe(8);
    expect(fifthsOf(majorKey('F♭'))).toBe(-8);
    expect(fifthsOf(minorKey('D♭'))).toBe(-8);
  });
});
