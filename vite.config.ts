import react from '@vitejs/plugin-react';
import { playwright } from '@vitest/browser-playwright';
import type { Plugin } from 'vite';
import { defineConfig } from 'vitest/config';
import { licencesPlugin } from './src/shipping/licencesPlugin.ts';
import { shippedFilesPlugin } from './src/shipping/shippedFilesPlugin.ts';
import { CHROMIUM_FLAGS, chromiumAt } from './tests/support/chromium.ts';

/** The development server writes styles into the page; the shipped one lets none in from anywhere but its files. */
function looserWhileDeveloping(): Plugin {
  return {
    name: 'looser-while-developing',
    apply: 'serve',
    transformIndexHtml: (html) =>
      html.replace("style-src 'self'", "style-src 'self' 'unsafe-inline'"),
  };
}

export default defineConfig({
  // Every address counts from the page, so that the app can be served from anywhere.
  base: './',
  plugins: [react(), looserWhileDeveloping(), licencesPlugin(), shippedFilesPlugin()],
  build: {
    target: 'es2022',
    // Samples and worklets are fetched by address; inlined they would bloat the first script.
    assetsInlineLimit: (file) => (/\.(ogg|woff2|mjs|mid|svg)$/.test(file) ? false : undefined),
  },
  server: { host: '127.0.0.1', port: 5183 },
  preview: { host: '127.0.0.1', port: 5183 },
  optimizeDeps: {
    include: [
      'tone',
      'tonal',
      'midi-file',
      'idb',
      'valibot',
      'immer',
      'react',
      'vexflow/core',
      'react-dom/client',
      'axe-core',
      'fast-check',
    ],
  },
  test: {
    projects: [
      {
        extends: true,
        test: {
          name: 'unit',
          environment: 'node',
          include: ['tests/**/*.test.{ts,tsx}'],
          exclude: ['tests/**/*.browser.test.{ts,tsx}', 'tests/e2e/**'],
        },
      },
      {
        extends: true,
        test: {
          name: 'browser',
          include: ['tests/**/*.browser.test.{ts,tsx}'],
          testTimeout: 120_000,
          fileParallelism: false,
          browser: {
            enabled: true,
            headless: true,
            screenshotFailures: false,
            instances: [{ browser: 'chromium' }],
            provider: playwright({
              launchOptions: { ...chromiumAt(), args: CHROMIUM_FLAGS },
            }),
          },
        },
      },
      {
        extends: true,
        test: {
          name: 'bench',
          environment: 'node',
          include: process.env['BENCH'] ? ['tests/bench/**/*.bench.ts'] : [],
          testTimeout: 300_000,
          fileParallelism: false,
          disableConsoleIntercept: true,
        },
      },
      {
        extends: true,
        test: {
          name: 'e2e',
          environment: 'node',
          include: ['tests/e2e/**/*.test.ts'],
          testTimeout: 180_000,
          hookTimeout: 120_000,
          fileParallelism: false,
        },
      },
    ],
  },
});
