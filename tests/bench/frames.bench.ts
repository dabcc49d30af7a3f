import type { CDPSession, Page } from 'playwright';
import { afterAll, beforeAll, expect, it } from 'vitest';
import { type ServedApp, serveApp } from '../support/servedApp.ts';

/** How much slower than this machine the page's processor is made, as a tablet's would be. */
const SLOWED = 4;

/** A frame at 60 a second, and what its clock may be off by. */
const FRAME_MS = 1000 / 60;
const CLOCK_MS = 1;

/** A response that comes sooner is felt as coming at once (common practice). */
const AT_ONCE_MS = 100;

const HANDS = ['Left', 'Right'] as const;
const BEATS = [2, 3, 4] as const;
const PAUSE_MS = 120;

/** Milliseconds from frame to frame, and from each tap or key to the end of the frame that shows it. */
type Measured = { readonly frames: number[]; readonly taps: number[] };

type MeasuringWindow = { readonly measured: Measured };

let app: ServedApp;

beforeAll(async () => {
  app = await serveApp();
});

afterAll(() => app.close());

/** Lets the page note its frames and what is tapped from now on. */
async function watchFrames(page: Page): Promise<void> {
  await page.evaluate(() => {
    const frames: number[] = [];
    const taps: number[] = [];
    Object.assign(globalThis, { measured: { frames, taps } });
    let last: number | undefined;
    requestAnimationFrame(function frame(now) {
      if (last !== undefined) frames.push(now - last);
      last = now;
      requestAnimationFrame(frame);
    });
    const tapped = (event: Event) => {
      requestAnimationFrame(() => {
        // A message comes once the frame is drawn.
        const { port1, port2 } = new MessageChannel();
        port1.addEventListener('message', () => taps.push(performance.now() - event.timeStamp));
        port1.start();
        port2.postMessage(undefined);
      });
    };
    addEventListener('pointerdown', tapped, true);
    addEventListener('keydown', tapped, true);
  });
}

/** What was noted while `act` was done. */
async function measuredDuring(page: Page, act: () => Promise<void>): Promise<Measured> {
  await page.evaluate(() => {
    const { measured } = globalThis as unknown as MeasuringWindow;
    measured.frames.length = 0;
    measured.taps.length = 0;
  });
  await act();
  return page.evaluate(() => (globalThis as unknown as MeasuringWindow).measured);
}

type Place = { readonly x: number; readonly y: number };

/** The middle of a place of the grid on the screen. */
async function placeOf(page: Page, hand: string, bar: number, beat: number): Promise<Place> {
  const cells = page.getByRole('gridcell', { name: new RegExp(`^${hand} hand,.*beat ${beat}`) });
  const box = await cells.nth(bar).boundingBox();
  if (!box) throw new Error(`no place for the ${hand} hand on beat ${beat} of bar ${bar + 1}`);
  return { x: box.x + box.width / 2, y: box.y + box.height / 2 };
}

/** The places of the first bar's beats that are edited, in both hands. */
async function placesToEdit(page: Page): Promise<Place[]> {
  const places = HANDS.flatMap((hand) => BEATS.map((beat) => placeOf(page, hand, 0, beat)));
  return Promise.all(places);
}

/** At each place: a tap, a tone and a touch by keys, a longer hit, a drag to the side and back, and away with it. */
async function edit(page: Page, places: readonly Place[]): Promise<void> {
  for (const { x, y } of places) {
    await page.mouse.click(x, y);
    for (const key of ['5', 't', 'Shift+ArrowRight', 'Shift+ArrowLeft']) {
      await page.keyboard.press(key);
      await page.waitForTimeout(PAUSE_MS);
    }
    await page.mouse.move(x, y);
    await page.mouse.down();
    await page.mouse.move(x + 120, y, { steps: 15 });
    await page.mouse.move(x, y, { steps: 15 });
    await page.mouse.up();
    await page.keyboard.press('Delete');
    await page.waitForTimeout(PAUSE_MS);
  }
}

function quantile(values: readonly number[], share: number): number {
  const sorted = values.toSorted((a, b) => a - b);
  return sorted[Math.min(sorted.length - 1, Math.floor(share * sorted.length))] ?? 0;
}

function framesText({ frames }: Measured): string {
  const late = frames.filter((ms) => ms > FRAME_MS + CLOCK_MS).length;
  const share = ((100 * late) / frames.length).toFixed(1);
  return `${share} % of ${frames.length} frames over ${FRAME_MS.toFixed(1)} ms, the longest ${Math.max(...frames).toFixed(0)} ms`;
}

function tapsText({ taps }: Measured): string {
  const at = (share: number) => `${quantile(taps, share).toFixed(0)} ms`;
  const slow = quantile(taps, 0.95) / AT_ONCE_MS;
  return `tap or key to paint: half within ${at(0.5)}, 95 % within ${at(0.95)} (${slow.toFixed(2)} of ${AT_ONCE_MS} ms), ${taps.length} of them`;
}

function slowedBy(cdp: CDPSession, rate: number): Promise<unknown> {
  return cdp.send('Emulation.setCPUThrottlingRate', { rate });
}

it(`edits a pattern of four bars, the processor slowed ${SLOWED} times`, async () => {
  const { page, errors } = await app.open();
  const cdp = await page.context().newCDPSession(page);
  await page.getByRole('navigation').getByRole('button', { name: 'Rhythm' }).click();
  await page.getByRole('button', { name: '4 bars', exact: true }).click();
  const places = await placesToEdit(page);
  await watchFrames(page);

  await slowedBy(cdp, SLOWED);
  const atRest = await measuredDuring(page, () => page.waitForTimeout(3000));
  const edited = await measuredDuring(page, () => edit(page, places));
  await slowedBy(cdp, 1);
  await page.getByRole('contentinfo').getByRole('button', { name: 'Play' }).click();
  await page.locator('.pattern-playhead:not([hidden])').waitFor({ timeout: 60_000 });
  await slowedBy(cdp, SLOWED);
  const playing = await measuredDuring(page, () => page.waitForTimeout(5000));
  const editedPlaying = await measuredDuring(page, () => edit(page, places));

  console.log(
    [
      `Rhythm page, a pattern of 4 bars, processor slowed ${SLOWED} times`,
      `  at rest               ${framesText(atRest)}`,
      `  edited                ${framesText(edited)}`,
      `                        ${tapsText(edited)}`,
      `  playing               ${framesText(playing)}`,
      `  edited while it plays ${framesText(editedPlaying)}`,
      `                        ${tapsText(editedPlaying)}`,
    ].join('\n'),
  );
  expect(errors).toEqual([]);
  expect(edited.taps.length).toBeGreaterThan(0);
  expect(editedPlaying.taps.length).toBeGreaterThan(0);
});
