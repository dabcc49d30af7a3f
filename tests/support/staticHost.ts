import { createReadStream, existsSync } from 'node:fs';
import { createServer } from 'node:http';
import type { AddressInfo } from 'node:net';
import { extname, join, normalize } from 'node:path';

const TYPES: Readonly<Record<string, string>> = {
  '.html': 'text/html; charset=utf-8',
  '.js': 'text/javascript',
  '.mjs': 'text/javascript',
  '.css': 'text/css',
  '.svg': 'image/svg+xml',
  '.png': 'image/png',
  '.ogg': 'audio/ogg',
  '.woff2': 'font/woff2',
  '.wasm': 'application/wasm',
  '.webmanifest': 'application/manifest+json',
};

export type StaticHost = {
  /** Address of the folder, with a slash at its end. */
  readonly address: string;
  readonly close: () => Promise<void>;
};

/** Serves the files of a folder below a path, as the plainest host would: no rewriting, nothing added. */
export async function hostFolder(folder: string, below = '/'): Promise<StaticHost> {
  const server = createServer((request, response) => {
    const { pathname } = new URL(request.url ?? '/', 'http://host');
    const name = pathname.startsWith(below) ? pathname.slice(below.length) || 'index.html' : '';
    const file = join(folder, normalize(`/${decodeURIComponent(name)}`));
    if (name === '' || !existsSync(file)) {
      response.writeHead(404).end();
      return;
    }
    response.writeHead(200, {
      'content-type': TYPES[extname(file)] ?? 'application/octet-stream',
      'cache-control': 'no-cache',
    });
    createReadStream(file).pipe(response);
  });
  await new Promise<void>((resolve) => {
    server.listen(0, '127.0.0.1', resolve);
  });
  const { port } = server.address() as AddressInfo;
  return {
    address: `http://127.0.0.1:${port}${below}`,
    close: () =>
      new Promise((resolve) => {
        server.closeAllConnections();
        server.close(() => resolve());
      }),
  };
}
