import { describe, expect, it } from 'vitest';
import { chordTones } from '../../../src/core/harmony/chord.ts';
import { type HeardFor, heardKeys } from '../../../src/core/harmony/heardKey.ts';
import { chromaOf } from '../../../src/core/harmony/pitch.ts';
import { chord, keyName } from '../../support/music.ts';

/** Chords of two seconds each, by symbols, with the shares of their notes. */
function heard(symbols: string): readonly [number[], HeardFor[]] {
  const chords = symbols.split(' ').map(chord);
  const notes = chords.flatMap((each) => chordTones(each).map((t) => chromaOf(t.pitchClass)));
  const shares = Array.from(
    { length: 12 },
    (_, i) => notes.filter((note) => note === i).length / notes.length,
  );
  const played = chords.map(({ root, quality, bass }) => ({
    chord: { root: chromaOf(root), quality, bass: chromaOf(bass ?? root) },
    durationSec: 2,
  }));
  return [shares, played];
}

function keyOf(symbols: string): string {
  return keyName(heardKeys(...heard(symbols))[0]!.key);
}

describe('the key that is heard', () => {
  it.each([
    ['C G Am F', 'C'],
    ['D A Bm G', 'D'],
    ['E♭ B♭ Cm A♭', 'E♭'],
    ['Am F C G Am', 'A minor'],
    ['Dm7 G7 Cmaj7 Cmaj7', 'C'],
    ['Em Am B7 Em', 'E minor'],
    ['F♯ B C♯7 F♯', 'F♯'],
    ['B♭m G♭ D♭ A♭ B♭m', 'B♭ minor'],
    ['E7 A7 E7 B7 A7 E7', 'E'],
  ])('of %s is %s', (symbols, key) => expect(keyOf(symbols)).toBe(key));

  it('has all 24 keys, whose confidences sum to 1', () => {
    const keys = heardKeys(...heard('C F G C'));
    expect(keys).toHaveLength(24);
    expect(keys.reduce((sum, { confidence }) => sum + confidence, 0)).toBeCloseTo(1, 9);
  });

  it('is less sure where a loop may be in either of two keys', () => {
    const [plain] = heardKeys(...heard('C F G7 C C F G7 C'));
    const [loop] = heardKeys(...heard('F C G Am'));
    expect(loop!.confidence).toBeLessThan(plain!.confidence);
  });

  it('is none without a chord', () =>
    expect(
      heardKeys(
        Array.from({ length: 12 }, () => 1 / 12),
        [{ chord: 'no-chord', durationSec: 3 }],
      ),
    ).toEqual([]));
});
