/** Resolves when the page has nothing else to do, or soon. */
export function pageRest(): Promise<void> {
  return new Promise((resolve) => {
    // Safari has no idle callback.
    if ('requestIdleCallback' in globalThis)
      requestIdleCallback(() => resolve(), { timeout: 1000 });
    else setTimeout(resolve, 50);
  });
}

/** Acts once, when the page rests after it was first tapped, clicked or typed in. */
export function afterFirstUse(page: EventTarget, act: () => void): void {
  const first = new AbortController();
  const used = () => {
    first.abort();
    void pageRest().then(act);
  };
  for (const kind of ['pointerdown', 'keydown'])
    page.addEventListener(kind, used, { signal: first.signal });
}

/** The device's memory in GB, roughly, where the browser tells it. */
export function deviceMemoryGb(): number | undefined {
  const told: unknown = Reflect.get(navigator, 'deviceMemory');
  return typeof told === 'number' ? told : undefined;
}
