import * as fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { type ReadChord, readChords } from '../../../src/core/harmony/chordReadings.ts';
import { formatChordSymbol } from '../../../src/core/harmony/chordSymbol.ts';
import { spelledChord } from '../../../src/core/harmony/soundingChord.ts';
import { slice, slices } from '../../support/heardSlices.ts';
import { majorKey } from '../../support/music.ts';

function symbolOf({ chord }: Pick<ReadChord, 'chord'>): string {
  return chord === 'no-chord' ? 'N.C.' : formatChordSymbol(spelledChord(chord, majorKey('C')));
}

function symbolsOf(read: readonly ReadChord[]): string {
  return read.map(symbolOf).join(' ');
}

describe('the chords of slices', () => {
  it.each(['C F G Am', 'Dm7 G7 Cmaj7', 'Bm7♭5 E7 Am', 'Gsus4 G', 'Bdim C', 'E♭ A♭ B♭7'])(
    'are heard as they sound: %s',
    (symbols) => expect(symbolsOf(readChords(slices(symbols)))).toBe(symbols),
  );

  it('are one where they do not change', () => {
    const [read] = readChords(slices('C C C'));
    expect(read).toMatchObject({ first: 0, last: 2 });
  });

  it('are told with their bass where another note than the root lies lowest', () => {
    expect(symbolsOf(readChords(slices('C C/E F')))).toBe('C F');
    expect(symbolsOf(readChords(slices('C/E F')))).toBe('C/E F');
  });

  it('do not change for a passing sound between beats', () => {
    const passing = { ...slice('F', 'between'), durationSec: 0.1 };
    expect(symbolsOf(readChords([slice('C'), passing, slice('C', 'beat')]))).toBe('C');
  });

  it('are none in silence and where all notes sound alike', () => {
    expect(symbolsOf(readChords(slices('- -')))).toBe('N.C.');
    expect(symbolsOf(readChords(slices('N N N N')))).toBe('N.C.');
    expect(symbolsOf(readChords(slices('- C C -')))).toBe('N.C. C N.C.');
  });

  it('have alternatives, likeliest first; with the chord itself they weigh 1 at most', () => {
    for (const read of readChords(slices('Am7 C G'))) {
      const weights = read.alternatives.map(({ weight }) => weight);
      expect(weights).toEqual(weights.toSorted((a, b) => b - a));
      expect(read.weight + weights.reduce((sum, x) => sum + x, 0)).toBeLessThanOrEqual(1 + 1e-9);
      expect(read.alternatives.map(symbolOf)).not.toContain(symbolOf(read));
    }
  });

  it('are less sure where less is heard', () => {
    const [long] = readChords(slices('C C C'));
    const [short] = readChords([{ ...slice('C'), durationSec: 0.3 }]);
    expect(long!.weight).toBeGreaterThan(short!.weight);
  });

  it('cover all slices, one after the other', () =>
    fc.assert(
      fc.property(
        fc.array(fc.constantFrom('C', 'F', 'G7', 'Am', 'N', '-'), { maxLength: 12 }),
        (symbols) => {
          const read = readChords(symbols.map((symbol) => slice(symbol)));
          const covered = read.flatMap(({ first, last }) =>
            Array.from({ length: last - first + 1 }, (_, i) => first + i),
          );
          expect(covered).toEqual([...symbols.keys()]);
        },
      ),
    ));
});
