import { createHash } from 'node:crypto';
import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import type { Plugin } from 'vite';
import { SHIPPED_FILES_MARK, type ShippedFile, type ShippedFiles } from './shippedFiles.ts';

/** The worker's file in the built app: beside the page, since a worker answers only for what lies below it. */
export const WORKER_FILE = 'offlineWorker.js';

const HERE = import.meta.dirname;

/** What a system asks of an app that is installed; addresses count from the manifest's own place. */
const MANIFEST = {
  name: 'Vampwright',
  short_name: 'Vampwright',
  description: "From the band's groove to two hands, one chord, the whole song.",
  start_url: './',
  scope: './',
  display: 'standalone',
  background_color: '#f5eedf',
  theme_color: '#f5eedf',
  icons: [
    { src: 'icons/icon.svg', sizes: 'any', type: 'image/svg+xml' },
    { src: 'icons/icon-192.png', sizes: '192x192', type: 'image/png' },
    { src: 'icons/icon-512.png', sizes: '512x512', type: 'image/png' },
    {
      src: 'icons/icon-maskable-512.png',
      sizes: '512x512',
      type: 'image/png',
      purpose: 'maskable',
    },
  ],
};

function sha256(bytes: string | Uint8Array): string {
  return createHash('sha256').update(bytes).digest('hex');
}

function shippedFiles(files: readonly ShippedFile[]): ShippedFiles {
  const sorted = files.toSorted((a, b) => (a.path < b.path ? -1 : 1));
  return { version: sha256(JSON.stringify(sorted)).slice(0, 16), files: sorted };
}

/**
 * Adds to the build what lets the app be installed and used without a network: manifest, icons, and
 * the worker that keeps every file, with the list of them all.
 */
export function shippedFilesPlugin(): Plugin {
  return {
    name: 'shipped-files',
    apply: 'build',
    enforce: 'post',
    buildStart() {
      this.emitFile({ type: 'chunk', id: join(HERE, 'offlineWorker.ts'), fileName: WORKER_FILE });
      this.emitFile({
        type: 'asset',
        fileName: 'manifest.webmanifest',
        source: JSON.stringify(MANIFEST),
      });
      for (const { src } of MANIFEST.icons)
        this.emitFile({ type: 'asset', fileName: src, source: readFileSync(join(HERE, src)) });
    },
    transformIndexHtml: () => [
      { tag: 'link', attrs: { rel: 'manifest', href: 'manifest.webmanifest' }, injectTo: 'head' },
    ],
    generateBundle: {
      order: 'post',
      handler(_options, bundle) {
        const worker = bundle[WORKER_FILE];
        if (worker?.type !== 'chunk') throw new Error('the offline worker was not built');
        const files = Object.values(bundle)
          .filter(({ fileName }) => fileName !== WORKER_FILE && !fileName.endsWith('.map'))
          .map((file) => ({
            path: file.fileName,
            sha256: sha256(file.type === 'chunk' ? file.code : file.source),
          }));
        if (!worker.code.includes(SHIPPED_FILES_MARK))
          throw new Error('no place for the list of files');
        worker.code = worker.code.replace(new RegExp(`(["'\`])${SHIPPED_FILES_MARK}\\1`), () =>
          JSON.stringify(JSON.stringify(shippedFiles(files))),
        );
      },
    },
  };
}
