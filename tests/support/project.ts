import type { PracticeSettings } from '../../src/core/practice/practiceSettings.ts';
import type { Project } from '../../src/core/project.ts';
import { DEFAULT_VOICING } from '../../src/core/voicing/voicing.ts';
import { chord, section, slots, song } from './music.ts';
import { pattern } from './patterns.ts';

/** Everything on, one bar of count-in, a drill of one bar on C from 60 to 72 in steps of 6, two passes a rung. */
export const PRACTICE: PracticeSettings = {
  click: { on: true, beats: 'all', level: 0.5, countInBars: 1 },
  hands: 'both',
  band: false,
  drill: {
    chord: chord('C'),
    ladder: {
      startBpm: 60,
      goalBpm: 72,
      step: { kind: 'bpm', bpm: 6 },
      passesPerRung: 2,
      climb: 'always',
    },
    barsPerPass: 1,
    countInAt: 'start',
  },
};

/** A project of one two-bar verse on pattern `p`, with what `parts` says instead. */
export function project(parts: Partial<Project> = {}): Project {
  const verse = section('verse', { slots: slots('| C | F |'), patternId: 'p' });
  return {
    id: 'test project',
    song: song([verse], 'verse'),
    patterns: [pattern('4/4', { left: 'R---', right: 'C-C-' })],
    voicing: DEFAULT_VOICING,
    practice: PRACTICE,
    ...parts,
  };
}
