import { describe, expect, it } from 'vitest';
import type { SourcePart, Stroke } from '../../../src/core/rhythm/sources.ts';
import { SOURCE_PARTS } from '../../../src/core/rhythm/sources.ts';
import { PULLED_TONES, pullStroke } from '../../../src/state/edits/pullStroke.ts';
import { pattern } from '../../support/patterns.ts';
import { project } from '../../support/project.ts';

function stroke(at: number, parts: Partial<Stroke> = {}): Stroke {
  return { at, length: 240, strength: 0.7, presence: 1, what: ['unpitched'], ...parts };
}

/** A project whose pattern has one source with one stroke, and nothing or `left` in the left hand. */
function withStroke(part: SourcePart, one: Stroke, left = '........') {
  const sources = [{ id: 'lane', name: part, part, strokes: [one] }];
  return project({ patterns: [pattern('4/4', { left, right: '........' }, { sources })] });
}

/** Where a stroke at a tick comes to stand in the left hand. */
function pulledTo(tick: number): number | undefined {
  const before = withStroke('kick', stroke(tick));
  return pullStroke('p', 'lane', tick, 'left')(before).patterns[0]?.left[0]?.at;
}

describe('a stroke pulled into a hand', () => {
  it('becomes a hit at its place, as long and as strong', () => {
    const pull = pullStroke('p', 'lane', 480, 'left');
    const hitOf = (strength: number) =>
      pull(withStroke('kick', stroke(480, { strength }))).patterns[0]?.left[0];
    expect(hitOf(0.7)).toEqual({
      at: 480,
      length: 240,
      play: ['root'],
      touch: 'plain',
      held: true,
    });
    const touches = [0.1, 0.35, 0.5, 0.55, 0.8, 0.9].map((strength) => hitOf(strength)?.touch);
    expect(touches).toEqual(['ghost', 'ghost', 'ghost', 'plain', 'plain', 'accent']);
  });

  it.each(SOURCE_PARTS)('plays what is usual for the %s where the stroke has no pitch', (part) => {
    const before = withStroke(part, stroke(0));
    const pulled = (hand: 'left' | 'right') =>
      pullStroke('p', 'lane', 0, hand)(before).patterns[0]?.[hand][0]?.play;
    expect(pulled('left')).toEqual([PULLED_TONES[part].left]);
    expect(pulled('right')).toEqual([PULLED_TONES[part].right]);
  });

  it('plays the tones it names as far as the hand has them', () => {
    const bass = withStroke('bass', stroke(0, { what: ['fifth'] }));
    expect(pullStroke('p', 'lane', 0, 'left')(bass).patterns[0]?.left[0]?.play).toEqual(['fifth']);
    expect(pullStroke('p', 'lane', 0, 'right')(bass).patterns[0]?.right[0]?.play).toEqual([
      'bottom',
    ]);
    const picked = withStroke('picking', stroke(0, { what: ['voice-2', 'top'] }));
    expect(pullStroke('p', 'lane', 0, 'right')(picked).patterns[0]?.right[0]?.play).toEqual([
      'top',
      'voice-2',
    ]);
  });

  it('comes to the nearest step, the earlier of two', () =>
    expect([100, 120, 130].map(pulledTo)).toEqual([0, 0, 240]));

  it('joins a hit that stands there', () => {
    const before = withStroke('bass', stroke(0, { what: ['octave'] }), 'R-......');
    expect(pullStroke('p', 'lane', 0, 'left')(before).patterns[0]?.left).toMatchObject([
      { at: 0, length: 480, play: ['root', 'octave'] },
    ]);
  });

  it.each([
    ['no stroke', 'p', 'lane', 240],
    ['no source', 'p', 'other', 0],
    ['no pattern', 'q', 'lane', 0],
  ])('is nothing where there is %s', (_, patternId, sourceId, tick) => {
    const before = withStroke('kick', stroke(0));
    expect(pullStroke(patternId, sourceId, tick, 'left')(before)).toBe(before);
  });
});
