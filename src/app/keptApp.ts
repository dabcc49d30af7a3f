import type { FromWorker, ToWorker } from '../shipping/workerMessages.ts';

/**
 * Whether the app itself is kept on this device, so that it opens without a network: this browser or
 * address has no way to; it is being kept or looked through; it is all there; it could not be
 * (`reason` is the browser's own).
 * `newer`: another version is kept as well, which is used once every page of this one is closed.
 */
export type KeptAppState = (
  | { readonly kind: 'impossible' }
  | { readonly kind: 'keeping' }
  | { readonly kind: 'kept' }
  | { readonly kind: 'failed'; readonly reason: string }
) & { readonly newer: boolean };

/** The app as the browser keeps it. The functions need no `this`. */
export type KeptApp = {
  readonly state: () => KeptAppState;
  readonly subscribe: (listener: () => void) => () => void;
  /** Leaves this version for the newer one at once: the page opens anew. Without a newer one nothing happens. */
  readonly useNewer: () => void;
};

export type KeptAppParts = {
  /** The browser's keeper of workers; undefined where it has none or may not use it here. */
  readonly workers: ServiceWorkerContainer | undefined;
  /** Address of the worker, from the page. */
  readonly workerUrl: string;
  /** Resolves when the page has nothing else to do. */
  readonly rest: () => Promise<void>;
  /** Opens the page anew. */
  readonly reload: () => void;
};

/** Asks the worker whether everything is kept; what is missing is fetched first, where it can be. */
function askToCheck(worker: ServiceWorker): Promise<FromWorker> {
  return new Promise((resolve) => {
    const channel = new MessageChannel();
    channel.port1.addEventListener('message', ({ data }: MessageEvent<FromWorker>) => {
      channel.port1.close();
      resolve(data);
    });
    channel.port1.start();
    worker.postMessage({ kind: 'check' } satisfies ToWorker, [channel.port2]);
  });
}

/**
 * Has the browser keep the app, looks once whether all of it is there, and learns of a newer version. The open page
 * stays on its own version until `useNewer` or until all pages are closed.
 */
export function createKeptApp({ workers, workerUrl, rest, reload }: KeptAppParts): KeptApp {
  const listeners = new Set<() => void>();
  let state: KeptAppState = { kind: workers ? 'keeping' : 'impossible', newer: false };
  let waiting: ServiceWorker | undefined;

  function show(next: Partial<KeptAppState>): void {
    state = { ...state, ...next } as KeptAppState;
    for (const listener of listeners) listener();
  }

  function watchNewer(worker: ServiceWorker | null): void {
    if (!worker) return;
    const look = () => {
      if (worker.state !== 'installed' || !workers?.controller) return;
      waiting = worker;
      show({ newer: true });
    };
    worker.addEventListener('statechange', look);
    look();
  }

  async function keep(container: ServiceWorkerContainer): Promise<void> {
    const registration = await container.register(workerUrl);
    watchNewer(registration.waiting);
    registration.addEventListener('updatefound', () => watchNewer(registration.installing));
    const { active } = await container.ready;
    if (!active) return;
    const { complete } = await askToCheck(active);
    show(complete ? { kind: 'kept' } : { kind: 'failed', reason: 'some files are missing' });
  }

  if (workers)
    rest()
      .then(() => keep(workers))
      .catch((error) => show({ kind: 'failed', reason: String(error) }));
  return {
    state: () => state,
    subscribe(listener) {
      listeners.add(listener);
      return () => listeners.delete(listener);
    },
    useNewer() {
      if (!waiting || !workers) return;
      workers.addEventListener('controllerchange', reload, { once: true });
      waiting.postMessage({ kind: 'take-over' } satisfies ToWorker, []);
    },
  };
}
