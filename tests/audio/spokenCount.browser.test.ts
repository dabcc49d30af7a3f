import { describe, expect, it } from 'vitest';
import { COUNT_WORDS, wordAheadSec } from '../../src/audio/countWords.ts';
import { loadSounds } from '../../src/audio/loadSounds.ts';
import { renderOffline } from '../../src/audio/renderOffline.ts';
import { STORED_SOUNDS } from '../../src/audio/soundCatalogue.ts';
import type { AudioData } from '../../src/core/audioData.ts';
import type { Seconds } from '../../src/core/time/ticks.ts';
import { attacksOf, envelopeOf, highestSample, timedNote } from '../support/sound.ts';

const RATES = [44100, 48000];

/** A word whose middle is to fall on a time. */
function spoken(says: number, beatSec: Seconds, durationSec: Seconds = 1) {
  const startSec = beatSec - wordAheadSec(says);
  return timedNote('click', startSec, { keyNumber: 76, velocity: 100, says, durationSec });
}

const rendered = (says: number, sampleRate: number): Promise<AudioData> =>
  renderOffline([spoken(says, 0.5)], { sampleRate, durationSec: 1.5 });

function rms(samples: Float32Array): number {
  return Math.sqrt(samples.reduce((sum, x) => sum + x * x, 0) / samples.length);
}

/** Loudest mean over a tenth of a second. */
function loudestRms({ channels: [left], sampleRate }: AudioData): number {
  const window = Math.round(sampleRate / 10);
  const starts = Array.from({ length: Math.floor(left!.length / 480) }, (_, i) => i * 480);
  return Math.max(...starts.map((start) => rms(left!.subarray(start, start + window))));
}

describe.each(RATES)('at %i samples a second', (sampleRate) => {
  it.each(COUNT_WORDS.map(({ word }, i) => [word, i + 1] as const))(
    '“%s” begins where it must for its middle to be heard on the beat',
    async (_, says) => {
      const envelope = envelopeOf(await rendered(says, sampleRate));
      const beginsSec = envelope.findIndex((x) => x > 0) / sampleRate;
      expect(Math.abs(beginsSec - (0.5 - wordAheadSec(says)))).toBeLessThan(0.002);
    },
  );

  it.each(COUNT_WORDS.map(({ word, vowelSec }, i) => [word, i + 1, vowelSec] as const))(
    '“%s” is louder after the onset of its vowel than before, and silent at its end',
    async (_, says, vowelSec) => {
      const { channels } = await rendered(says, sampleRate);
      const at = (sec: Seconds) => Math.round((0.5 - wordAheadSec(says) + sec) * sampleRate);
      const before = rms(channels[0]!.subarray(at(0), at(vowelSec - 0.005)));
      expect(rms(channels[0]!.subarray(at(vowelSec), at(vowelSec + 0.08)))).toBeGreaterThan(before);
      expect(channels[0]!.subarray(at(0.8)).every((x) => x === 0)).toBe(true);
    },
  );
});

it('speaks all numbers about as loudly, no higher than the click is', async () => {
  const words = await Promise.all(COUNT_WORDS.map((_, i) => rendered(i + 1, 44100)));
  const loudness = words.map(loudestRms);
  expect(Math.max(...loudness) / Math.min(...loudness)).toBeLessThan(10 ** (2 / 20));
  const click = await renderOffline([timedNote('click', 0, { keyNumber: 76, velocity: 112 })]);
  const highest = Math.max(...words.map(highestSample));
  expect(highest / highestSample(click)).toBeLessThan(1.2);
  expect(highest / highestSample(click)).toBeGreaterThan(0.5);
});

it('ends a word before the next one at a fast tempo, without a jump in loudness', async () => {
  // Quarters at 300 beats a minute.
  const beats = [3, 4].map((says, i) => spoken(says, 0.5 + i * 0.2, 0.2));
  const both = await renderOffline(beats, { durationSec: 1.5 });
  const alone = await renderOffline([beats[1]!], { durationSec: 1.5 });
  const from = Math.round((beats[1]!.startSec + 0.12) * 44100);
  const rest = both.channels[0]!.subarray(from).map((x, i) => x - alone.channels[0]![from + i]!);
  expect(Math.max(...rest.map(Math.abs))).toBeLessThan(1e-3);
});

it('clicks on the beat in place of a word that cannot be had', async () => {
  const words = STORED_SOUNDS.filter(({ origin }) => origin.kind === 'spoken').map((sound) => ({
    ...sound,
    origin: { ...sound.origin, url: '/no-such-sound.ogg' } as (typeof sound)['origin'],
  }));
  const bank = await loadSounds(new OfflineAudioContext(1, 1, 48000), words);
  for (const [i, { word }] of COUNT_WORDS.entries()) {
    const [attack] = attacksOf(bank.get(`count/${word}`)!.getChannelData(0));
    expect(attack! / 48000).toBeCloseTo(wordAheadSec(i + 1), 4);
  }
});
