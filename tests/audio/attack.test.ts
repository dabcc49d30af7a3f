import { describe, expect, it } from 'vitest';
import {
  ATTACK_SHARE,
  CUT_FADE_SEC,
  fromAttack,
  peakOf,
  rmsOf,
  toSoftEnd,
} from '../../src/audio/attack.ts';

const RATE = 48000;

/** So many samples of hiss at `hiss`, then a tone of height 1. */
function recorded(hissSamples: number, hiss: number, length = 4800): Float32Array {
  return Float32Array.from({ length }, (_, i) =>
    i < hissSamples ? hiss * (i % 2 === 0 ? 1 : -1) : Math.cos((i - hissSamples) / 20),
  );
}

describe('a recorded sound, cut to its attack', () => {
  it('begins where it first stands out, with a low sample that is not zero', () => {
    const { channels } = fromAttack({ channels: [recorded(700, 0.05)], sampleRate: RATE });
    expect(channels[0]!.length).toBe(4800 - 700);
    expect(channels[0]![0]).toBeGreaterThan(0);
    expect(channels[0]![0]).toBeLessThan(0.03);
  });

  it('is at full strength after the fade', () => {
    const { channels } = fromAttack({ channels: [recorded(700, 0.05)], sampleRate: RATE });
    const fade = CUT_FADE_SEC * RATE;
    expect(channels[0]!.slice(fade)).toEqual(recorded(0, 0).slice(fade, 4100));
  });

  it('cuts all channels at the earliest attack of any', () => {
    const channels = [recorded(900, 0), recorded(300, 0)];
    const cut = fromAttack({ channels, sampleRate: RATE });
    expect(cut.channels.map((channel) => channel.length)).toEqual([4500, 4500]);
  });

  it('keeps what is just over the threshold and cuts what is on it', () => {
    const lengths = [1.01, 0.99].map((share) => {
      const channels = [recorded(100, share * ATTACK_SHARE)];
      return fromAttack({ channels, sampleRate: RATE }).channels[0]!.length;
    });
    expect(lengths).toEqual([4800, 4700]);
  });

  it('leaves silence as it is', () => {
    const silence = { channels: [new Float32Array(100)], sampleRate: RATE };
    expect(fromAttack(silence)).toBe(silence);
  });
});

it('fades the end to exactly nothing and leaves the rest alone', () => {
  const sound = recorded(0, 0);
  const [soft] = toSoftEnd({ channels: [sound], sampleRate: RATE }).channels;
  expect(soft!.at(-1)! + 0).toBe(0);
  expect(soft!.slice(0, -48)).toEqual(sound.slice(0, -48));
  expect(Math.abs(soft![4776]!)).toBeCloseTo(Math.abs(sound[4776]! / 2), 1);
});

it('measures peak and mean of all channels', () => {
  const channels = [new Float32Array([0.5, -0.5, 9]), new Float32Array([0.5, -0.5, -10])];
  expect(peakOf(channels)).toBe(10);
  expect(rmsOf(channels, 2)).toBe(0.5);
  expect([peakOf([]), rmsOf([], 2)]).toEqual([0, 0]);
});
