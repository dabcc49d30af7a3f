import '../../../src/ui/kit/theme.css';
import '../../../src/ui/shell/shell.css';
import * as axe from 'axe-core';
import { createRoot, type Root } from 'react-dom/client';
import { afterEach, beforeEach, expect, it } from 'vitest';
import { page, userEvent } from 'vitest/browser';
import { encodeProject } from '../../../src/formats/projectFile.ts';
import type { Parts } from '../../../src/ui/parts/tool/parts.ts';
import { App } from '../../../src/ui/shell/App.tsx';
import { section, slots, song } from '../../support/music.ts';
import { pageParts } from '../../support/pageParts.ts';
import { project } from '../../support/project.ts';

function titled(title: string, id: string) {
  const verse = section('verse', { slots: slots('| C | F |'), patternId: 'p' });
  return project({ id, song: song([verse], 'verse', { title }) });
}

let root: Root;
let parts: Parts;

beforeEach(async () => {
  await page.viewport(1024, 768);
  const place = document.createElement('div');
  document.body.replaceChildren(place);
  parts = pageParts(titled('Harbour Waltz', 'song-1'));
  root = createRoot(place);
  root.render(<App parts={parts} />);
  await expect.element(button('Songs')).toBeVisible();
});

afterEach(() => root.unmount());

function button(name: string) {
  return page.getByRole('button', { name, exact: true });
}

/** The list of songs as it is read out. */
function listed(): string[] {
  return [...document.querySelectorAll('.songs-open')].map((row) => row.textContent ?? '');
}

function openTitle(): string {
  return parts.store.snapshot().song.title;
}

async function choose(name: string, text: string): Promise<void> {
  await userEvent.upload(page.getByLabelText('Song file'), new File([text], name));
}

const sheet = () => page.getByRole('dialog', { name: 'Songs' });

it('goes from song to song, deletes one, refuses a broken file and opens a good one', async () => {
  await button('Songs').click();
  await button('New song').click();
  await expect.element(sheet()).not.toBeInTheDocument();
  await expect.element(page.getByLabelText('Title of the song')).toHaveValue('New song');

  await button('Songs').click();
  await page.getByRole('button', { name: /^Harbour Waltz/ }).click();
  await expect.element(page.getByLabelText('Title of the song')).toHaveValue('Harbour Waltz');

  await button('Songs').click();
  await button('Delete “New song”').click();
  expect(listed()[1]).toBe('New songgoes when this sheet is closed');
  await button('Put back “New song”').click();
  await button('Delete “New song”').click();
  await button('Close').click();
  await button('Songs').click();
  await expect.poll(listed).toEqual(['Harbour Waltzopen now']);

  await choose('notes.json', '{"milk": 2,\n "bread" 1}');
  await expect.element(page.getByRole('alert')).toHaveTextContent(/notes\.json.*line 2, column 10/);
  expect(openTitle()).toBe('Harbour Waltz');

  await choose('Reel.json', encodeProject(titled('Reel', 'song-1')));
  await expect.element(sheet()).not.toBeInTheDocument();
  expect(parts.store.snapshot()).toMatchObject({ id: 'song-2', song: { title: 'Reel' } });
  await button('Songs').click();
  await expect
    .poll(() => listed().map((row) => row.slice(0, 13)))
    .toEqual(['Reelopen now', 'Harbour Waltz']);
});

it('is used by keys alone', async () => {
  (button('Songs').element() as HTMLElement).focus();
  await userEvent.keyboard('{Enter}');
  await expect.element(sheet()).toBeVisible();
  (button('Copy “Harbour Waltz”').element() as HTMLElement).focus();
  await userEvent.keyboard('{Enter}');
  await expect.element(sheet()).not.toBeInTheDocument();
  expect(openTitle()).toBe('Harbour Waltz 2');
  await userEvent.keyboard('{Enter}');
  await expect.element(sheet()).toBeVisible();
  await userEvent.keyboard('{Escape}');
  await expect.element(sheet()).not.toBeInTheDocument();
});

it('makes one practice track at a time, which can be given up', async () => {
  await button('Songs').click();
  await page.getByRole('radio', { name: 'Drill on C' }).click();
  await page.getByLabelText('Goes on for').selectOptions('10');
  await button('Make practice track').click();
  const making = page.getByRole('button', { name: /^Making/ });
  await expect.element(making).toHaveAttribute('aria-disabled', 'true');
  await button('Give up').click();
  await expect.element(page.getByText('Given up; no track was made.')).toBeVisible();
  await expect.element(button('Make practice track')).toBeEnabled();
});

it('makes no track in which nothing sounds', async () => {
  await button('Songs').click();
  const hands = page.getByRole('group', { name: 'Hands that sound' });
  await hands.getByRole('button', { name: 'Left' }).click();
  await hands.getByRole('button', { name: 'Right' }).click();
  await sheet().getByRole('button', { name: 'Click' }).click();
  await expect.element(button('Make practice track')).toBeDisabled();
});

it('has no fault that an accessibility scan finds', async () => {
  await button('Songs').click();
  await button('Delete “Harbour Waltz”').click();
  const { violations } = await axe.run('.songs');
  expect(violations.map(({ id, nodes }) => [id, nodes[0]?.html])).toEqual([]);
});
