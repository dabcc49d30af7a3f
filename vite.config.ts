import react from '@vitejs/plugin-react';
import { playwright } from '@vitest/browser-playwright';
import { defineConfig } from 'vitest/config';
import { CHROMIUM_FLAGS, chromiumAt } from './tests/support/chromium.ts';

export default defineConfig({
  plugins: [react()],
  build: {
    target: 'es2022',
    // Samples and worklets are fetched by address; inlined they would bloat the first script.
    assetsInlineLimit: (file) => (/\.(ogg|woff2|mjs|mid)$/.test(file) ? false : undefined),
  },
  server: { host: '127.0.0.1', port: 5183 },
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
