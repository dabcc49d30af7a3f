import { afterAll, beforeAll, expect, it } from 'vitest';
import { type OpenPage, type ServedApp, serveApp } from '../support/servedApp.ts';

let app: ServedApp;
let open: OpenPage;
let taps = 0;

beforeAll(async () => {
  app = await serveApp();
  open = await app.open();
});

afterAll(() => app.close());

/** One touch of a button, tab or row, by its name. */
async function tap(
  name: string | RegExp,
  within = 'body',
  role: 'button' | 'tab' | 'option' = 'button',
) {
  taps++;
  await open.page
    .locator(within)
    .getByRole(role, { name, exact: typeof name === 'string' })
    .first()
    .click();
}

/** A choice from a list is two touches: the list and the line in it. */
async function choose(list: string, line: string, within: string): Promise<void> {
  taps += 2;
  const field = open.page.locator(within).getByRole('combobox', { name: list, exact: true });
  await field.locator('option', { hasText: line }).first().waitFor({ state: 'attached' });
  await field.selectOption(
    (await field.locator('option', { hasText: line }).first().getAttribute('value')) ?? line,
  );
}

it('leads from an empty song to a practice track for a student within thirty taps', async () => {
  const { page, errors } = open;
  // A new song, its chart as text.
  await tap(/^Songs|all songs/i, '.head');
  await tap(/^New song/);
  await tap('Map', 'nav');
  await tap('Text');
  taps++;
  await page
    .getByRole('textbox', { name: /Bars between/ })
    .fill('| G / D / | Em / C / | G / D / | C |');
  await tap('Done');
  // A pattern from the shelf, for the verse.
  await tap('Rhythm', 'nav');
  await tap(/^Patterns/);
  await tap(/shelf/i);
  await tap(/^Take Soul backbeat/);
  // Drilled in the song's key.
  await tap('Drill', 'nav');
  await tap('Drill it in this key');
  await tap('Left', 'fieldset');
  await tap('Start', 'footer, [role=contentinfo]');
  await page.getByText(/Rung 1 of/).waitFor();
  await tap('Stop', 'footer, [role=contentinfo]');
  // The verse plays it.
  await tap('Map', 'nav');
  await choose('Pattern', 'Soul backbeat', '#page-map');
  // A track for the student.
  await tap(/^Songs|all songs/i, '.head');
  const download = page.waitForEvent('download', { timeout: 60_000 });
  await tap('Make practice track');
  await download;
  console.log(`from an empty song to a practice track: ${taps} taps`);
  expect(taps).toBeLessThanOrEqual(30);
  expect(errors).toEqual([]);
});
