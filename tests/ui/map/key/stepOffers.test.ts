import { expect, it } from 'vitest';
import { formatChordSymbol } from '../../../../src/core/harmony/chordSymbol.ts';
import type { MinorForm } from '../../../../src/core/harmony/key.ts';
import type { KeyChord } from '../../../../src/core/harmony/keyChords.ts';
import { formatNumeral } from '../../../../src/core/harmony/numerals.ts';
import { stepOffers } from '../../../../src/ui/map/key/stepOffers.ts';
import { KEYS } from '../../../support/keys.ts';
import { keyNamed } from '../../../support/music.ts';

function named(offer: KeyChord | undefined): string {
  return offer ? `${formatChordSymbol(offer.chord)} ${formatNumeral(offer.numeral)}` : '-';
}

function lines(key: string, form: MinorForm): string[] {
  return stepOffers(keyNamed(key), form).map(({ triad, seventh, dominant, substitute }) =>
    [triad, seventh, dominant, substitute].map(named).join(', '),
  );
}

// Diatonic chords, applied dominants, tritone substitutes: docs/sources.md.
it('are, in C major, the chords of every step and what leads there', () =>
  expect(lines('C', 'natural')).toEqual([
    'C I, Cmaj7 Imaj7, G7 V7, D♭7 ♭II7',
    'Dm ii, Dm7 ii7, A7 V7/ii, E♭7 ♭II7/ii',
    'Em iii, Em7 iii7, B7 V7/iii, F7 ♭II7/iii',
    'F IV, Fmaj7 IVmaj7, C7 V7/IV, G♭7 ♭II7/IV',
    'G V, G7 V7, D7 V7/V, A♭7 ♭II7/V',
    'Am vi, Am7 vi7, E7 V7/vi, B♭7 ♭II7/vi',
    'Bdim vii°, Bm7♭5 viiø7, -, -',
  ]));

it('are, in the melodic minor, without what leads to the steps of the natural one', () =>
  expect(lines('A minor', 'melodic')).toEqual([
    'Am i, AmMaj7 iMaj7, E7 V7, B♭7 ♭II7',
    'Bm ii, Bm7 ii7, -, -',
    'C+ III+, Cmaj7♯5 IIImaj7♯5, -, -',
    'D IV, D7 IV7, A7 V7/iv, E♭7 ♭II7/iv',
    'E V, E7 V7, B7 V7/V, F7 ♭II7/V',
    'F♯dim vi°, F♯m7♭5 viø7, -, -',
    'G♯dim vii°, G♯m7♭5 viiø7, -, -',
  ]));

it('lead a fifth down or a semitone down to their step, in every key', () => {
  for (const key of KEYS)
    for (const { triad, dominant, substitute } of stepOffers(key, 'natural')) {
      expect(dominant === undefined).toBe(substitute === undefined);
      if (dominant?.target) expect(dominant.target.root).toEqual(triad.chord.root);
    }
});
