import { mkdtemp, rm } from 'node:fs/promises';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { type BrowserContext, chromium, type Page } from 'playwright';
import { afterAll, beforeAll, expect, it } from 'vitest';
import { CHROMIUM_FLAGS, chromiumAt } from '../support/chromium.ts';
import { buildApp } from '../support/servedApp.ts';
import { hostFolder, type StaticHost } from '../support/staticHost.ts';

const OUT_DIR = 'node_modules/.vite/offline-app';

let host: StaticHost;
let profile: string;

beforeAll(async () => {
  await buildApp(OUT_DIR);
  // Below a path, as many hosts serve it.
  host = await hostFolder(OUT_DIR, '/music/room/');
  profile = await mkdtemp(join(tmpdir(), 'vampwright-'));
});

afterAll(async () => {
  await host.close();
  await rm(profile, { recursive: true, force: true });
});

function openBrowser(): Promise<BrowserContext> {
  return chromium.launchPersistentContext(profile, { ...chromiumAt(), args: CHROMIUM_FLAGS });
}

/** Opens the app; what goes wrong in the page is collected. */
async function openApp(context: BrowserContext): Promise<{ page: Page; errors: string[] }> {
  const page = await context.newPage();
  const errors: string[] = [];
  page.on('pageerror', (error) => errors.push(error.message));
  await page.goto(host.address);
  return { page, errors };
}

async function waitUntilKept(page: Page): Promise<void> {
  await page.getByRole('button', { name: /keys/i }).first().click();
  await page.getByText('it opens and plays without a network').waitFor({ timeout: 60_000 });
  await page.getByRole('button', { name: 'Close' }).last().click();
}

it('opens below a path and, once it was there, without its host: after a reload and in a new browser', async () => {
  const first = await openBrowser();
  const { page, errors } = await openApp(first);
  await waitUntilKept(page);
  await host.close();
  await page.reload();
  await page.getByRole('button', { name: 'Start', exact: true }).waitFor();
  await first.close();

  const second = await openBrowser();
  const later = await openApp(second);
  await later.page.getByRole('button', { name: 'Start', exact: true }).click();
  await later.page.getByRole('button', { name: 'Stop', exact: true }).waitFor({ timeout: 20_000 });
  await later.page.getByRole('button', { name: 'Stop', exact: true }).click();
  expect([...errors, ...later.errors]).toEqual([]);
  await second.close();
});

it('says that nothing is kept, and works, where the browser refuses all site data', async () => {
  const site = await hostFolder(OUT_DIR);
  const browser = await chromium.launch({ ...chromiumAt(), args: CHROMIUM_FLAGS });
  const page = await browser.newPage();
  const errors: string[] = [];
  page.on('pageerror', (error) => errors.push(error.message));
  await page.addInitScript(() => {
    const refuse = () => {
      throw new DOMException('site data is blocked', 'SecurityError');
    };
    Object.defineProperty(window, 'localStorage', { get: refuse });
    Object.defineProperty(window, 'indexedDB', { get: refuse });
    Object.defineProperty(navigator, 'serviceWorker', { get: () => undefined });
  });
  await page.goto(site.address);
  await page.getByText('This browser keeps nothing here').waitFor();
  await page.getByRole('button', { name: 'Start', exact: true }).click();
  await page.getByRole('button', { name: 'Stop', exact: true }).waitFor();
  expect(errors).toEqual([]);
  await browser.close();
  await site.close();
});

it('has the terms of everything that ships beside the page', async () => {
  const site = await hostFolder(OUT_DIR);
  const text = await (await fetch(new URL('licences.txt', site.address))).text();
  await site.close();
  for (const name of ['react-dom', 'valibot', '@vexflow-fonts/leland', 'Alexander Holm'])
    expect(text).toContain(name);
});
