import '../../../../src/ui/kit/theme.css';
import '../../../../src/ui/shell/shell.css';
import { createRoot, type Root } from 'react-dom/client';
import { afterEach, beforeEach, expect, it } from 'vitest';
import { page } from 'vitest/browser';
import type { Parts } from '../../../../src/ui/parts/tool/parts.ts';
import { App } from '../../../../src/ui/shell/App.tsx';
import { songsView } from '../../../../src/ui/songs/songsView.ts';
import { section, slots, song } from '../../../support/music.ts';
import { pageParts } from '../../../support/pageParts.ts';
import { pattern } from '../../../support/patterns.ts';
import { project } from '../../../support/project.ts';

let root: Root;
let parts: Parts;

beforeEach(async () => {
  await page.viewport(1024, 768);
  const place = document.createElement('div');
  document.body.replaceChildren(place);
  const verse = section('verse', { name: 'Verse', slots: slots('| C | Am |'), patternId: 'p' });
  parts = pageParts(
    project({
      song: song([verse], 'verse'),
      patterns: [pattern('4/4', { left: 'R...R...', right: 'CCCCCCCC' })],
    }),
    { page: 'play' },
  );
  root = createRoot(place);
  root.render(<App parts={parts} />);
  await expect.element(page.getByRole('button', { name: 'Key and level: In C' })).toBeVisible();
});

afterEach(() => root.unmount());

const firstChord = () => document.querySelector('.practice-chords li')?.textContent;

it('shows the song in the key that it is played in, and leaves what is written', async () => {
  const written = parts.store.snapshot();
  expect(firstChord()).toBe('C');
  await page.getByRole('button', { name: 'Key and level: In C' }).click();
  const lower = page.getByRole('button', { name: 'A half step lower' });
  for (let step = 0; step < 3; step++) await lower.click();
  await expect.poll(firstChord).toBe('A');
  await page.getByRole('button', { name: '1', exact: true }).click();
  await expect
    .element(page.getByRole('button', { name: 'Key and level: In A, level 1' }))
    .toBeVisible();
  expect(parts.view.snapshot().arrangement).toEqual({ semitones: -3, level: 1 });
  expect(parts.store.snapshot()).toBe(written);
});

it('plays another song as it is written', async () => {
  parts.view.set({ arrangement: { semitones: 2 } });
  await expect.poll(firstChord).toBe('D');
  songsView(parts.view).onOpened();
  await expect.poll(firstChord).toBe('C');
});
