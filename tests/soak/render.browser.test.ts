import { describe, expect, it } from 'vitest';
import { exportWav } from '../../src/app/exports.ts';
import { songScore, timedScore } from '../../src/app/score.ts';
import { renderOffline, renderStretches, STRETCH_SEC } from '../../src/audio/renderOffline.ts';
import type { AudioData } from '../../src/core/audioData.ts';
import type { PracticeSettings } from '../../src/core/practice/practiceSettings.ts';
import { valueOf } from '../support/music.ts';
import { pageMemory } from '../support/pageMemory.ts';
import { seededRandom } from '../support/random.ts';
import { IS_SOAK } from '../support/soakSize.ts';
import { longSong } from '../support/soakSong.ts';
import { difference, envelopeOf, highestSample } from '../support/sound.ts';
import { truePeak } from '../support/truePeak.ts';

const LENGTH_SEC = IS_SOAK ? 3600 : 70;

const RATE = 48_000;

const MINUS_ONE_DB = 10 ** (-1 / 20);

const SONG = longSong(LENGTH_SEC);

const SCORE = valueOf(songScore(SONG, undefined, 100));

function timed(parts: Partial<PracticeSettings>) {
  return timedScore(SCORE, { ...SONG.practice, ...parts }, 0);
}

const EVERYTHING = timed({ click: { ...SONG.practice.click, on: false } });

const CLICKS = timed({ hands: 'none', band: false });

/** How far before a stretch what may sound in it was struck: the longest sound lasts 8 s. */
const BEFORE_SEC = 12;

describe(`a song of ${LENGTH_SEC} s`, () => {
  it('clicks to the sample to its very end, no click lost or added', async () => {
    let next = 0;
    let from = 0;
    let worst = 0;
    const strange: number[] = [];
    const starts = CLICKS.notes.map((note) => note.startSec * RATE);
    await renderStretches(
      CLICKS.notes,
      ({ channels: [samples] }) => {
        let lastLoud = Number.NEGATIVE_INFINITY;
        samples!.forEach((sample, i) => {
          if (sample === 0) return;
          const isAttack = from + i - lastLoud > RATE / 50;
          lastLoud = from + i;
          if (!isAttack) return;
          const miss = Math.abs(from + i - starts[next]!);
          if (miss > 1) strange.push(from + i);
          else worst = Math.max(worst, miss);
          next++;
        });
        from += samples!.length;
      },
      { sampleRate: RATE, durationSec: CLICKS.lengthSec },
    );
    expect(strange.slice(0, 10)).toEqual([]);
    expect(next).toBe(starts.length);
    expect(worst).toBeLessThanOrEqual(0.5 + 1e-6);
  }, 900_000);

  it('never exceeds −1 dBFS, is silent where all rest, and is everywhere what that place alone sounds like', async () => {
    const random = seededRandom(7);
    const stretches = Math.ceil((EVERYTHING.lengthSec + 2) / STRETCH_SEC);
    const compared = new Set([
      0,
      stretches - 1,
      ...Array.from({ length: 10 }, () => random.index(stretches)),
    ]);
    const kept = new Map<number, AudioData>();
    const rests = SCORE.timeline.sections.filter(({ name }) => name === 'rest');
    const beat = (tick: number) => (tick / 480) * (60 / 97) * RATE;
    let index = 0;
    let from = 0;
    let highest = 0;
    let highestBetween = 0;
    let unfinite = 0;
    let notSilent = 0;
    await renderStretches(
      EVERYTHING.notes,
      (audio) => {
        const envelope = envelopeOf(audio);
        for (const sample of envelope) {
          if (!Number.isFinite(sample)) unfinite++;
          if (sample > highest) highest = sample;
        }
        for (const channel of audio.channels)
          highestBetween = Math.max(highestBetween, truePeak(channel));
        for (const rest of rests) {
          // Cymbals ring out; everything has by the second bar of rest.
          const quietFrom = Math.ceil(beat(rest.startTick + 2 * 1920)) - from;
          const quietTo = Math.floor(beat(rest.endTick)) - from;
          for (let i = Math.max(0, quietFrom); i < Math.min(envelope.length, quietTo); i++)
            if (envelope[i]! !== 0) notSilent++;
        }
        if (compared.has(index)) kept.set(index, audio);
        from += envelope.length;
        index++;
      },
      { sampleRate: RATE, durationSec: EVERYTHING.lengthSec + 2 },
    );
    expect({ unfinite, notSilent, length: from }).toEqual({
      unfinite: 0,
      notSilent: 0,
      length: Math.ceil((EVERYTHING.lengthSec + 2) * RATE),
    });
    expect(highest).toBeLessThanOrEqual(MINUS_ONE_DB);
    expect(highestBetween).toBeLessThanOrEqual(MINUS_ONE_DB);
    expect(rests.length).toBeGreaterThan(0);

    for (const [place, audio] of kept) {
      const startSec = place * STRETCH_SEC;
      const beforeSec = Math.max(0, startSec - BEFORE_SEC);
      const lengthSec = audio.channels[0]!.length / RATE;
      const alone = await renderOffline(EVERYTHING.notes, {
        sampleRate: RATE,
        startSec: beforeSec,
        durationSec: startSec - beforeSec + lengthSec,
      });
      const channels = alone.channels.map((channel) =>
        channel.subarray(channel.length - audio.channels[0]!.length),
      );
      expect(
        highestSample(difference(audio, { ...alone, channels })),
        `stretch ${place}`,
      ).toBeLessThan(5e-6);
    }
  }, 1_800_000);

  it('is handed on as a practice track without filling the memory', async () => {
    const before = await pageMemory();
    const shares: number[] = [];
    const track = valueOf(
      await exportWav(
        SONG,
        {
          passage: { kind: 'song', bpm: 97 },
          hands: 'both',
          band: true,
          click: true,
          countInBars: 1,
        },
        { onProgress: (share) => shares.push(share) },
      ),
    );
    // A bar of count-in, and two seconds to die away; 44 bytes of header, 4 a frame.
    const lengthSec = (4 * 60) / 97 + EVERYTHING.lengthSec + 2;
    expect(track.size).toBe(44 + 4 * Math.ceil(lengthSec * 44_100));
    expect(shares).toEqual(shares.toSorted((a, b) => a - b));
    const after = await pageMemory();
    expect(after.megabytes - before.megabytes).toBeLessThan(20);
    expect(after.nodes).toBe(before.nodes);
  }, 900_000);
});
