import { readFileSync } from 'node:fs';
import { createRequire } from 'node:module';
import type { AxeResults } from 'axe-core';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { type OpenPage, type ServedApp, serveApp } from '../support/servedApp.ts';

/** Evaluated in the page, as its policy lets no script in from elsewhere. */
const AXE = readFileSync(createRequire(import.meta.url).resolve('axe-core'), 'utf8');

/** A tablet on the piano, lying and standing, and a laptop. */
const SIZES = [
  { width: 1024, height: 768 },
  { width: 768, height: 1024 },
  { width: 1440, height: 900 },
] as const;

let app: ServedApp;
let open: OpenPage;

beforeAll(async () => {
  app = await serveApp();
  open = await app.open();
});

afterAll(() => app.close());

async function show(name: string, theme: string): Promise<void> {
  const { page } = open;
  await page.evaluate(
    (view) => localStorage.setItem('vampwright-view', view),
    `{"theme":"${theme}"}`,
  );
  await page.reload();
  await page.getByRole('navigation').getByRole('button', { name, exact: true }).click();
  await page.locator(`#page-${name.toLowerCase()} h2`).first().waitFor();
}

/** What a scan calls serious or worse, with where it is. */
async function seriousFaults(): Promise<string[]> {
  const { page } = open;
  await page.evaluate(AXE);
  const { violations } = await page.evaluate(() =>
    (globalThis as unknown as { axe: { run: () => Promise<AxeResults> } }).axe.run(),
  );
  return violations
    .filter(({ impact }) => impact === 'serious' || impact === 'critical')
    .map(({ id, nodes }) => `${id}: ${nodes.map(({ html }) => html).join(' ')}`);
}

describe.each(['paper', 'stage'])('on %s', (theme) => {
  it.each(['Map', 'Hands', 'Rhythm', 'Drill', 'Play'])(
    '%s has no serious fault for assistive technology and fits every size',
    async (name) => {
      await show(name, theme);
      expect(await seriousFaults()).toEqual([]);
      for (const size of SIZES) {
        await open.page.setViewportSize(size);
        await open.page.waitForTimeout(150);
        const [needed, given] = await open.page.evaluate(() => [
          document.documentElement.scrollWidth,
          innerWidth,
        ]);
        expect(needed, `wide at ${size.width}`).toBeLessThanOrEqual(given);
      }
      expect(open.errors).toEqual([]);
    },
  );
});
