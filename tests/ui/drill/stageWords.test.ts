import { expect, it } from 'vitest';
import type { Stage } from '../../../src/core/practice/stage.ts';
import { stageWords } from '../../../src/ui/drill/stageWords.ts';
import { chord, section, song } from '../../support/music.ts';

const NAMED = {
  song: song([section('v', { name: 'Verse' }), section('c', { name: 'Chorus' })], 'v c'),
};
const ONE_CHORD = { kind: 'one-chord' } as const;
const TURNS = { kind: 'two-chords', first: chord('C'), second: chord('F♯m7') } as const;

it.each<[Omit<Stage, 'id'>, string]>([
  [{ passage: ONE_CHORD, tool: 'right' }, 'Left hand alone'],
  [{ passage: ONE_CHORD, tool: 'left', level: 3 }, 'Right hand alone, level 3'],
  [{ passage: ONE_CHORD, tool: 'none', level: 2 }, 'Both hands, level 2'],
  [{ passage: ONE_CHORD, tool: 'both' }, 'Both hands'],
  [{ passage: ONE_CHORD }, 'One chord'],
  [{ passage: TURNS, tool: 'none' }, 'C to F♯m7'],
  [{ passage: { kind: 'section', sectionId: 'v' }, tool: 'right' }, 'Verse, left hand'],
  [
    { passage: { kind: 'join', from: 'v', to: 'c' }, tool: 'none', level: 1 },
    'Verse to Chorus, level 1',
  ],
  [{ passage: { kind: 'section', sectionId: 'x' } }, 'A section that is gone'],
  [{ passage: { kind: 'join', from: 'v', to: 'x' } }, 'A join that is gone'],
])('says of %j: %s', (stage, words) =>
  expect(stageWords({ id: 'a', ...stage }, NAMED)).toBe(words),
);
