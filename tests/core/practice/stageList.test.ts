import { expect, it } from 'vitest';
import { type Stage, samePassage } from '../../../src/core/practice/stage.ts';
import {
  stageThrough,
  withAdded,
  withChanged,
  withMoved,
  without,
} from '../../../src/core/practice/stageList.ts';
import { chord } from '../../support/music.ts';

const ONE_CHORD = { kind: 'one-chord' } as const;
const JOIN = { kind: 'join', from: 'verse', to: 'chorus' } as const;
const LIST: readonly Stage[] = [
  { id: 'a', passage: ONE_CHORD, tool: 'right' },
  { id: 'b', passage: JOIN, level: 2 },
  { id: 'c', passage: JOIN, tool: 'none' },
];

const ids = (stages: readonly Stage[]) => stages.map(({ id }) => id).join(' ');

it('moves a stage within its list and not beyond', () => {
  expect(ids(withMoved(LIST, 0, 1))).toBe('b a c');
  expect(ids(withMoved(LIST, 2, -2))).toBe('c a b');
  expect(withMoved(LIST, 2, 1)).toBe(LIST);
  expect(withMoved(LIST, 0, -1)).toBe(LIST);
});

it('changes, removes and adds stages, none under an id that is taken', () => {
  expect(withChanged(LIST, { id: 'b', passage: ONE_CHORD })[1]).toEqual({
    id: 'b',
    passage: ONE_CHORD,
  });
  expect(ids(without(LIST, 'b'))).toBe('a c');
  const more = withAdded(LIST, { passage: ONE_CHORD });
  expect(ids(more)).toBe('a b c stage 4');
  expect(ids(withAdded(without(more, 'a'), { passage: ONE_CHORD }))).toBe('b c stage 4 stage 5');
});

it('finds the stage that goes through all of a passage, or makes one outside the list', () => {
  expect(stageThrough(LIST, JOIN)).toBe(LIST[2]);
  const apart = stageThrough(LIST, { kind: 'section', sectionId: 'verse' });
  expect(apart).toMatchObject({ passage: { kind: 'section', sectionId: 'verse' } });
  expect(LIST.map(({ id }) => id)).not.toContain(apart.id);
  expect('tool' in apart).toBe(false);
});

it('knows passages by what they go through', () => {
  const turns = { kind: 'two-chords', first: chord('C'), second: chord('F') } as const;
  expect(samePassage(turns, { ...turns })).toBe(true);
  expect(samePassage(turns, { ...turns, second: chord('Fm') })).toBe(false);
  expect(samePassage(JOIN, { ...JOIN, from: 'chorus' })).toBe(false);
  expect(samePassage(JOIN, ONE_CHORD)).toBe(false);
});
