import { type Browser, chromium, type Page } from 'playwright';
import { build } from 'vite';
import { CHROMIUM_FLAGS, chromiumAt } from './chromium.ts';
import { hostFolder } from './staticHost.ts';

/** The built app, served on this machine, and a Chromium to use it with. */
export type ServedApp = {
  readonly browser: Browser;
  /** Opens the app in a new, empty profile; a page error fails the test through `errors`. */
  readonly open: (size?: { readonly width: number; readonly height: number }) => Promise<OpenPage>;
  readonly close: () => Promise<void>;
};

export type OpenPage = { readonly page: Page; readonly errors: readonly string[] };

/** The app as it is shipped: under the runner's own NODE_ENV the slow development build of React would be in it. */
export async function buildApp(outDir: string): Promise<void> {
  const runners = process.env['NODE_ENV'];
  process.env['NODE_ENV'] = 'production';
  try {
    await build({ logLevel: 'error', build: { outDir, emptyOutDir: true } });
  } finally {
    if (runners === undefined) delete process.env['NODE_ENV'];
    else process.env['NODE_ENV'] = runners;
  }
}

/** Builds and serves the app as a user would get it. `flags` are further Chromium flags. */
export async function serveApp(flags: readonly string[] = []): Promise<ServedApp> {
  const outDir = 'node_modules/.vite/served-app';
  await buildApp(outDir);
  const server = await hostFolder(outDir);
  const browser = await chromium.launch({
    ...chromiumAt(),
    args: [...CHROMIUM_FLAGS, ...flags],
  });
  return {
    browser,
    async open(size = { width: 1024, height: 768 }) {
      const page = await browser.newPage({ viewport: size });
      const errors: string[] = [];
      page.on('pageerror', (error) => errors.push(error.message));
      page.on('console', (message) => {
        if (message.type() === 'error') errors.push(message.text());
      });
      await page.goto(server.address);
      return { page, errors };
    },
    async close() {
      await browser.close();
      await server.close();
    },
  };
}
