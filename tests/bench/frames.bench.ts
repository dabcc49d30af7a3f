import type { CDPSession, Page } from 'playwright';
import { afterAll, beforeAll, expect, it } from 'vitest';
import type { Division } from '../../src/core/rhythm/pattern.ts';
import { encodeProject } from '../../src/formats/projectFile.ts';
import { pattern, source } from '../support/patterns.ts';
import { project } from '../support/project.ts';
import { type ServedApp, serveApp } from '../support/servedApp.ts';

/** How much slower than this machine the page's processor is made, as a tablet's would be. */
const SLOWED = 4;

/** A frame at 60 a second, and what its clock may be off by. */
const FRAME_MS = 1000 / 60;
const CLOCK_MS = 1;

/** A response that comes sooner is felt as coming at once (common practice). */
const AT_ONCE_MS = 100;

/** Steps of a beat, so that a pair of beats has 16; a bar of four beats has 32. */
const STEPS_A_BEAT = 8;
const BARS = 4;

const HANDS = ['right', 'left'] as const;

/** Steps of the first bar that are edited, each in a rest of both hands, and the rests that are painted over. */
const EDITED_STEPS = [9, 12, 27] as const;
const PAINTED = [
  { from: 8, to: 15 },
  { from: 24, to: 31 },
] as const;

const PAUSE_MS = 120;

/** Milliseconds from frame to frame, and from each tap or key to the end of the frame that shows it; when any input came. */
type Measured = { readonly frames: number[]; readonly taps: number[]; readonly inputs: number[] };

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
    const inputs: number[] = [];
    Object.assign(globalThis, { measured: { frames, taps, inputs } });
    for (const kind of ['pointerdown', 'pointermove', 'keydown'])
      addEventListener(kind, ({ timeStamp }) => inputs.push(timeStamp), true);
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

/** Seconds of processor time that the page's own thread has taken so far. */
async function ownSeconds(cdp: CDPSession): Promise<number> {
  const { metrics } = await cdp.send('Performance.getMetrics');
  return metrics.find(({ name }) => name === 'TaskDuration')?.value ?? 0;
}

/**
 * Milliseconds of the processor that one tap, key or move takes while `act` is done, drawing
 * included; unlike frames they are the same on a machine that has other things to do.
 */
async function ownTime(page: Page, cdp: CDPSession, act: () => Promise<void>): Promise<number> {
  const before = await ownSeconds(cdp);
  const { inputs } = await measuredDuring(page, act);
  return (1000 * ((await ownSeconds(cdp)) - before)) / inputs.length;
}

function ownTimeText(ms: number): string {
  const share = ((ms * SLOWED) / FRAME_MS).toFixed(2);
  return `own time to a tap, key or move ${ms.toFixed(1)} ms, slowed ${SLOWED} times ${share} of a frame`;
}

/** What was noted while `act` was done. */
async function measuredDuring(page: Page, act: () => Promise<void>): Promise<Measured> {
  await page.evaluate(() => {
    const { measured } = globalThis as unknown as MeasuringWindow;
    measured.frames.length = 0;
    measured.taps.length = 0;
    measured.inputs.length = 0;
  });
  await act();
  return page.evaluate(() => (globalThis as unknown as MeasuringWindow).measured);
}

type Place = { readonly x: number; readonly y: number };

/** The middle of a step of a hand on the screen. */
async function placeOf(page: Page, hand: string, step: number): Promise<Place> {
  const box = await page.locator(`[data-row="${hand}"][data-column="${step}"]`).boundingBox();
  if (!box) throw new Error(`no place for the ${hand} hand on step ${step}`);
  return { x: box.x + box.width / 2, y: box.y + box.height / 2 };
}

async function placesOf(page: Page, steps: readonly number[]): Promise<Place[]> {
  return Promise.all(HANDS.flatMap((hand) => steps.map((step) => placeOf(page, hand, step))));
}

/** Puts the cursor into the grid, which then does not follow what plays. */
async function workInGrid(page: Page): Promise<void> {
  await page.locator('[data-row="left"][data-column="0"]').focus();
  await page.locator('[data-row="right"][data-column="0"]').focus();
}

/** At each place: a tap, a tone and a touch by keys, a longer hit, a drag to the side and back, and away with it. */
async function edit(page: Page): Promise<void> {
  await workInGrid(page);
  const places = await placesOf(page, EDITED_STEPS);
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

/** Draws hits across every rest in both hands, and takes each back. */
async function paint(page: Page): Promise<void> {
  await workInGrid(page);
  for (const hand of HANDS)
    for (const { from, to } of PAINTED) {
      const [first, last] = [await placeOf(page, hand, from), await placeOf(page, hand, to)];
      await page.mouse.move(first.x, first.y);
      await page.mouse.down();
      await page.mouse.move(last.x, last.y, { steps: 24 });
      await page.mouse.up();
      await page.waitForTimeout(PAUSE_MS);
      await page.keyboard.press('Control+z');
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

/** Four bars with hits in both hands, rests to paint over, and five of the band, as a song file. */
function busySong(): string {
  const bars = (bar: string) => bar.replaceAll(' ', '').repeat(BARS);
  const hands = {
    right: bars('C-.-C-.. ........ C-C-.... ........'),
    left: bars('R-----v- ........ 5----.3- ........'),
  };
  const divisions = Array.from({ length: 4 * BARS }, (): Division => STEPS_A_BEAT);
  const plain = pattern('4/4', hands, { bars: BARS, divisions });
  const sources = [
    source(plain, 'hi-hat', bars('x.x.x.x. x.x.x.x. x.x.x.x. x.x.x.x.')),
    source(plain, 'snare', bars('........ x....... ......x. x.......')),
    source(plain, 'picking', bars('1...3... T...2... 1...3... T.2.....')),
    source(plain, 'bass', bars('R-----.. ....5-.. R---..3. ..5-....')),
    source(plain, 'kick', bars('x....... ....x... ..x..... ........')),
  ];
  return encodeProject(project({ patterns: [{ ...plain, sources }] }));
}

async function openSong(page: Page, song: string): Promise<void> {
  await page.getByRole('button', { name: 'Songs', exact: true }).click();
  await page.getByLabel('Song file').setInputFiles({
    name: 'busy.json',
    mimeType: 'application/json',
    buffer: Buffer.from(song),
  });
  await page
    .getByRole('textbox', { name: 'Title of the song' })
    .and(page.locator('[value="Test song"]'))
    .waitFor();
  await page.keyboard.press('Escape');
  await page.getByRole('navigation').getByRole('button', { name: 'Rhythm' }).click();
}

it(`paints and edits four bars at 16 steps a pair of beats, the band on, the processor slowed ${SLOWED} times`, async () => {
  const { page, errors } = await app.open();
  const cdp = await page.context().newCDPSession(page);
  await openSong(page, busySong());
  await watchFrames(page);
  await cdp.send('Performance.enable', { timeDomain: 'threadTicks' });
  // Once before it counts, so that everything is loaded and compiled.
  await edit(page);
  const ownEdited = await ownTime(page, cdp, () => edit(page));
  const ownPainted = await ownTime(page, cdp, () => paint(page));

  await slowedBy(cdp, SLOWED);
  const atRest = await measuredDuring(page, () => page.waitForTimeout(3000));
  const edited = await measuredDuring(page, () => edit(page));
  const painted = await measuredDuring(page, () => paint(page));
  await slowedBy(cdp, 1);
  await page.getByRole('contentinfo').getByRole('button', { name: 'Start' }).click();
  await page.locator('.pattern-playhead:not([hidden])').waitFor({ timeout: 60_000 });
  await slowedBy(cdp, SLOWED);
  const playing = await measuredDuring(page, () => page.waitForTimeout(5000));
  const editedPlaying = await measuredDuring(page, () => edit(page));
  const paintedPlaying = await measuredDuring(page, () => paint(page));

  console.log(
    [
      `Rhythm page, ${BARS} bars of ${STEPS_A_BEAT * 4} steps, five of the band, processor slowed ${SLOWED} times`,
      `  at rest                ${framesText(atRest)}`,
      `  edited                 ${framesText(edited)}`,
      `                         ${tapsText(edited)}`,
      `                         ${ownTimeText(ownEdited)}`,
      `  painted                ${framesText(painted)}`,
      `                         ${tapsText(painted)}`,
      `                         ${ownTimeText(ownPainted)}`,
      `  playing                ${framesText(playing)}`,
      `  edited while it plays  ${framesText(editedPlaying)}`,
      `                         ${tapsText(editedPlaying)}`,
      `  painted while it plays ${framesText(paintedPlaying)}`,
      `                         ${tapsText(paintedPlaying)}`,
    ].join('\n'),
  );
  expect(errors).toEqual([]);
  for (const { taps } of [edited, painted, editedPlaying, paintedPlaying])
    expect(taps.length).toBeGreaterThan(0);
});
