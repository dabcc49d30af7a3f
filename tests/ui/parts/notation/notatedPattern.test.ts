import { describe, expect, it } from 'vitest';
import type { Pattern } from '../../../../src/core/rhythm/pattern.ts';
import { DEFAULT_VOICING } from '../../../../src/core/voicing/voicing.ts';
import { notatedPattern } from '../../../../src/ui/parts/notation/notatedPattern.ts';
import type { Notation } from '../../../../src/ui/parts/notation/notation.ts';
import { chord, errorOf, keyNamed, valueOf } from '../../../support/music.ts';
import { pattern } from '../../../support/patterns.ts';
import { shelf } from '../../../support/shelf.ts';

const HELD = { chord: chord('D'), voicing: DEFAULT_VOICING, key: keyNamed('D') };

function notated(p: Pattern): Notation {
  return valueOf(notatedPattern(p, HELD));
}

describe('a pattern as notation', () => {
  it('stands between repeat signs under its name and the key of the song', () => {
    const shown = notated(pattern('4/4', { left: 'R---'.repeat(2) }, { bars: 2, name: 'Two' }));
    expect(shown.title).toBe('Two');
    expect(shown.key).toEqual(keyNamed('D'));
    expect(shown.sheet.bars).toHaveLength(2);
    expect(shown.repeated).toEqual({ firstBar: 0, lastBar: 1 });
    expect(shown.words).toEqual([]);
  });

  it('has its ending as a bar of its own behind the repeat', () => {
    const shown = notated(pattern('4/4', { left: 'R---', ending: { left: 'R-5-' } }));
    expect(shown.repeated).toEqual({ firstBar: 0, lastBar: 0 });
    expect(shown.words).toEqual([{ bar: 1, text: 'ending' }]);
    const values = shown.sheet.bars.map((bar) => bar.staves.left[0]!.map((e) => e.written.value));
    expect(values).toEqual([[1], [2, 2]]);
  });

  it('is written straight, swing as words over it', () => {
    const swung = pattern('4/4', { left: 'R.R.R.RR' }, { swing: { level: 'eighth', ratio: 2 } });
    const shown = notated(swung);
    expect(shown.words).toEqual([{ bar: 0, text: 'eighths swing: triplet feel 2 : 1' }]);
    expect(shown.sheet).toEqual(notated({ ...swung, swing: { level: 'eighth', ratio: 1 } }).sheet);
  });

  it('goes round: what sounds over its last bar line is tied on', () => {
    const shown = notated(pattern('4/4', { right: '.......C' }));
    const last = (p: Pattern) => notated(p).sheet.bars[0]!.staves.right[0]!.at(-1)!.notes[0]!;
    expect(shown.sheet.bars[0]!.staves.right[0]!.at(-1)!.notes[0]!.tiedToNext).toBe(false);
    const long = pattern('4/4', { right: '.......C' });
    const held = { ...long, right: long.right.map((hit) => ({ ...hit, length: 480 })) };
    expect(last(held).tiedToNext).toBe(true);
  });

  it('says which chord no hands can play', () => {
    const narrow = { ...DEFAULT_VOICING, rightLowest: 60, rightHighest: 60 };
    const problem = notatedPattern(pattern('4/4', { left: 'R---' }), { ...HELD, voicing: narrow });
    expect(errorOf(problem).span.chord).toEqual(chord('D'));
  });

  it('is found for every pattern of the shelf', () => {
    for (const { pattern: p } of shelf())
      expect(notated(p).sheet.bars).toHaveLength(p.bars + (p.ending ? 1 : 0));
  });
});
