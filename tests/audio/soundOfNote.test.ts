import { describe, expect, it } from 'vitest';
import { STORED_SOUNDS, SYNTH_ZONES } from '../../src/audio/soundCatalogue.ts';
import { soundOfNote } from '../../src/audio/soundOfNote.ts';
import { KIT } from '../../src/audio/synth/drumSounds.ts';
import { BETWEEN_KEY, CLICK_KEYS, CLICK_SOUNDS } from '../../src/core/rhythm/click.ts';
import { LAST_SPOKEN } from '../../src/core/rhythm/countIn.ts';
import { DRUM_KEYS, drumPartOf } from '../../src/core/rhythm/drumVoices.ts';
import type { Part } from '../../src/core/rhythm/note.ts';
import { TOUCH_VELOCITY } from '../../src/core/rhythm/realise.ts';
import { SOURCE_PARTS } from '../../src/core/rhythm/sources.ts';

const PARTS: readonly Part[] = ['left', 'right', 'click', ...SOURCE_PARTS];

const KEYS = Array.from({ length: 128 }, (_, keyNumber) => keyNumber);

const strike = (part: Part, keyNumber = 60, velocity = 80) =>
  soundOfNote({ part, keyNumber, velocity });

const stored = new Set(STORED_SOUNDS.map((sound) => sound.id));

it('has a stored sound for every part, key and velocity', () => {
  const missing = PARTS.flatMap((part) =>
    KEYS.flatMap((key) => [1, 64, 127].map((velocity) => strike(part, key, velocity).id)),
  ).filter((id) => !stored.has(id));
  expect(missing).toEqual([]);
});

it('stores no sound twice and none that nothing strikes', () => {
  expect(stored.size).toBe(STORED_SOUNDS.length);
  const struck = new Set(
    PARTS.flatMap((part) =>
      KEYS.flatMap((key) => [1, 64, 127].map((v) => strike(part, key, v).id)),
    ),
  );
  for (let says = 1; says <= LAST_SPOKEN; says++)
    struck.add(soundOfNote({ part: 'click', keyNumber: 76, velocity: 100, says }).id);
  expect([...stored].filter((id) => !struck.has(id))).toEqual([]);
});

describe('the piano', () => {
  it('plays a key that was sampled as it was recorded, others a semitone up or down', () => {
    expect(strike('right', 60)).toMatchObject({ id: 'piano/C4v10', playbackRate: 1 });
    // One semitone is the twelfth root of two.
    expect(strike('right', 61)).toMatchObject({ id: 'piano/C4v10', playbackRate: 2 ** (1 / 12) });
    expect(strike('right', 62)).toMatchObject({ id: 'piano/Ds4v10', playbackRate: 2 ** (-1 / 12) });
  });

  it('gives each touch a layer of its own', () => {
    for (const { ghost, plain, accent } of Object.values(TOUCH_VELOCITY)) {
      const ids = [ghost, plain, accent].map((velocity) => strike('right', 60, velocity).id);
      expect(ids).toEqual(['piano/C4v5', 'piano/C4v10', 'piano/C4v14']);
    }
  });
});

it('sounds half the velocity 12 dB softer, and nothing louder than velocity 127', () => {
  // 40 lg(v/127) dB (common practice).
  expect(strike('right', 60, 127).gain).toBe(1);
  expect(strike('right', 60, 63.5).gain).toBeCloseTo(10 ** (-12.04 / 20), 4);
  expect(strike('right', 60, 300).gain).toBe(1);
});

it('sends each hand, the click and the band into buses of their own', () => {
  const buses = Object.fromEntries(PARTS.map((part) => [part, strike(part).bus]));
  expect(buses).toMatchObject({ left: 'left', right: 'right', click: 'click' });
  expect(SOURCE_PARTS.every((part) => buses[part] === 'band')).toBe(true);
});

it('accents the downbeat with a click of its own', () => {
  for (const sound of CLICK_SOUNDS) {
    expect(strike('click', CLICK_KEYS[sound].downbeat).id).toBe(`click/${sound}-downbeat`);
    expect(strike('click', CLICK_KEYS[sound].beat).id).toBe(`click/${sound}-beat`);
  }
  expect(strike('click', BETWEEN_KEY).id).toBe('click/between');
});

describe('the kit', () => {
  // General MIDI percussion keys 35 to 81 (reference [M21], citing GM Level 1).
  const general = KEYS.filter((key) => key >= 35 && key <= 81);

  it('has one drum for every General MIDI key', () => {
    const drums = general.map((key) => KIT.filter((drum) => drum.keys.includes(key)).length);
    expect(drums.every((count) => count === 1)).toBe(true);
  });

  it('strikes no key of one kind with a drum of another', () => {
    const kinds = KIT.map((drum) => new Set(drum.keys.map(drumPartOf)).size);
    expect(kinds.every((count) => count === 1)).toBe(true);
  });

  it('closes the hi-hat with any stroke on it', () => {
    for (const key of DRUM_KEYS['hi-hat']) expect(strike('hi-hat', key).dampGroup).toBe('hi-hat');
    expect(strike('snare', 38).dampGroup).toBeUndefined();
  });
});

it('computes pitched sounds at keys a minor third apart, none further than two semitones off', () => {
  const gaps = Object.values(SYNTH_ZONES).flatMap((zones) =>
    zones.slice(1).map((zone, i) => zone - zones[i]!),
  );
  expect(new Set(gaps)).toEqual(new Set([3]));
});
