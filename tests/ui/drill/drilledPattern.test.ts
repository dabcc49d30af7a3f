import { expect, it } from 'vitest';
import type { Stage } from '../../../src/core/practice/stage.ts';
import { patternOfStage } from '../../../src/ui/drill/useDrilledPattern.ts';
import { section, slots, song } from '../../support/music.ts';
import { pattern } from '../../support/patterns.ts';
import { project } from '../../support/project.ts';

const VERSE_TO_CHORUS = project({
  song: song(
    [
      section('verse', { slots: slots('| C | F |'), patternId: 'p' }),
      section('chorus', { slots: slots('| Am | G |'), patternId: 'q' }),
    ],
    'verse chorus',
  ),
  patterns: ['p', 'q'].map((id) => pattern('4/4', { left: 'R---' }, { id })),
});

const JOIN: Stage = {
  id: 'join',
  passage: { kind: 'join', from: 'verse', to: 'chorus' },
  tool: 'none',
};

it('a join shows the pattern of the bar that is heard, and at rest the one that it begins with', () => {
  const shown = (bar?: number) => patternOfStage(VERSE_TO_CHORUS, JOIN, bar)?.id;
  expect([shown(), shown(1), shown(2)]).toEqual(['p', 'p', 'q']);
});

it('a stage on chords shows the pattern of the drill', () =>
  expect(patternOfStage(VERSE_TO_CHORUS, undefined, undefined)?.id).toBe('p'));
