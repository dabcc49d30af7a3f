import { beforeAll, describe, expect, it } from 'vitest';
import { type Instruments, instrumentsOf } from '../../src/audio/instruments.ts';
import { loadSounds, type SoundBank } from '../../src/audio/loadSounds.ts';
import { FULL_LEVELS, QUIET_LEVELS } from '../../src/audio/mix.ts';
import { STORED_SOUNDS } from '../../src/audio/soundCatalogue.ts';
import { QUIET_START } from '../../src/audio/stage.ts';
import type { AudioData } from '../../src/core/audioData.ts';
import type { Seconds } from '../../src/core/time/ticks.ts';
import { envelopeOf, highestSample, largestStep, timedNote } from '../support/sound.ts';

const RATE = 48000;

/** A second in samples. */
const at = (sec: Seconds) => Math.round(sec * RATE);

let sounds: SoundBank;

beforeAll(async () => {
  sounds = await loadSounds(new OfflineAudioContext(2, 1, RATE), STORED_SOUNDS);
});

/** Renders two seconds in which each action is done when its time has come, as it is while playing. */
async function played(
  actions: readonly (readonly [Seconds, (instruments: Instruments) => void])[],
): Promise<AudioData> {
  const context = new OfflineAudioContext(2, 2 * RATE, RATE);
  const instruments = instrumentsOf(context, sounds, FULL_LEVELS);
  const acted = actions.map(async ([sec, act]) => {
    if (sec > 0) await context.suspend(sec);
    act(instruments);
    if (sec > 0) await context.resume();
  });
  const [buffer] = await Promise.all([context.startRendering(), ...acted]);
  return { channels: [buffer.getChannelData(0), buffer.getChannelData(1)], sampleRate: RATE };
}

/** A steady low tone: any jump stands out against its own slow movement. */
const TONE = timedNote('sung', 0, { keyNumber: 45, velocity: 127, durationSec: 2 });

/** Loudest moment of a short while after 0.3 s. */
const lateOn = (audio: AudioData) => Math.max(...envelopeOf(audio).slice(at(0.32), at(0.4)));

function silenceTwice(instruments: Instruments): void {
  instruments.silence(0);
  instruments.silence(0);
}

const sound = (instruments: Instruments) => void instruments.strike(TONE, 0);

describe('silence', () => {
  it('comes within 20 ms, without a jump larger than the sound itself makes', async () => {
    const steady = (await played([[0, sound]])).channels[0]!;
    const stopped = (
      await played([
        [0, sound],
        [0.5, (i) => i.silence(0.5)],
      ])
    ).channels[0]!;
    expect(stopped.slice(0, at(0.5))).toEqual(steady.slice(0, at(0.5)));
    expect(largestStep(stopped, at(0.49), at(0.6))).toBeLessThan(
      1.1 * largestStep(steady, at(0.3), at(0.6)),
    );
    expect(stopped.slice(at(0.52)).every((x) => x === 0)).toBe(true);
  });

  it('takes back what was struck for later, and only that', async () => {
    const audio = await played([
      [0, (i) => void i.strike(timedNote('click', 0), 0.6)],
      [0.5, (i) => i.silence(0.5)],
      [0.53, (i) => void i.strike(timedNote('click', 0), 0.7)],
    ]);
    const envelope = envelopeOf(audio);
    expect(envelope.findIndex((x) => x > 0)).toBe(at(0.7));
  });

  it('also comes in the middle of a quiet start, without a jump', async () => {
    const risen = await played([
      [0, (i) => i.startQuietly(0)],
      [0, sound],
    ]);
    const stopped = await played([
      [0, (i) => i.startQuietly(0)],
      [0, sound],
      [0.3, (i) => i.silence(0.3)],
    ]);
    const largest = largestStep(risen.channels[0]!, at(0.1), at(0.4));
    expect(largestStep(stopped.channels[0]!, at(0.1), at(0.4))).toBeLessThan(1.1 * largest);
    expect(stopped.channels[0]!.slice(at(0.32)).every((x) => x === 0)).toBe(true);
  });

  it('may be asked for again and again, sounding or not', async () => {
    const audio = await played([
      [0, silenceTwice],
      [0, sound],
      [0.5, silenceTwice],
      [0.6, silenceTwice],
    ]);
    expect(highestSample(audio)).toBeGreaterThan(0.05);
    expect(audio.channels[0]!.slice(at(0.52)).every((x) => x === 0)).toBe(true);
  });
});

describe('levels', () => {
  it('glide without a jump larger than the sound itself makes, however far they go', async () => {
    const steady = (await played([[0, sound]])).channels[0]!;
    const off = { master: 0, left: 0, right: 0, band: 0, click: 0 };
    const changed = await played([
      [0, sound],
      [0.5, (i) => i.setLevels(off)],
      [0.6, (i) => i.setLevels(FULL_LEVELS)],
      [0.605, (i) => i.setLevels(QUIET_LEVELS)],
      [0.61, (i) => i.setLevels(FULL_LEVELS)],
    ]);
    const samples = changed.channels[0]!;
    const largest = largestStep(steady, at(0.3), at(1));
    expect(largestStep(samples, at(0.3), at(1.5))).toBeLessThan(1.1 * largest);
    const lull = envelopeOf(changed).slice(at(0.59), at(0.6));
    expect(Math.max(...lull)).toBeLessThan(0.01 * Math.max(...steady));
    expect(Math.abs(samples[at(1.2)]! - steady[at(1.2)]!)).toBeLessThan(1e-4);
  });
});

it('starts quietly and is at full after a second', async () => {
  const full = await played([[0, sound]]);
  const quiet = await played([
    [0, (i) => i.startQuietly(0)],
    [0, sound],
  ]);
  const ratio = (sec: number) => quiet.channels[0]![at(sec)]! / full.channels[0]![at(sec)]!;
  expect(ratio(0.001)).toBeCloseTo(QUIET_START.amplitude, 2);
  expect(ratio(0.5)).toBeCloseTo((1 + QUIET_START.amplitude) / 2, 2);
  expect(ratio(1.001)).toBeCloseTo(1, 5);
});

describe('a strike', () => {
  it('damps the same key before it, and a closing hi-hat the open one', async () => {
    const open = timedNote('hi-hat', 0, { keyNumber: 46, velocity: 127 });
    const closed = timedNote('hi-hat', 0, { keyNumber: 42, velocity: 1 });
    const ringing = await played([[0, (i) => void i.strike(open, 0)]]);
    const choked = await played([
      [0, (i) => void i.strike(open, 0)],
      [0, (i) => void i.strike(closed, 0.2)],
    ]);
    expect(lateOn(ringing)).toBeGreaterThan(0.01);
    expect(lateOn(choked)).toBeLessThan(0.001);
  });

  it('ends a held note softly when its time is over', async () => {
    const note = timedNote('right', 0, { durationSec: 0.5, velocity: 127 });
    const samples = (await played([[0, (i) => void i.strike(note, 0)]])).channels[0]!;
    const largest = largestStep(samples, at(0.3), at(0.5));
    expect(largestStep(samples, at(0.5), at(1.5))).toBeLessThanOrEqual(largest);
    expect(samples.slice(at(0.5 + 9 * 0.05)).every((x) => x === 0)).toBe(true);
  });

  it('is released early by its handle', async () => {
    const audio = await played([[0, (i) => i.strike(TONE, 0).release(0.4)]]);
    expect(audio.channels[0]!.slice(at(1)).every((x) => x === 0)).toBe(true);
  });

  it('sounds a note of no length', async () => {
    const note = timedNote('left', 0, { durationSec: 0 });
    expect(highestSample(await played([[0, (i) => void i.strike(note, 0)]]))).toBeGreaterThan(0.01);
  });
});

it('fades when it is disposed of, and is silent for good', async () => {
  const steady = (await played([[0, sound]])).channels[0]!;
  const disposed = (
    await played([
      [0, sound],
      [0.5, (i) => i.dispose()],
    ])
  ).channels[0]!;
  const largest = largestStep(steady, at(0.3), at(0.6));
  expect(largestStep(disposed, at(0.49), at(0.6))).toBeLessThan(1.1 * largest);
  expect(disposed.slice(at(0.52)).every((x) => x === 0)).toBe(true);
});
