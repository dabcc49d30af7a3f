import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { userEvent } from 'vitest/browser';
import type { AudioRoom } from '../../src/audio/context.ts';
import { startAudio } from '../../src/audio/context.ts';
import { outputTimestampOf } from '../../src/audio/outputTimestamp.ts';
import type { PlayedNote } from '../../src/core/practice/playedHits.ts';
import type { HitInput, Stop } from '../../src/input/hitInput.ts';
import { twoKeys, twoPads } from '../../src/input/keyInput.ts';
import { midiKeys, openMidi } from '../../src/input/midiInput.ts';
import { fakeMidi, fakePort } from '../support/midiPort.ts';
import { valueOf } from '../support/music.ts';

let room: AudioRoom;

beforeAll(async () => {
  room = valueOf(await startAudio());
  await waitFor(500);
});

afterAll(() => room.context.close());

function waitFor(milliseconds: number): Promise<void> {
  return new Promise((resolve) => {
    setTimeout(resolve, milliseconds);
  });
}

/** Seconds by which the page's clock is ahead of what is heard, out of two hundred looks over two seconds. */
async function aheadOfHeard(): Promise<number> {
  const looks: number[] = [];
  for (let i = 0; i < 200; i++) {
    await waitFor(10);
    looks.push(performance.now() / 1000 - room.context.currentTime + room.outputLatencySec());
  }
  return looks.reduce((sum, look) => sum + look, 0) / looks.length;
}

async function listening(input: HitInput): Promise<{ hits: PlayedNote[]; stop: Stop }> {
  const hits: PlayedNote[] = [];
  const stop = valueOf(
    await input({
      outputTimestamp: () => outputTimestampOf(room),
      latencySec: 0,
      onHit: (note) => hits.push(note),
    }),
  );
  return { hits, stop };
}

/** When events of a type happened, in seconds of the page's clock. */
function timesOf(type: string): { readonly secs: number[]; readonly stop: Stop } {
  const secs: number[] = [];
  const note = (event: Event) => secs.push(event.timeStamp / 1000);
  window.addEventListener(type, note, true);
  return { secs, stop: () => window.removeEventListener(type, note, true) };
}

/** How much the distances between hits differ from those of what made them, at the most. */
function worstDifference(hits: readonly PlayedNote[], secs: readonly number[]): number {
  const ahead = secs.map((sec, i) => sec - hits[i]!.atSec);
  return Math.max(...ahead) - Math.min(...ahead);
}

describe('hits on the clock of what is heard', () => {
  it('of real key presses keep their distances within 2 ms', async () => {
    const { hits, stop } = await listening(twoKeys(window));
    const pressed = timesOf('keydown');
    for (let i = 0; i < 20; i++) {
      await userEvent.keyboard(i % 3 === 0 ? 'f' : 'j');
      await waitFor(20 + 7 * (i % 4));
    }
    stop();
    pressed.stop();
    expect(hits.map((hit) => hit.hand)).toEqual(
      Array.from({ length: 20 }, (_, i) => (i % 3 === 0 ? 'left' : 'right')),
    );
    expect(worstDifference(hits, pressed.secs)).toBeLessThan(0.002);
  });

  it('of MIDI messages keep their distances within 2 ms', async () => {
    const port = fakePort('piano');
    const devices = valueOf(await openMidi(async () => fakeMidi(port)));
    const { hits, stop } = await listening(midiKeys(devices));
    const secs: number[] = [];
    for (let i = 0; i < 50; i++) {
      await waitFor(13 + (i % 5));
      const timeStamp = performance.now();
      secs.push(timeStamp / 1000);
      port.say([0x90, 60 + (i % 3), 80], timeStamp);
    }
    stop();
    expect(hits).toHaveLength(50);
    expect(worstDifference(hits, secs)).toBeLessThan(0.002);
  });

  it('stand on the clock of the context, as the browser ties both together, within 2 ms', async () => {
    const port = fakePort('piano');
    const devices = valueOf(await openMidi(async () => fakeMidi(port)));
    const midi = await listening(midiKeys(devices));
    const keys = await listening(twoKeys(window));
    const ties: number[] = [];
    const stamps: number[] = [];
    const pressed = timesOf('keydown');
    for (let i = 0; i < 40; i++) {
      await waitFor(17 + (i % 5));
      const { contextTime, performanceTime } = room.context.getOutputTimestamp();
      ties.push(contextTime! - performanceTime! / 1000);
      stamps.push(performance.now());
      port.say([0x90, 60, 80], stamps.at(-1)!);
      if (i % 4 === 0) await userEvent.keyboard('j');
    }
    for (const { stop } of [midi, keys, pressed]) stop();
    const tie = ties.toSorted((a, b) => a - b)[ties.length >> 1]!;
    const offs = [
      ...midi.hits.map((hit, i) => hit.atSec - stamps[i]! / 1000 - tie),
      ...keys.hits.map((hit, i) => hit.atSec - pressed.secs[i]! - tie),
    ];
    expect(offs).toHaveLength(50);
    expect(Math.max(...offs.map(Math.abs))).toBeLessThan(0.002);
  });

  it('lie where the context says its output is heard', async () => {
    const ahead = await aheadOfHeard();
    const { hits, stop } = await listening(twoKeys(window));
    const pressed = timesOf('keydown');
    await userEvent.keyboard('f');
    stop();
    pressed.stop();
    // The browser tells its output latency in steps of 8 ms, and its time in blocks of about 10 ms.
    expect(Math.abs(pressed.secs[0]! - hits[0]!.atSec - ahead)).toBeLessThan(0.018);
  });
});

/** Presses a key; gives whether it is kept from doing anything else. */
function press(init: KeyboardEventInit, target: EventTarget = window): boolean {
  const event = new KeyboardEvent('keydown', { cancelable: true, bubbles: true, ...init });
  target.dispatchEvent(event);
  return event.defaultPrevented;
}

describe('two keys', () => {
  it('do nothing else, do not repeat, and leave texts and shortcuts alone', async () => {
    const { hits, stop } = await listening(twoKeys(window));
    const text = document.body.appendChild(document.createElement('input'));
    expect(press({ code: 'KeyF' })).toBe(true);
    expect(press({ code: 'KeyF', repeat: true })).toBe(true);
    expect(press({ code: 'KeyJ', ctrlKey: true })).toBe(false);
    expect(press({ code: 'KeyG' })).toBe(false);
    expect(press({ code: 'KeyF' }, text)).toBe(false);
    stop();
    expect(press({ code: 'KeyF' })).toBe(false);
    text.remove();
    expect(hits).toHaveLength(1);
  });
});

describe('two pads', () => {
  it('tell their hand, every finger by itself', async () => {
    const [left, right] = [document.createElement('button'), document.createElement('button')];
    document.body.append(left, right);
    const { hits, stop } = await listening(twoPads({ left, right }));
    await userEvent.click(right);
    await userEvent.click(left);
    left.dispatchEvent(new PointerEvent('pointerdown', { pointerId: 2 }));
    stop();
    await userEvent.click(left);
    left.remove();
    right.remove();
    expect(hits.map((hit) => hit.hand)).toEqual(['right', 'left', 'left']);
  });
});
