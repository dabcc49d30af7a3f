import { describe, expect, it } from 'vitest';
import { likeness, likestPatterns } from '../../../src/core/rhythm/likeness.ts';
import type { Pattern } from '../../../src/core/rhythm/pattern.ts';
import type { Source } from '../../../src/core/rhythm/sources.ts';
import { meter } from '../../support/music.ts';
import { pattern, source } from '../../support/patterns.ts';
import { shelf } from '../../support/shelf.ts';

const grid = pattern('4/4', { left: '........' });
const groove = (...sources: readonly Source[]) => ({ ...grid, sources });

const boomChick = groove(source(grid, 'kick', 'x...x...'), source(grid, 'snare', '..x...x.'));
const hands = pattern('4/4', { left: 'R---5---', right: '..C---C-' });

describe('likeness', () => {
  it('is 1 where the hands strike as the band does', () =>
    expect(likeness(boomChick, hands)).toBeCloseTo(1, 9));

  it('is 0 where they never meet, in another meter and without a groove', () => {
    const off = pattern('4/4', { left: '.R.R.R.R', right: 'C...C...' });
    expect(likeness(boomChick, off)).toBe(0);
    expect(likeness({ ...boomChick, meter: meter('3/4') }, hands)).toBe(0);
    expect(likeness(groove(), hands)).toBe(0);
  });

  it('falls with every stroke that the hands lack', () => {
    const busy = groove(source(grid, 'kick', 'x.xxx.xx'), source(grid, 'snare', '..x...x.'));
    const like = likeness(busy, hands);
    expect(like).toBeGreaterThan(0.5);
    expect(like).toBeLessThan(likeness(boomChick, hands));
  });

  it('compares only voices that the groove has, and leaves the time keepers out', () => {
    const kick = source(grid, 'kick', 'x...x...');
    expect(likeness(groove(kick), hands)).toBeCloseTo(1, 9);
    expect(likeness(groove(kick, source(grid, 'hi-hat', 'xxxxxxxx')), hands)).toBeCloseTo(1, 9);
  });

  it('compares one bar with two', () => {
    const two = pattern('4/4', { left: 'R-5-R-5-' }, { bars: 2 });
    const twoBars: Pattern = { ...two, sources: [source(two, 'bass', 'R-5-R-5-')] };
    expect(likeness(twoBars, pattern('4/4', { left: 'R-5-' }))).toBeCloseTo(1, 9);
    expect(likeness(boomChick, two)).toBeGreaterThan(0);
  });
});

describe('the likest patterns', () => {
  it('put the country two-beat first for boom and chick', () => {
    expect(likestPatterns(boomChick, shelf())[0]?.pattern.id).toBe('country-two-beat');
  });

  it('find a pattern by its own band', () => {
    const gospel = shelf().find(({ pattern: p }) => p.id === 'bembe')!;
    expect(likestPatterns(gospel.pattern, shelf())[0]?.pattern.id).toBe('bembe');
  });

  it('are all in the groove’s meter', () => {
    const waltzes = likestPatterns({ ...boomChick, meter: meter('3/4') }, shelf());
    expect(waltzes.length).toBeGreaterThan(3);
    expect(waltzes.every(({ pattern: p }) => p.meter.beats === 3)).toBe(true);
  });
});
