import { afterAll, beforeAll, expect, it } from 'vitest';
import { gridNotes, midiFile, program } from '../support/midi.ts';
import { type OpenPage, type ServedApp, serveApp } from '../support/servedApp.ts';

let app: ServedApp;
let open: OpenPage;

beforeAll(async () => {
  app = await serveApp();
  open = await app.open();
});

afterAll(() => app.close());

/** Drops a file of these bytes on whatever page is shown. */
async function drop(name: string, bytes: Uint8Array): Promise<void> {
  await open.page.evaluate(
    ([fileName, data]) => {
      const given = new DataTransfer();
      given.items.add(new File([new Uint8Array(data)], fileName));
      document.body.dispatchEvent(
        new DragEvent('drop', { dataTransfer: given, bubbles: true, cancelable: true }),
      );
    },
    [name, [...bytes]] as [string, number[]],
  );
}

function show(name: string): Promise<void> {
  return open.page.getByRole('navigation').getByRole('button', { name, exact: true }).click();
}

it.each(['Map', 'Hands', 'Drill', 'Play'])(
  'takes a MIDI file dropped on %s to where bands come in',
  async (page) => {
    await show(page);
    const bytes = midiFile({
      tracks: [
        [program(0, 33), ...gridNotes('x...x...x...x...', 120, { key: 33, length: 100, times: 8 })],
      ],
    });
    await drop('slow_drive.mid', bytes);
    await open.page.getByText('slow drive', { exact: true }).waitFor();
    await open.page.getByRole('button', { name: 'Back to the pattern' }).click();
    expect(open.errors).toEqual([]);
  },
);

it('says of a file that is nothing of its own what can be given', async () => {
  await show('Map');
  await drop('holiday.pdf', new Uint8Array([1, 2, 3]));
  await open.page.getByText('“holiday.pdf” can’t be opened here').waitFor();
});

it('says of a damaged song file what is wrong with it, and leaves the song open', async () => {
  await show('Hands');
  const title = await open.page.locator('h1, .head-title').first().textContent();
  await drop('song.json', new TextEncoder().encode('{"format":"vampwright-project","version":1}'));
  await open.page
    .getByRole('status')
    .getByText(/song\.json/)
    .waitFor();
  expect(await open.page.locator('h1, .head-title').first().textContent()).toBe(title);
});
