import {
  cacheName,
  outdatedCaches,
  SHIPPED_FILES_MARK,
  type ShippedFile,
  type ShippedFiles,
  sha256Of,
} from './shippedFiles.ts';
import type { FromWorker, ToWorker } from './workerMessages.ts';

// The library of types for pages has no service worker's own scope; these are the parts used here.
type Lasting = Event & { waitUntil(work: Promise<unknown>): void };
type Fetching = Lasting & {
  readonly request: Request;
  respondWith(response: Promise<Response>): void;
};
type Told = Lasting & { readonly data: ToWorker; readonly ports: readonly MessagePort[] };
type WorkerScope = {
  addEventListener(type: 'install' | 'activate', listener: (event: Lasting) => void): void;
  addEventListener(type: 'fetch', listener: (event: Fetching) => void): void;
  addEventListener(type: 'message', listener: (event: Told) => void): void;
  skipWaiting(): Promise<void>;
  readonly clients: { claim(): Promise<void> };
  readonly registration: { readonly scope: string };
};

const worker = globalThis as unknown as WorkerScope;

/** The build puts the list here (`shippedFilesPlugin.ts`). */
const SHIPPED = JSON.parse(SHIPPED_FILES_MARK) as ShippedFiles;

const PAGE = 'index.html';

function addressOf(path: string): string {
  return new URL(path, worker.registration.scope).href;
}

async function isWhole(response: Response | undefined, file: ShippedFile): Promise<boolean> {
  if (!response?.ok) return false;
  return (await sha256Of(await response.clone().arrayBuffer())) === file.sha256;
}

/** A file as it was built: from what any version keeps already, or else from the server; throws where neither has it. */
async function wholeFile(file: ShippedFile): Promise<Response> {
  const address = addressOf(file.path);
  const kept = await caches.match(address);
  if (kept && (await isWhole(kept, file))) return kept;
  const fetched = await fetch(address, { cache: 'reload' });
  if (!(await isWhole(fetched, file))) throw new Error(`${file.path} is not of this version`);
  return fetched;
}

/** Keeps every file of this version that is not kept whole yet. */
async function keepAll(): Promise<void> {
  const cache = await caches.open(cacheName(SHIPPED));
  for (const file of SHIPPED.files) {
    const address = addressOf(file.path);
    // One after the other: the page that is being used meanwhile has the line to itself in between.
    // oxlint-disable-next-line no-await-in-loop
    if (await isWhole(await cache.match(address), file)) continue;
    // oxlint-disable-next-line no-await-in-loop
    await cache.put(address, await wholeFile(file));
  }
}

async function letGo(): Promise<void> {
  const names = outdatedCaches(await caches.keys(), SHIPPED);
  await Promise.all(names.map((name) => caches.delete(name)));
}

/** What is kept of this version, else of the one before (a page of it may be open), else from the server. */
async function answer(request: Request): Promise<Response> {
  const cache = await caches.open(cacheName(SHIPPED));
  const wanted = request.mode === 'navigate' ? addressOf(PAGE) : request.url;
  return (
    (await cache.match(wanted, { ignoreSearch: true })) ??
    (await caches.match(wanted, { ignoreSearch: true })) ??
    fetch(request)
  );
}

async function check(): Promise<FromWorker> {
  try {
    await keepAll();
    return { kind: 'checked', complete: true };
  } catch {
    return { kind: 'checked', complete: false };
  }
}

worker.addEventListener('install', (event) => event.waitUntil(keepAll()));

worker.addEventListener('activate', (event) =>
  event.waitUntil(letGo().then(() => worker.clients.claim())),
);

worker.addEventListener('fetch', (event) => {
  const { request } = event;
  const isOurs = request.method === 'GET' && request.url.startsWith(worker.registration.scope);
  if (isOurs) event.respondWith(answer(request));
});

worker.addEventListener('message', (event) => {
  if (event.data.kind === 'take-over') event.waitUntil(worker.skipWaiting());
  else event.waitUntil(check().then((checked) => event.ports[0]?.postMessage(checked)));
});
