import { describe, expect, it } from 'vitest';
import { voicingCandidates } from '../../../src/core/voicing/candidates.ts';
import { motion } from '../../../src/core/voicing/motion.ts';
import { voiceSection, voicingCost } from '../../../src/core/voicing/voiceTimeline.ts';
import {
  DEFAULT_VOICING,
  heldKeys,
  MOTION_ONLY,
  type VoicingSettings,
} from '../../../src/core/voicing/voicing.ts';
import { totalMotion } from '../../../src/core/voicing/walks.ts';
import { chord, valueOf } from '../../support/music.ts';
import { cheapestWays, chordsToVoice, pinned, rightText } from '../../support/voicings.ts';

/** Close positions from C3 to C6 over a bass below them that has one place; motion counts alone. */
const CLOSE_POSITIONS: VoicingSettings = {
  ...DEFAULT_VOICING,
  rightLowest: 48,
  rightHighest: 84,
  leftLowest: 24,
  leftHighest: 35,
  weights: MOTION_ONLY,
};

const C_MAJOR = [60, 64, 67];

/** The candidates of a chord whose right hands are nearest to C4 E4 G4, and how far they are. */
function nearestToC(symbol: string) {
  const candidates = voicingCandidates(chord(symbol), CLOSE_POSITIONS);
  const { ways, cost } = cheapestWays([candidates], ([only]) =>
    motion(C_MAJOR, heldKeys(only!).right),
  );
  return { hands: ways.map(([only]) => rightText(only!)), semitones: cost };
}

/** Chords of which the first is pinned to these right-hand keys. */
function pathFrom(right: readonly number[], symbols: string) {
  const [first, ...others] = chordsToVoice(symbols);
  return [pinned(first!, [36], right), ...others];
}

/** Every right hand that a cheapest path has at each chord, found by trying all paths. */
function cheapestPaths(right: readonly number[], symbols: string) {
  const [first, ...others] = pathFrom(right, symbols);
  const fixed = valueOf(voiceSection([first!], CLOSE_POSITIONS, 'path'));
  const layers = [
    fixed,
    ...others.map(({ chord: name }) => voicingCandidates(name, CLOSE_POSITIONS)),
  ];
  const { ways, cost } = cheapestWays(layers, (way) => voicingCost(way, CLOSE_POSITIONS, 'path'));
  return { cost, paths: ways.map((way) => way.map(rightText).join(', ')) };
}

describe('nearest inversions from C4 E4 G4', () => {
  // computed: least total over all close positions
  it.each([
    ['C', 0, ['60 64 67']],
    ['Am', 2, ['60 64 69']],
    ['Em', 1, ['59 64 67']],
    ['F', 3, ['60 65 69']],
    ['G', 3, ['59 62 67']],
    ['Dm', 5, ['62 65 69']],
    ['Fm', 2, ['60 65 68']],
    ['A♭', 2, ['60 63 68']],
    ['E♭', 3, ['58 63 67']],
    ['A', 3, ['61 64 69']],
    ['E', 2, ['59 64 68']],
    ['Bm', 4, ['59 62 66']],
    ['D', 6, ['57 62 66', '62 66 69']],
    ['B♭', 6, ['58 62 65', '62 65 70']],
  ])('%s is %i semitones away', (symbol, semitones, hands) =>
    expect(nearestToC(symbol)).toEqual({ hands, semitones }),
  );
});

describe('cheapest whole paths', () => {
  // computed by dynamic programming over close positions from C3 to C6; ties are all listed where published
  it.each([
    ['C F G C', 12],
    ['C G Am F', 9],
    ['C Am F G C', 12],
    ['C Am Dm G C', 12],
    ['C Em F G', 11],
    ['C F C G C', 12],
  ])('%s from C4 E4 G4 moves %i semitones', (symbols, semitones) => {
    const voicings = valueOf(voiceSection(pathFrom(C_MAJOR, symbols), CLOSE_POSITIONS, 'path'));
    expect(totalMotion(voicings, 'path')).toBe(semitones);
    expect(cheapestPaths(C_MAJOR, symbols).cost).toBe(semitones);
    expect(cheapestPaths(C_MAJOR, symbols).paths[0]).toBe(voicings.map(rightText).join(', '));
  });

  it('C F G C has two chords of G to choose from', () => {
    const third = cheapestPaths(C_MAJOR, 'C F G C').paths.map((path) => path.split(', ')[2]);
    expect([...new Set(third)]).toEqual(['59 62 67', '62 67 71']);
  });

  it.each([
    ['C G Am F', '60 64 67, 59 62 67, 60 64 69, 60 65 69'],
    ['C Am Dm G C', '60 64 67, 60 64 69, 62 65 69, 62 67 71, 64 67 72'],
  ])('%s has one cheapest path', (symbols, path) =>
    expect(cheapestPaths(C_MAJOR, symbols).paths).toEqual([path]),
  );

  it('Dm7 G7 Cmaj7 from D4 F4 A4 C5 moves 6 semitones', () => {
    const { cost, paths } = cheapestPaths([62, 65, 69, 72], 'Dm7 G7 Cmaj7');
    const chords = pathFrom([62, 65, 69, 72], 'Dm7 G7 Cmaj7');
    expect(cost).toBe(6);
    expect(paths).toEqual(['62 65 69 72, 62 65 67 71, 60 64 67 71']);
    expect(
      valueOf(voiceSection(chords, CLOSE_POSITIONS, 'path'))
        .map(rightText)
        .join(', '),
    ).toBe(paths[0]);
  });
});
