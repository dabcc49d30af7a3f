import '../../../../src/ui/kit/theme.css';
import '../../../../src/ui/shell/shell.css';
import * as axe from 'axe-core';
import { deleteDB } from 'idb';
import { createRoot, type Root } from 'react-dom/client';
import { afterEach, beforeEach, expect, it, vi } from 'vitest';
import { page } from 'vitest/browser';
import { ok } from '../../../../src/core/result.ts';
import { parseCsv } from '../../../../src/formats/csv.ts';
import { openStorage, type Storage } from '../../../../src/state/storage.ts';
import { createTakeHistory, randomTakeId } from '../../../../src/state/takeHistory.ts';
import type { Parts } from '../../../../src/ui/parts/tool/parts.ts';
import type { Page } from '../../../../src/ui/parts/tool/viewState.ts';
import { App } from '../../../../src/ui/shell/App.tsx';
import { playExactly } from '../../../support/exactPlayer.ts';
import { valueOf } from '../../../support/music.ts';
import { pageParts } from '../../../support/pageParts.ts';
import { PRACTICE, project } from '../../../support/project.ts';
import { hearingParts, openSound, soundingPlayback } from '../../../support/soundingParts.ts';
import { takeRecord } from '../../../support/takeRecords.ts';

const NAME = 'vampwright-take-history-test';

/** One bar to a rung, 120, 126 and 132, without a count-in; the player plays both hands. */
const SONG = project({
  practice: {
    ...PRACTICE,
    hands: 'none',
    click: { ...PRACTICE.click, countInBars: 0 },
    drill: {
      ...PRACTICE.drill,
      ladder: { ...PRACTICE.drill.ladder, startBpm: 120, goalBpm: 132, passesPerRung: 1 },
    },
  },
});

let root: Root;
let parts: Parts;
let storage: Storage;

/** The app as at a visit, on the storage of the visits before; heard by two keys. */
async function visit(shown: Page = 'drill'): Promise<void> {
  await page.viewport(1024, 768);
  storage = valueOf(await openStorage(NAME));
  await storage.saveProject(SONG, 1);
  const place = document.createElement('div');
  document.body.replaceChildren(place);
  const silent = pageParts(SONG, { page: shown, hearing: { input: 'keys', latencyMs: {} } });
  const { store } = silent;
  const takeHistory = createTakeHistory({
    store,
    storage: ok(storage),
    talk: { tell: () => undefined, onTold: () => undefined },
    newTakeId: randomTakeId,
  });
  const playback = soundingPlayback(store);
  const sounding = { ...silent, takeHistory, playback };
  parts = { ...sounding, ...hearingParts(sounding) };
  root = createRoot(place);
  root.render(<App parts={parts} />);
  await expect.element(foot('Start')).toBeVisible();
}

function leave(): void {
  parts.playback.stop();
  root.unmount();
  storage.close();
}

beforeEach(() => deleteDB(NAME));

afterEach(async () => {
  leave();
  await deleteDB(NAME);
});

function foot(name: string) {
  return page.getByRole('contentinfo').getByRole('button', { name, exact: true });
}

function button(name: string | RegExp) {
  return page.getByRole('button', { name });
}

/** Keeps takes as if they had been played before. */
async function played(...records: ReturnType<typeof takeRecord>[]): Promise<void> {
  parts.takeHistory.keep(SONG.id, records);
  await expect
    .poll(async () => valueOf(await storage.takes(SONG.id, new Set())).ids.length)
    .toBe(records.length);
}

it('keeps what was drilled on two keys beyond the visit, shows it and saves it as a table', async () => {
  await visit();
  const stopPlaying = await playExactly(parts.playback, openSound);
  await foot('Start').click();
  await expect.poll(() => parts.takeHistory.state().takes.length, { timeout: 15_000 }).toBe(2);
  stopPlaying();
  await foot('Stop').click();
  const kept = parts.takeHistory.state().takes;
  expect(kept.slice(0, 2).map(({ bpm, passes, score }) => [bpm, passes, score.clean])).toEqual([
    [120, 1, true],
    [126, 1, true],
  ]);

  leave();
  await visit();
  await button('What I played …').click();
  await expect.element(page.getByRole('heading', { name: 'What I played' })).toBeVisible();
  await expect.element(page.getByText('both hands', { exact: true }).first()).toBeVisible();
  await expect.element(page.getByRole('cell', { name: '126 both hands' })).toBeInTheDocument();
  expect(parts.takeHistory.state().takes).toEqual(kept);
  expect(
    (await axe.run(document.body, { rules: { region: { enabled: false } } })).violations,
  ).toEqual([]);

  const saved = vi.spyOn(URL, 'createObjectURL');
  await button('Save as a table (CSV)').click();
  const [[file]] = saved.mock.calls as [[Blob]];
  saved.mockRestore();
  const [names, ...rows] = valueOf(parseCsv(await file.text()));
  expect(names).toContain('tempo_bpm');
  const tempos = rows.map((row) => row[names!.indexOf('tempo_bpm')]);
  expect(tempos.slice(0, 4)).toEqual(['120', '120', '126', '126']);
});

it('removes takes once the sheet is closed, and puts back what was meant to stay', async () => {
  await visit();
  await played(takeRecord({ bpm: 80, atMs: 1 }), takeRecord({ bpm: 90, atMs: 2 }));
  await button('What I played …').click();
  await button(/^Remove: 80/).click();
  await button(/^Remove: 90/).click();
  await expect.element(page.getByText('goes when this sheet is closed').first()).toBeVisible();
  await button(/^Put back: 90/).click();
  expect(parts.takeHistory.state().takes.map(({ bpm }) => bpm)).toEqual([90]);
  await page.getByRole('dialog').getByRole('button', { name: 'Close' }).click();
  await expect
    .poll(async () => valueOf(await storage.takes(SONG.id, new Set())).takes.map(({ bpm }) => bpm))
    .toEqual([90]);
});

it('removes all takes of what is looked at only when one has said so again', async () => {
  await visit('play');
  await played(
    takeRecord({ bpm: 80, atMs: 1, target: { kind: 'song' } }),
    takeRecord({ bpm: 90, atMs: 2 }),
    takeRecord({ bpm: 91, atMs: 3 }),
  );
  await button('What I played …').click();
  await button('Remove all …').click();
  await expect.element(page.getByText('Remove all 2 takes of')).toBeVisible();
  await button('Keep them').click();
  expect(parts.takeHistory.state().takes).toHaveLength(3);
  await button('Remove all …').click();
  await button('Remove them').click();
  expect(parts.takeHistory.state().takes.map(({ bpm }) => bpm)).toEqual([80]);
  await button('Put all back').click();
  expect(parts.takeHistory.state().takes).toHaveLength(3);
  await page.getByRole('combobox', { name: 'Of' }).selectOptions('everything');
  await expect.element(page.getByText('The whole song, ')).toBeVisible();
});

it('says after the song, in a line, how it went, and more where one asks', async () => {
  await visit('play');
  const stopPlaying = await playExactly(parts.playback, openSound);
  await foot('Start').click();
  await expect.element(foot('Start'), { timeout: 15_000 }).toBeVisible();
  stopPlaying();
  await expect.element(page.getByText('That was clean.')).toBeVisible();
  await button('How it went …').click();
  await expect.element(page.getByRole('columnheader', { name: 'Uneven by' })).toBeVisible();
  expect(parts.takeHistory.state().takes).toMatchObject([
    { target: { kind: 'song' }, bpm: 120, passes: 1, hand: 'both', score: { clean: true } },
  ]);
});

it('has nothing to show at first, and says what to do', async () => {
  await visit();
  await button('What I played …').click();
  await expect.element(page.getByText('Choose on Drill what hears you')).toBeVisible();
});
