import type { Page } from 'playwright';
import { afterAll, beforeAll, expect, it } from 'vitest';
import { gridNotes, midiFile, program, tempoOf, trackName } from '../support/midi.ts';
import { type ServedApp, serveApp } from '../support/servedApp.ts';

const EIGHTH = 240;
const TIMES = 8;

/** Eight bars alike but for the fifth, which rests. */
function exceptFifth(bar: string): string {
  return `${bar.repeat(4)}........${bar.repeat(3)}`;
}

/** Eight bars of 4/4: a bass on one and the "and" of two, a kit with the back-beat, a fill in the fifth bar. */
const BAND = midiFile({
  tracks: [
    [tempoOf(600_000)],
    [
      trackName('Bass'),
      program(0, 33),
      ...gridNotes('x..x....', EIGHTH, { key: 36, length: 460, times: TIMES }),
    ],
    [
      trackName('Kit'),
      ...gridNotes('x...x...', EIGHTH, { channel: 9, key: 36, times: TIMES }),
      ...gridNotes(exceptFifth('..X...X.'), EIGHTH, { channel: 9, key: 38 }),
      ...gridNotes(exceptFifth('xxxxxxxx'), EIGHTH, { channel: 9, key: 42 }),
      ...gridNotes(`${'........'.repeat(4)}xxxxxxxx`, EIGHTH, { channel: 9, key: 45 }),
    ],
  ],
});

let app: ServedApp;

beforeAll(async () => {
  app = await serveApp();
});

afterAll(() => app.close());

const pageNamed = (page: Page, name: string) =>
  page.getByRole('navigation').getByRole('button', { name, exact: true }).click();
const play = (page: Page) =>
  page.getByRole('contentinfo').getByRole('button', { name: 'Start' }).click();
const stop = (page: Page) =>
  page.getByRole('contentinfo').getByRole('button', { name: 'Stop' }).click();
const versePattern = (page: Page) => page.getByRole('combobox', { name: 'Pattern', exact: true });

async function bringInBand(page: Page): Promise<void> {
  await pageNamed(page, 'Rhythm');
  await page.getByRole('button', { name: 'The band' }).click();
  await page.getByRole('button', { name: 'Bring in a band' }).click();
  await page.getByLabel('MIDI file').setInputFiles({
    name: 'harbour groove.mid',
    mimeType: 'audio/midi',
    buffer: Buffer.from(BAND),
  });
  await page.getByText('7 of 8 bars play it').waitFor();
  await page.getByRole('button', { name: 'Take this pattern' }).click();
}

async function setNumber(page: Page, name: string, value: number): Promise<void> {
  await page.getByRole('spinbutton', { name, exact: true }).fill(String(value));
}

it('leads from a MIDI file over a drill to the song, survives a reload, and can be undone', async () => {
  const { page, errors } = await app.open();

  await bringInBand(page);
  const name = page.getByRole('textbox', { name: 'Name of the pattern' });
  expect(await name.inputValue()).toBe('harbour groove, bars 1–8');
  await play(page);
  await page.locator('.pattern-playhead:not([hidden])').waitFor();
  await stop(page);

  await pageNamed(page, 'Drill');
  await page
    .getByRole('combobox', { name: 'Pattern' })
    .selectOption({ label: 'harbour groove, bars 1–8' });
  await setNumber(page, 'To', 320);
  await setNumber(page, 'From', 300);
  await setNumber(page, 'Step', 10);
  await setNumber(page, 'Bars in a pass', 1);
  await page.getByText(/^How it climbs/).click();
  await setNumber(page, 'Passes on a rung', 2);
  await play(page);
  for (const rung of [1, 2, 3])
    await page.getByText(`Rung ${rung} of 3`).waitFor({ timeout: 15_000 });
  await stop(page);

  await pageNamed(page, 'Map');
  await page.getByRole('button', { name: /^Verse 1 .*bars/ }).click();
  await versePattern(page).selectOption({ label: 'harbour groove, bars 1–8 (4/4)' });

  await pageNamed(page, 'Play');
  await play(page);
  await page
    .locator('.practice-glance li[data-bar="1"][aria-current]')
    .waitFor({ timeout: 20_000 });
  await stop(page);

  await page.reload();
  await pageNamed(page, 'Map');
  const chosen = versePattern(page).locator('option:checked');
  await page.getByRole('button', { name: /^Verse 1 .*bars/ }).click();
  expect(await chosen.textContent()).toBe('harbour groove, bars 1–8 (4/4)');

  await versePattern(page).selectOption({ index: 0 });
  expect(await chosen.textContent()).not.toBe('harbour groove, bars 1–8 (4/4)');
  await page.getByRole('button', { name: /^Undo/ }).click();
  expect(await chosen.textContent()).toBe('harbour groove, bars 1–8 (4/4)');

  expect(errors).toEqual([]);
});

it('opens at once into a song, says clearly what a broken file lacks, and leaves the song as it was', async () => {
  const { page, errors } = await app.open({ width: 768, height: 1024 });
  await pageNamed(page, 'Rhythm');
  const before = await page.getByRole('textbox', { name: 'Name of the pattern' }).inputValue();
  await page.getByRole('button', { name: 'The band' }).click();
  await page.getByRole('button', { name: 'Bring in a band' }).click();
  await page.getByLabel('MIDI file').setInputFiles({
    name: 'cut.mid',
    mimeType: 'audio/midi',
    buffer: Buffer.from(BAND.slice(0, 60)),
  });
  await page.getByText(/breaks off too soon/).waitFor();
  await page.getByRole('button', { name: 'Back to the pattern' }).click();
  expect(await page.getByRole('textbox', { name: 'Name of the pattern' }).inputValue()).toBe(
    before,
  );
  expect(await page.getByRole('button', { name: 'Undo', exact: true }).isDisabled()).toBe(true);
  expect(errors).toEqual([]);
});
