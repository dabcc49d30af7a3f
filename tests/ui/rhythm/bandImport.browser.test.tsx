import '../../../src/ui/kit/theme.css';
import * as axe from 'axe-core';
import { createRoot, type Root } from 'react-dom/client';
import { afterEach, beforeEach, expect, it } from 'vitest';
import { page, userEvent } from 'vitest/browser';
import type { PatternRequest } from '../../../src/app/score.ts';
import { type Parts, PartsContext } from '../../../src/ui/parts/tool/parts.ts';
import { RhythmPage } from '../../../src/ui/rhythm/RhythmPage.tsx';
import { gridNotes, midiFile, program, trackName } from '../../support/midi.ts';
import { pageParts } from '../../support/pageParts.ts';
import { project } from '../../support/project.ts';

const STEP = 240;
const REPEATS = 8;

/** Eight bars of 4/4 in eighths: a bass that goes from root to fifth, a kick under it, a snare on 2 and 4. */
const BAND = midiFile({
  tracks: [
    [
      trackName('Low strings'),
      program(0, 33),
      ...gridNotes('x.......', STEP, { key: 36, length: 900, times: REPEATS }),
      ...gridNotes('....x...', STEP, { key: 43, length: 900, times: REPEATS }),
    ],
    [
      trackName('Kit'),
      ...gridNotes('x...x...', STEP, { channel: 9, key: 36, times: REPEATS }),
      ...gridNotes('..x...x.', STEP, { channel: 9, key: 38, times: REPEATS }),
    ],
  ],
});

let root: Root;
let parts: Parts;

beforeEach(async () => {
  await page.viewport(1024, 768);
  const place = document.createElement('div');
  document.body.replaceChildren(place);
  parts = pageParts(project());
  root = createRoot(place);
  root.render(
    <PartsContext value={parts}>
      <RhythmPage />
    </PartsContext>,
  );
  await page.getByRole('button', { name: 'The band' }).click();
  await page.getByRole('button', { name: 'Bring in a band' }).click();
});

afterEach(() => root.unmount());

async function give(bytes: Uint8Array, name: string): Promise<void> {
  const input = document.querySelector('input[type=file]')!;
  await userEvent.upload(input, new File([bytes as Uint8Array<ArrayBuffer>], name));
}

it('makes a pattern of a MIDI file, which is taken as one change and shown', async () => {
  await give(BAND, 'slow_drive.mid');
  await expect
    .element(page.getByText('1 bar of 4/4 · 8 of 8 bars play it · straight'))
    .toBeVisible();
  await page.getByRole('button', { name: 'Take this pattern' }).click();
  await expect
    .element(page.getByRole('textbox', { name: 'Name of the pattern' }))
    .toHaveValue('slow drive, bars 1–8');
  const taken = parts.store.snapshot().patterns.at(-1)!;
  expect(taken.left.map(({ at, play }) => [at, play])).toEqual([
    [0, ['root']],
    [960, ['fifth']],
  ]);
  expect(taken.right.map(({ at, play }) => [at, play])).toEqual([
    [480, ['all']],
    [1440, ['all']],
  ]);
  parts.store.undo();
  expect(parts.store.snapshot().patterns).toHaveLength(1);
  expect(parts.store.undoLabel()).toBeUndefined();
});

it('has a section play the pattern under a name of the player’s, as the same one change', async () => {
  await give(BAND, 'slow_drive.mid');
  await page.getByRole('textbox', { name: 'Called' }).fill('Slow verse');
  const [section] = parts.store.snapshot().song.sections;
  await page.getByRole('combobox', { name: 'Played in' }).selectOptions(section!.name);
  await page.getByRole('button', { name: 'Take this pattern' }).click();
  const { patterns, song } = parts.store.snapshot();
  expect(patterns.at(-1)!.name).toBe('Slow verse');
  expect(song.sections[0]!.patternId).toBe(patterns.at(-1)!.id);
  parts.store.undo();
  expect(parts.store.snapshot().patterns).toHaveLength(1);
  expect(parts.store.undoLabel()).toBeUndefined();
});

it('lets one track be heard by itself, as it stands in the file', async () => {
  await give(BAND, 'slow_drive.mid');
  await page
    .getByRole('button', { name: /^Hear .* alone$/ })
    .first()
    .click();
  await expect
    .poll(() => {
      const state = parts.playback.state();
      return state.status === 'playing' && state.request.kind === 'phrase'
        ? (state.request.played?.notes.length ?? 0)
        : 0;
    })
    .toBeGreaterThan(0);
  parts.playback.stop();
});

it('draws the map of the song, with its key and charts to be corrected', async () => {
  await give(BAND, 'slow_drive.mid');
  await page.getByRole('button', { name: 'The map of the song' }).click();
  await expect.element(page.getByRole('combobox', { name: 'Key' })).toBeVisible();
  const chart = page.getByRole('textbox', { name: /^Chart of/ }).first();
  await expect.element(chart).toBeVisible();
  await chart.fill('| what |');
  await page.getByRole('button', { name: 'Open as a new song' }).click();
  await expect.element(page.getByRole('alert')).toBeVisible();
});

/** What is heard of the pattern that is tried. */
function tried(): Pick<PatternRequest, 'pattern' | 'bpm'> | undefined {
  const state = parts.playback.state();
  return state.status === 'playing' && state.request.kind === 'pattern' ? state.request : undefined;
}

it('lets the proposal be heard at the band’s tempo, follows other choices, and ends with the page', async () => {
  await give(BAND, 'slow_drive.mid');
  await page.getByRole('button', { name: 'Hear it' }).click();
  expect(tried()).toMatchObject({ bpm: 120, pattern: { left: { length: 2 } } });
  await page.getByRole('combobox', { name: 'Snare feeds' }).selectOptions('left hand');
  await expect.poll(() => tried()?.pattern?.left.length).toBe(4);
  await page.getByRole('button', { name: 'Back to the pattern' }).click();
  await expect.poll(() => parts.playback.state().status).toBe('stopped');
});

it('lets every guess be corrected: what a track is, which bars, how long, into which hand', async () => {
  await give(BAND, 'slow_drive.mid');
  await page.getByRole('combobox', { name: 'Snare feeds' }).selectOptions('left hand');
  await page
    .getByRole('combobox', { name: 'Low strings is', exact: true })
    .selectOptions('not used');
  await page.getByRole('combobox', { name: 'Pattern' }).selectOptions('2 bars');
  await page.getByRole('spinbutton', { name: 'to bar' }).fill('4');
  await expect
    .element(page.getByText('2 bars of 4/4 · 4 of 4 bars play it · straight'))
    .toBeVisible();
  await page.getByRole('button', { name: 'Take this pattern' }).click();
  const taken = parts.store.snapshot().patterns.at(-1)!;
  expect(taken.sources.map(({ part }) => part)).toEqual(['kick', 'snare']);
  expect(taken.left.map(({ at }) => at)).toContain(480);
});

it('says why a file is no band, and leaves the song as it is', async () => {
  const before = parts.store.snapshot();
  await give(BAND.slice(0, 60), 'half.mid');
  await expect.element(page.getByRole('alert')).toHaveTextContent(/half\.mid.*breaks off too soon/);
  expect(parts.store.snapshot()).toBe(before);
  await page.getByRole('button', { name: 'Back to the pattern' }).click();
  await expect.element(page.getByRole('grid')).toBeVisible();
});

it('says so where the chosen bars are not there', async () => {
  await give(BAND, 'slow_drive.mid');
  await page.getByRole('spinbutton', { name: 'to bar' }).fill('40');
  await expect.element(page.getByText(/The band plays bars 1 to 8/)).toBeVisible();
});

it('takes a file that is dropped on the page', async () => {
  const dropped = new DataTransfer();
  dropped.items.add(new File([BAND as Uint8Array<ArrayBuffer>], 'dropped.mid'));
  document
    .querySelector('.band-drop')!
    .dispatchEvent(new DragEvent('drop', { bubbles: true, dataTransfer: dropped }));
  await expect.element(page.getByRole('button', { name: 'Take this pattern' })).toBeVisible();
});

it('derives the hands of a pattern anew from its own band', async () => {
  await give(BAND, 'slow_drive.mid');
  await page.getByRole('button', { name: 'Take this pattern' }).click();
  await page.getByRole('button', { name: 'The band' }).click();
  await page.getByRole('button', { name: 'Derive again' }).click();
  await page.getByRole('combobox', { name: 'Snare is played' }).selectOptions('top');
  await page.getByRole('button', { name: 'Take these hands' }).click();
  expect(
    parts.store
      .snapshot()
      .patterns.at(-1)!
      .right.map(({ play }) => play),
  ).toEqual([['top'], ['top']]);
  expect(parts.store.undoLabel()).toBe('derive the hands again');
});

it('has no fault that an accessibility scan finds', async () => {
  await give(BAND, 'slow_drive.mid');
  await expect.element(page.getByRole('button', { name: 'Take this pattern' })).toBeVisible();
  const { violations } = await axe.run(document.body, { rules: { region: { enabled: false } } });
  expect(violations.map(({ id, nodes }) => [id, nodes[0]?.html])).toEqual([]);
});
