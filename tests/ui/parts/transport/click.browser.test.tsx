import '../../../../src/ui/kit/theme.css';
import '../../../../src/ui/shell/shell.css';
import * as axe from 'axe-core';
import { createRoot, type Root } from 'react-dom/client';
import { afterEach, expect, it } from 'vitest';
import { page, userEvent } from 'vitest/browser';
import type { Parts } from '../../../../src/ui/parts/tool/parts.ts';
import { App } from '../../../../src/ui/shell/App.tsx';
import { section, slots, song } from '../../../support/music.ts';
import { pageParts } from '../../../support/pageParts.ts';
import { pattern } from '../../../support/patterns.ts';
import { PRACTICE, project } from '../../../support/project.ts';
import { soundingPlayback } from '../../../support/soundingParts.ts';

let root: Root;
let parts: Parts;

/** The app with real sound, a song of four bars, each 1 s long, without a count-in. */
async function open(name: 'play' | 'drill', beats = '4/4'): Promise<void> {
  await page.viewport(1024, 768);
  const place = document.createElement('div');
  document.body.replaceChildren(place);
  const verse = section('verse', { slots: slots('| C | F | G | C |'), patternId: 'p' });
  const silent = pageParts(
    project({
      song: song([verse], 'verse', { tempo: { bpm: 240, beatTicks: 480 } }),
      patterns: [pattern(beats, { left: 'R-----------' })],
      practice: { ...PRACTICE, click: { ...PRACTICE.click, countInBars: 0 } },
    }),
    { page: name },
  );
  parts = { ...silent, playback: soundingPlayback(silent.store) };
  root = createRoot(place);
  root.render(<App parts={parts} />);
  await expect
    .element(page.getByRole('contentinfo').getByRole('button', { name: 'Start' }))
    .toBeVisible();
}

afterEach(() => {
  parts.playback.stop();
  root.unmount();
});

const click = () => parts.store.snapshot().practice.click;
const choose = (name: string, words: string) =>
  userEvent.selectOptions(page.getByRole('combobox', { name, exact: true }), words);

it('is set from Play: what ticks between, when it rests, how it sounds, how it is counted in', async () => {
  await open('play');
  await page.getByRole('button', { name: 'Click and count-in …' }).click();
  await choose('Between the beats', 'eighths');
  await choose('Falls silent for', '2 bars in 4');
  await choose('Sound', 'wood');
  await choose('Count-in', 'two bars, spoken');
  expect(click()).toMatchObject({
    subdivision: 'eighths',
    rests: { sounding: 2, resting: 2 },
    sound: 'wood',
    countInBars: 2,
    countInVoice: 'spoken',
  });
  const { violations } = await axe.run(document.body);
  expect(violations.map(({ id }) => id)).toEqual([]);
  await choose('Between the beats', 'nothing');
  await choose('Falls silent for', 'never');
  await choose('Count-in', 'one bar');
  expect(click()).toEqual({ ...PRACTICE.click, sound: 'wood', countInBars: 1 });
});

it('offers between the beats only what the meter takes', async () => {
  await open('drill', '6/8');
  const offered = page.getByRole('combobox', { name: 'Between the beats' }).element();
  expect([...(offered as HTMLSelectElement).options].map(({ text }) => text)).toEqual([
    'nothing',
    'eighths',
    'sixteenths',
  ]);
});

it('says while it rests that it does, and for how long still', async () => {
  await open('play');
  await page.getByRole('button', { name: 'Click and count-in …' }).click();
  await choose('Falls silent for', '1 bar in 2');
  await userEvent.keyboard('{Escape}');
  await page.getByRole('contentinfo').getByRole('button', { name: 'Start' }).click();
  const said = () => document.querySelector('.practice-click-rest')?.textContent;
  await expect.poll(said, { timeout: 20_000 }).toBe('');
  await expect.poll(said, { timeout: 5000 }).toBe('click rests, last bar');
  await expect.poll(said, { timeout: 5000 }).toBe('');
});
