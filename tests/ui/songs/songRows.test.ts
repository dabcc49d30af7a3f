import { expect, it } from 'vitest';
import { lastOpenText, shownTitle, songRows } from '../../../src/ui/songs/songRows.ts';
import { project } from '../../support/project.ts';

const kept = (id: string, title: string, savedAtMs: number) => ({ id, title, savedAtMs });

it('lists the open song first, under its present title, and every other as it was kept', () => {
  const rows = songRows(
    [kept('b', 'Second', 9), kept('test project', 'Before', 5), kept('a', 'First', 1)],
    project(),
  );
  expect(rows).toEqual([
    { id: 'test project', title: 'Test song', lastOpen: 'now' },
    { id: 'b', title: 'Second', lastOpen: 9 },
    { id: 'a', title: 'First', lastOpen: 1 },
  ]);
});

it('lists an open song that is not kept yet', () => {
  expect(songRows([], project())).toHaveLength(1);
});

it('says when a song was last open', () => {
  expect(lastOpenText('now')).toBe('open now');
  const march = new Date(2026, 2, 3, 14, 5).getTime();
  expect(lastOpenText(march)).toBe('last open 3 Mar 2026, 14:05');
});

it('speaks of a song without a title', () => {
  expect([shownTitle(' '), shownTitle('Reel')]).toEqual(['Untitled', 'Reel']);
});
