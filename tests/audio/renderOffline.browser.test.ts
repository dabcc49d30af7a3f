import { describe, expect, it } from 'vitest';
import { LIMITER_KNEE } from '../../src/audio/limiter.ts';
import { FULL_LEVELS } from '../../src/audio/mix.ts';
import { renderOffline, renderStretches } from '../../src/audio/renderOffline.ts';
import type { Part, TimedNote } from '../../src/core/rhythm/note.ts';
import { perform } from '../../src/core/rhythm/perform.ts';
import { steadyTempo } from '../../src/core/time/tempoMap.ts';
import {
  attacksOf,
  difference,
  envelopeOf,
  highestSample,
  timedNote,
  worstMiss,
} from '../support/sound.ts';

/** 97 bpm: no beat but the first falls on a sample. */
const TEMPO = steadyTempo(97);

/** 121 bars of 4/4 at 97 bpm are 299.4 s. */
const BARS = 121;

const EIGHTH = 240;

/** Notes of one part at given eighths of every bar, short enough to be silent before the next. */
function part(name: Part, keyNumbers: readonly number[], eighths: readonly number[]): TimedNote[] {
  const notes = Array.from({ length: BARS }, (_, bar) =>
    eighths.flatMap((eighth) =>
      keyNumbers.map((keyNumber) => ({
        part: name,
        keyNumber,
        velocity: 60,
        startTick: (8 * bar + eighth) * EIGHTH,
        durationTicks: 60,
      })),
    ),
  );
  return perform(notes.flat(), TEMPO);
}

const SONG: Readonly<Record<string, readonly TimedNote[]>> = {
  click: part('click', [77], [0, 2, 4, 6]),
  right: part('right', [60, 64, 67, 71], [1, 4, 7]),
  left: part('left', [36, 43], [0, 4]),
  bass: part('bass', [36], [0, 3, 6]),
  snare: part('snare', [38], [2, 6]),
};

function expectedAttacks(notes: readonly TimedNote[], sampleRate: number): number[] {
  return [...new Set(notes.map((note) => note.startSec))].map((sec) => sec * sampleRate);
}

describe.each([44100, 48000])('a five-minute song at %i samples a second', (sampleRate) => {
  it('has every attack of every part within a sample of its time', async () => {
    const options = { sampleRate, durationSec: 300 };
    const whole = await renderOffline(Object.values(SONG).flat(), options);
    expect(highestSample(whole)).toBeLessThan(LIMITER_KNEE);
    const misses: Record<string, number> = {};
    for (const [name, notes] of Object.entries(SONG)) {
      const others = Object.values(SONG)
        .flat()
        .filter((note) => !notes.includes(note));
      const alone = difference(whole, await renderOffline(others, options));
      const attacks = attacksOf(envelopeOf(alone), 1e-6, sampleRate / 200);
      misses[name] = worstMiss(attacks, expectedAttacks(notes, sampleRate));
    }
    expect(
      Object.values(misses).filter((miss) => miss > 1),
      JSON.stringify(misses),
    ).toEqual([]);
  });
});

it('renders no notes as exact silence, as long as the tail', async () => {
  const audio = await renderOffline([], { sampleRate: 48000, tailSec: 0.5 });
  expect(audio.channels.map((channel) => channel.length)).toEqual([24000, 24000]);
  expect(highestSample(audio)).toBe(0);
});

it('begins with a count-in that lies before zero', async () => {
  const notes = [timedNote('click', 0), timedNote('click', -0.5)];
  const audio = await renderOffline(notes, { sampleRate: 48000 });
  expect(attacksOf(audio.channels[0]!)).toEqual([0, 24000]);
});

it('begins where it is told and leaves out what starts before or after', async () => {
  const notes = [-0.5, 0, 0.25, 0.5, 1].map((sec) => timedNote('click', sec));
  const audio = await renderOffline(notes, { sampleRate: 48000, startSec: 0, durationSec: 0.75 });
  expect(audio.channels[0]!.length).toBe(36000);
  expect(attacksOf(audio.channels[0]!)).toEqual([0, 12000, 24000]);
});

it('comes to its end also where that lies a few samples after a whole second', async () => {
  for (const frames of [44101, 44130, 44200]) {
    const durationSec = frames / 44100;
    const audio = await renderOffline([timedNote('click', 0.9)], { durationSec });
    expect(audio.channels[0]!.length).toBe(frames);
  }
});

it('sounds parts at their levels, halves the slider to a quarter of the amplitude', async () => {
  const note = timedNote('click', 0, { velocity: 127 });
  const at = async (click: number) =>
    highestSample(await renderOffline([note], { levels: { ...FULL_LEVELS, click } }));
  expect(await at(0)).toBe(0);
  expect((await at(0.5)) / (await at(1))).toBeCloseTo(0.25, 5);
});

it('puts the click into one ear, and into the middle as it is without a place', async () => {
  const note = timedNote('click', 0, { velocity: 100 });
  const ears = async (clickPan: number) => {
    const { channels } = await renderOffline([note], { levels: { ...FULL_LEVELS, clickPan } });
    return channels.map((samples) => highestSample({ channels: [samples], sampleRate: 44100 }));
  };
  const [middle = 0, other = 0] = await ears(0);
  expect(middle).toBeGreaterThan(0.1);
  expect(other).toBeCloseTo(middle, 6);
  // Equal power: all of it in one ear is the amplitude times the square root of two.
  const [left = 0, silent] = await ears(-1);
  expect(left / middle).toBeCloseTo(Math.SQRT2, 4);
  expect(silent).toBeLessThan(1e-6);
  expect((await ears(1))[0]).toBeLessThan(1e-6);
});

it('keeps the densest fortissimo under −1 dBFS', async () => {
  const keys = Array.from({ length: 88 }, (_, i) => 21 + i);
  const pile = [
    ...keys.map((keyNumber) => timedNote('right', 0.1, { keyNumber, velocity: 127 })),
    ...keys.map((keyNumber) => timedNote('strumming', 0.1, { keyNumber, velocity: 127 })),
    ...keys.map((keyNumber) => timedNote('percussion', 0.1, { keyNumber, velocity: 127 })),
  ];
  const highest = highestSample(await renderOffline(pile));
  expect(highest).toBeLessThanOrEqual(10 ** (-1 / 20));
  expect(highest).toBeGreaterThan(0.85);
});

describe('rendering in stretches', () => {
  /** A few bars with everything that may sound over a seam: long notes, damped keys, closed hats. */
  const KEYS = [36, 48, 55, 60, 64, 67];
  const piece: TimedNote[] = Array.from({ length: 24 }, (_, i) => [
    ...KEYS.map((keyNumber, k) =>
      timedNote(k < 2 ? 'left' : 'right', i * 0.311, {
        keyNumber: keyNumber + (i % 3),
        velocity: 30 + 4 * i,
        durationSec: i % 4 === 0 ? 5 : 0.13 * (1 + k),
      }),
    ),
    timedNote('hi-hat', i * 0.311 + 0.05, { keyNumber: i % 2 === 0 ? 46 : 42 }),
    timedNote('bass', i * 0.311, { keyNumber: 36 + (i % 5), durationSec: 1 }),
    timedNote('click', i * 0.311, { keyNumber: 77 }),
  ]).flat();

  it.each([
    [44100, 1],
    [48000, 0.5],
  ])(
    'gives the whole at %i samples a second, to the rounding of sums',
    async (sampleRate, stretchSec) => {
      const whole = await renderOffline(piece, { sampleRate });
      const pieces: Float32Array[][] = [];
      await renderStretches(piece, ({ channels }) => void pieces.push([...channels]), {
        sampleRate,
        stretchSec,
      });
      expect(pieces.length).toBeGreaterThan(8);
      const joined = {
        channels: whole.channels.map((_, c) =>
          Float32Array.from(pieces.flatMap((each) => [...each[c]!])),
        ),
        sampleRate,
      };
      expect(joined.channels.map(({ length }) => length)).toEqual(
        whole.channels.map(({ length }) => length),
      );
      // The order in which a browser adds sounds up is not fixed: two whole renders differ as much.
      expect(highestSample(difference(whole, joined))).toBeLessThan(2e-6);
    },
  );

  it('tells its progress over the whole and can be given up between two pieces', async () => {
    const shares: number[] = [];
    const giveUp = new AbortController();
    let pieces = 0;
    const rendering = renderStretches(
      piece,
      () => {
        pieces++;
        if (pieces === 3) giveUp.abort();
      },
      { stretchSec: 2, onProgress: (share) => shares.push(share), signal: giveUp.signal },
    );
    await expect(rendering).rejects.toThrow('abort');
    expect(pieces).toBe(3);
    expect(shares).toEqual(shares.toSorted((a, b) => a - b));
    expect(shares.at(-1)).toBeLessThan(1);
  });
});
