import { describe, expect, it } from 'vitest';
import { DEFAULT_VOICING, heldKeys } from '../../../src/core/voicing/voicing.ts';
import { nearestWalk, rootPositionWalk, totalMotion } from '../../../src/core/voicing/walks.ts';
import { chordsToVoice, pinned, rightText } from '../../support/voicings.ts';

describe('rootPositionWalk', () => {
  it('stands every chord on its root', () => {
    const voicings = rootPositionWalk(chordsToVoice('C G Am F'), DEFAULT_VOICING)!;
    const lowest = voicings.map((voicing) => heldKeys(voicing).right[0]! % 12);
    expect(lowest).toEqual([0, 7, 9, 5]);
  });

  it('stands chords without a root in the hand on their lowest degree', () => {
    const [shell] = rootPositionWalk(chordsToVoice('C7'), { ...DEFAULT_VOICING, manner: 'shell' })!;
    expect(rightText(shell!)).toBe('64 70');
  });

  it('keeps pinned hands and passes over N.C.', () => {
    const [c, rest, f] = chordsToVoice('C N.C. F');
    const voicings = rootPositionWalk(
      [pinned(c!, [36], [64, 67, 72]), rest!, f!],
      DEFAULT_VOICING,
    )!;
    expect(voicings.map(rightText)).toEqual(['64 67 72', '', '65 69 72']);
  });
});

describe('nearestWalk', () => {
  // computed: from C4 E4 G4 each next chord's nearest inversion
  it('goes to the nearest inversion of each next chord', () => {
    const [c, ...others] = chordsToVoice('C F C G');
    const voicings = nearestWalk([pinned(c!, [36], [60, 64, 67]), ...others], DEFAULT_VOICING)!;
    expect(voicings.map(rightText)).toEqual(['60 64 67', '60 65 69', '60 64 67', '59 62 67']);
  });

  it('has no way where a chord cannot be played', () =>
    expect(
      nearestWalk(chordsToVoice('C'), { ...DEFAULT_VOICING, spanSemitones: 2 }),
    ).toBeUndefined());
});

describe('totalMotion', () => {
  // computed
  it('adds up the motion of the right hand, in a loop with the way back', () => {
    const voicings = nearestWalk(
      [
        pinned(chordsToVoice('C')[0]!, [36], [60, 64, 67]),
        ...chordsToVoice('N.C.'),
        pinned(chordsToVoice('F')[0]!, [41], [60, 65, 69]),
        pinned(chordsToVoice('G')[0]!, [43], [59, 62, 67]),
      ],
      DEFAULT_VOICING,
    )!;
    expect(totalMotion(voicings, 'path')).toBe(3 + 6);
    expect(totalMotion(voicings, 'loop')).toBe(3 + 6 + 3);
    expect(totalMotion([], 'loop')).toBe(0);
  });
});
