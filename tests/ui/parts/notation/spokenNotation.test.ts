import { describe, expect, it } from 'vitest';
import type { Pattern } from '../../../../src/core/rhythm/pattern.ts';
import { spokenNotation } from '../../../../src/ui/parts/notation/spokenNotation.ts';
import { keyNamed } from '../../../support/music.ts';
import { pattern } from '../../../support/patterns.ts';
import { notationOf } from '../../../support/sheets.ts';

function spoken(p: Pattern, chart: string, key = 'C'): string {
  return spokenNotation(notationOf(p, chart, { key: keyNamed(key) }));
}

describe('a sheet in words', () => {
  it('says what it is, then the chord and each hand with its counts', () =>
    expect(spoken(pattern('4/4', { left: 'R---5---', right: '..C--C..' }), '| C |')).toBe(
      'Pattern, 1 bar of 4/4 in C major. Bar 1, C: ' +
        'right hand C4 E4 and G4 on 2, on 3 and; left hand C2 on 1, G2 on 3.',
    ));

  it('names signs, silence and bars that are the same', () =>
    expect(spoken(pattern('3/4', { right: '.C.' }), '| E♭ | E♭ | F♯m |', 'B♭')).toBe(
      'Pattern, 3 bars of 3/4 in B flat major. ' +
        'Bar 1, E flat: right hand E flat 4 G4 and B flat 4 on 2; left hand rests. ' +
        'Bar 2: right hand E flat 4 G4 and B flat 4 on 2; left hand rests. ' +
        'Bar 3, F sharp m: right hand F sharp 4 A4 and C sharp 5 on 2; left hand rests.',
    ));

  it('tells a bar that is like the one before it', () =>
    expect(spoken(pattern('3/4', { left: 'R--' }), '| C | C | C |')).toMatch(
      /Bar 2: right hand rests; left hand C2 on 1\. Bar 3 is the same\.$/,
    ));

  it('says what is held from before and does not strike it again', () => {
    const text = spoken(pattern('4/4', { left: '...R----' }, { bars: 2 }), '| C | C |');
    expect(text).toContain('Bar 1, C: right hand rests; left hand C2 on 4.');
    expect(text).toContain('Bar 2: right hand rests; left hand C2 held from before.');
  });

  it('places triplets, and 6/8 in its two beats', () => {
    const triplet = pattern('4/4', { right: 'T.T.T.' }, { divisions: [3, 1, 1, 1] });
    expect(spoken(triplet, '| C |')).toContain('G4 on 1, on 1 a of the triplet, on 3');
    expect(spoken(pattern('6/8', { right: 'TT...T' }), '| C |')).toContain(
      'G4 on 1, on 1 and, on 2 a;',
    );
  });

  it('says how notes are touched', () => {
    const p = pattern('4/4', { right: 'TT..' });
    const [first, second] = p.right;
    const right = [
      { ...first!, touch: 'accent' as const, held: false },
      { ...second!, touch: 'ghost' as const },
    ];
    expect(spoken({ ...p, right }, '| C |')).toContain(
      'right hand G4 short accented on 1, G4 hardly heard on 2',
    );
  });

  it('has no counts where chords stand in a row', () => {
    const row = notationOf(pattern('4/4', { right: 'C-C-' }), '| C / F / |', { kind: 'chords' });
    expect(spokenNotation(row)).toBe(
      'Pattern, chords in C major. ' +
        'Bar 1, C, F: right hand C4 E4 and G4, F4 A4 and C5; left hand rests.',
    );
  });
});
