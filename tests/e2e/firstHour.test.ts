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

it('takes a hit that was dragged over several steps back with one undo', async () => {
  const { page } = open;
  await page.keyboard.press('Escape');
  await page.reload();
  await tap('Rhythm', 'nav');
  const hit = page.getByRole('gridcell', { name: /^Right hand, beat 2: chord/ }).first();
  const free = page.getByRole('gridcell', { name: /^Right hand, beat 3: empty/ }).first();
  const names = () =>
    page
      .getByRole('gridcell', { name: /^Right hand/ })
      .evaluateAll((cells) => cells.map((cell) => cell.getAttribute('aria-label')));
  const before = await names();
  const [from, to] = [(await hit.boundingBox())!, (await free.boundingBox())!];
  await page.mouse.move(from.x + 8, from.y + from.height / 2);
  await page.mouse.down();
  await page.mouse.move(to.x + 8, to.y + to.height / 2, { steps: 8 });
  await page.mouse.up();
  expect(await names()).not.toEqual(before);
  await page.getByRole('button', { name: /^Undo/ }).click();
  expect(await names()).toEqual(before);
});

it('leaves both hands sounding on Rhythm and Play whatever hand is the player’s in a drill', async () => {
  const { page } = open;
  await tap('Drill', 'nav');
  await page
    .getByRole('group', { name: 'Hands I play' })
    .getByRole('button', { name: 'Right' })
    .click();
  const right = page.getByRole('contentinfo').getByRole('button', { name: 'Right', exact: true });
  expect(await right.getAttribute('aria-pressed')).toBe('false');
  for (const name of ['Rhythm', 'Play']) {
    await tap(name, 'nav');
    expect(await right.getAttribute('aria-pressed')).toBe('true');
  }
});

it('sets the swing by the word under the slider', async () => {
  const { page } = open;
  await tap('Rhythm', 'nav');
  await tap(/^Swing/);
  await tap('triplet');
  await page.getByRole('button', { name: /^Swing: triplet/ }).waitFor();
});
