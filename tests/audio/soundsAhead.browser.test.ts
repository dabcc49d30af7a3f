import { afterEach, describe, expect, it, vi } from 'vitest';
import { afterFirstUse } from '../../src/app/afterFirstUse.ts';
import { STORED_SOUNDS } from '../../src/audio/soundCatalogue.ts';
import { createSoundsAhead } from '../../src/audio/soundsAhead.ts';

afterEach(() => vi.unstubAllGlobals());

/** Counts what is fetched. */
function watchedFetch() {
  const { fetch } = globalThis;
  const fetched: string[] = [];
  vi.stubGlobal('fetch', (url: string) => {
    fetched.push(url);
    return fetch(url);
  });
  return fetched;
}

const RECORDED = STORED_SOUNDS.filter(({ origin }) => origin.kind !== 'synthesised').length;

/** A context at the rate of the device, without sound. */
async function deviceContext(): Promise<OfflineAudioContext> {
  const live = new AudioContext();
  await live.close();
  return new OfflineAudioContext(1, 1, live.sampleRate);
}

function until(condition: () => boolean): Promise<void> {
  return new Promise((resolve) => {
    const watch = setInterval(() => {
      if (!condition()) return;
      clearInterval(watch);
      resolve();
    }, 5);
  });
}

describe('sounds that are loaded ahead', () => {
  it('come one by one while the page rests, and all at once when they are needed', async () => {
    const fetched = watchedFetch();
    const rests: (() => void)[] = [];
    const ahead = createSoundsAhead({
      rest: () => new Promise((resolve) => rests.push(resolve)),
      memoryGb: 8,
    });
    ahead.begin();
    await until(() => rests.length === 1);
    expect(fetched).toEqual([]);
    rests[0]!();
    await until(() => rests.length === 2);
    expect(fetched.length).toBe(1);
    const needed = ahead.at(await deviceContext());
    rests[1]!();
    const sounds = await needed;
    expect(sounds.size).toBe(STORED_SOUNDS.length);
    expect(fetched.length).toBe(RECORDED);
  });

  it('are loaded when they are needed where nothing was begun, or for another rate', async () => {
    const fetched = watchedFetch();
    const ahead = createSoundsAhead({ rest: async () => undefined, memoryGb: undefined });
    const sounds = await ahead.at(new OfflineAudioContext(1, 1, 22_050));
    expect(sounds.get('piano/C4v10')?.sampleRate).toBe(22_050);
    ahead.begin();
    expect(fetched.length).toBe(RECORDED);
  });

  it('are not loaded ahead on a small device, and kept in one channel', async () => {
    const fetched = watchedFetch();
    const ahead = createSoundsAhead({ rest: async () => undefined, memoryGb: 2 });
    ahead.begin();
    await new Promise((resolve) => {
      setTimeout(resolve, 100);
    });
    expect(fetched).toEqual([]);
    const sounds = await ahead.at(await deviceContext());
    expect(new Set([...sounds.values()].map((sound) => sound.numberOfChannels))).toEqual(
      new Set([1]),
    );
  });
});

it('happens once, after the first touch', async () => {
  const page = new EventTarget();
  let times = 0;
  afterFirstUse(page, () => times++);
  page.dispatchEvent(new Event('pointermove'));
  page.dispatchEvent(new Event('keydown'));
  page.dispatchEvent(new Event('pointerdown'));
  await until(() => times > 0);
  await new Promise((resolve) => {
    setTimeout(resolve, 50);
  });
  expect(times).toBe(1);
});
