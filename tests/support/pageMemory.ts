import { cdp } from 'vitest/browser';

/** What `Performance.getMetrics` of Chromium's protocol answers, as far as it is used. */
type Metrics = { readonly metrics: readonly { readonly name: string; readonly value: number }[] };

/** Live audio nodes of all contexts, and the memory of the page's objects in MB, after what is unused was let go. */
export async function pageMemory(): Promise<{
  readonly nodes: number;
  readonly megabytes: number;
}> {
  const session = cdp() as unknown as { send(method: string): Promise<Metrics> };
  await session.send('Performance.enable');
  // What a finalizer lets go is only free at the next collection.
  for (let i = 0; i < 2; i++) {
    await session.send('HeapProfiler.collectGarbage');
    await new Promise((resolve) => {
      setTimeout(resolve, 200);
    });
  }
  const { metrics } = await session.send('Performance.getMetrics');
  const valueAt = (name: string) => metrics.find((each) => each.name === name)?.value ?? Number.NaN;
  return { nodes: valueAt('AudioHandlers'), megabytes: valueAt('JSHeapUsedSize') / 1e6 };
}
