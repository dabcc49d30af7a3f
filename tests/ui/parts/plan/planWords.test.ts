import { expect, it } from 'vitest';
import { itemWords, reasonWords, tempoWords } from '../../../../src/ui/parts/plan/planWords.ts';

const named = {
  song: { sections: [{ id: 'v', name: 'Verse' }] },
  patterns: [{ id: 'p', name: 'Slow four' }],
};
const topic = {
  kind: 'drill',
  minutes: 3,
  startBpm: 50,
  goalBpm: 84,
  why: { kind: 'keep' },
} as const;

it('says in words what each line of a plan is', () => {
  const words = [
    { ...topic, target: { kind: 'pattern', patternId: 'p' } },
    { ...topic, target: { kind: 'section', sectionId: 'v' } },
    { ...topic, target: { kind: 'join', from: 'v', to: 'v' } },
    { ...topic, target: { kind: 'song' } },
    { kind: 'rest', minutes: 1 },
    { kind: 'run-through', minutes: 4, bpm: 84 },
  ] as const;
  expect(words.map((item) => itemWords(item, named))).toEqual([
    '“Slow four” on one chord',
    'Verse',
    'Verse to Verse',
    'The whole song',
    'Rest: hands off the keys',
    'The song from beginning to end',
  ]);
});

it('says why, and how fast', () => {
  expect(reasonWords({ kind: 'not-at-tempo' })).toBe('not yet played clean');
  expect(reasonWords({ kind: 'not-at-tempo', cleanBpm: 60 })).toBe('clean at 60 so far');
  expect(tempoWords(50, 84)).toBe('from 50 to 84');
  expect(tempoWords(84, 84)).toBe('at 84');
});
