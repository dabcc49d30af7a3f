import { describe, expect, it } from 'vitest';
import { offeredFills } from '../../src/app/offeredFills.ts';
import { patternLoad } from '../../src/app/patternLoad.ts';
import { endingPhrase } from '../../src/core/rhythm/endingPhrase.ts';
import { HAND_LIMITS } from '../../src/core/rhythm/handLimits.ts';
import { valueOf } from '../support/music.ts';
import { pattern } from '../support/patterns.ts';
import { project } from '../support/project.ts';

const EIGHTHS = pattern('4/4', { left: 'R---R---', right: 'CCCCCCCC' });
const PROJECT = project({ patterns: [EIGHTHS] });

describe('the fills that are offered', () => {
  it('ask nothing that is too much for the hands on the held chord', () => {
    const fills = offeredFills(PROJECT, EIGHTHS, 84);
    expect(fills.length).toBeGreaterThan(5);
    for (const { ending } of fills) {
      const { left, right } = valueOf(patternLoad(PROJECT, endingPhrase(EIGHTHS, ending), 84));
      expect([...left.strains, ...right.strains]).toEqual([]);
    }
  });

  it('are still offered for a pattern that is itself too much, as far as they add nothing', () => {
    const wild = pattern('4/4', { left: 'R---R---', right: 'CCCCCCCC' });
    const kinds = offeredFills(PROJECT, wild, 230).map(({ kind }) => kind);
    expect(kinds).toContain('let-ring');
    expect(kinds).not.toContain('hand-to-hand');
  });

  it('are fewer for slower hands', () => {
    const slow = { ...HAND_LIMITS, strikeGapSec: 0.5, repeatGapSec: 0.5 };
    const usual = offeredFills(PROJECT, EIGHTHS, 100);
    expect(offeredFills(PROJECT, EIGHTHS, 100, slow).length).toBeLessThan(usual.length);
  });
});
