import { expect, it } from 'vitest';
import { rebornIds } from '../../src/state/rebornIds.ts';
import { section, slots, song } from '../support/music.ts';
import { pattern } from '../support/patterns.ts';
import { project } from '../support/project.ts';

const P = pattern('4/4', { left: 'R---', right: 'C-C-' }, { id: 'p' });
const Q = { ...P, id: 'q' };
const BOTH = project({ patterns: [P, Q] });
const ONE = project({ patterns: [P] });

it('tells an id that comes for the first time, and one that something new has', () => {
  const watch = rebornIds(ONE);
  expect(watch(BOTH)).toEqual(['q']);
  expect(watch(ONE)).toEqual([]);
  expect(watch(project({ patterns: [P, { ...Q, name: 'Another' }] }))).toEqual(['q']);
});

it('tells nothing of what undo brings back, nor of what is edited', () => {
  const watch = rebornIds(BOTH);
  const edited = { ...Q, name: 'Edited' };
  expect(watch(project({ patterns: [P, edited] }))).toEqual([]);
  expect(watch(ONE)).toEqual([]);
  expect(watch(project({ patterns: [P, edited] }))).toEqual([]);
});

it('watches sections, too', () => {
  const watch = rebornIds(ONE);
  const more = song(
    [section('verse', { slots: slots('| C |') }), section('tag', { slots: slots('| C |') })],
    'verse tag',
  );
  expect(watch(project({ song: more }))).toEqual(['tag']);
});
