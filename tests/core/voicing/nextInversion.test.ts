import { describe, expect, it } from 'vitest';
import { voicingCandidates, voicingOfKeys } from '../../../src/core/voicing/candidates.ts';
import { nextInversion } from '../../../src/core/voicing/nextInversion.ts';
import { DEFAULT_VOICING, heldKeys } from '../../../src/core/voicing/voicing.ts';
import { chord } from '../../support/music.ts';
import { handsText } from '../../support/voicings.ts';

const C = chord('C');
const voicing = (left: number[], right: number[]) => voicingOfKeys(C, { left, right });

describe('nextInversion', () => {
  it('turns the right hand up or down and keeps the left', () => {
    const root = voicing([36], [60, 64, 67]);
    expect(handsText(nextInversion(root, C, 'up', DEFAULT_VOICING)!)).toBe('36 | 64 67 72');
    expect(handsText(nextInversion(root, C, 'down', DEFAULT_VOICING)!)).toBe('36 | 55 60 64');
  });

  it('ends where the range ends', () => {
    expect(nextInversion(voicing([36], [72, 76, 79]), C, 'up', DEFAULT_VOICING)).toBeUndefined();
    expect(nextInversion(voicing([36], [55, 60, 64]), C, 'down', DEFAULT_VOICING)).toBeUndefined();
  });

  it('does not turn down into the left hand', () =>
    expect(
      nextInversion(voicing([48, 55], [60, 64, 67]), C, 'down', DEFAULT_VOICING),
    ).toBeUndefined());

  it('finds its way from hands that the player made up', () => {
    const own = voicing([36], [62, 64, 67]);
    expect(handsText(nextInversion(own, C, 'up', DEFAULT_VOICING)!)).toBe('36 | 64 67 72');
    expect(handsText(nextInversion(own, C, 'down', DEFAULT_VOICING)!)).toBe('36 | 60 64 67');
  });

  it('visits every inversion once on the way up, and the same on the way down', () => {
    const g7 = chord('G7');
    const hands = voicingCandidates(g7, { ...DEFAULT_VOICING, leftLowest: 31, leftHighest: 42 });
    const up = [hands[0]!];
    for (let next = hands[0]; next; next = nextInversion(next, g7, 'up', DEFAULT_VOICING))
      if (next !== hands[0]) up.push(next);
    const down = [up.at(-1)!];
    for (let next = down[0]; next; next = nextInversion(next, g7, 'down', DEFAULT_VOICING))
      if (next !== down[0]) down.push(next);
    expect(up.map((v) => heldKeys(v).right)).toEqual(hands.map((v) => heldKeys(v).right));
    expect(down.toReversed()).toEqual(up);
  });
});
