import { describe, expect, it } from 'vitest';
import { renderOffline } from '../../src/audio/renderOffline.ts';
import { robustCentre } from '../../src/core/practice/calibration.ts';
import { pairTimes } from '../../src/core/practice/pairTimes.ts';
import type { TimedNote } from '../../src/core/rhythm/note.ts';
import { TOUCH_VELOCITY } from '../../src/core/rhythm/realise.ts';
import { findOnsets } from '../../src/signal/onsetStream.ts';
import { type Random, seededRandom } from '../support/random.ts';
import { timedNote } from '../support/sound.ts';

/** A groove in both hands at a tempo, uneven and with every touch, for so many seconds. */
function groove(bpm: number, durationSec: number, random: Random): TimedNote[] {
  const eighthSec = 30 / bpm;
  const touch = () => (['ghost', 'plain', 'plain', 'accent'] as const)[random.index(4)]!;
  const places = Array.from({ length: Math.floor(durationSec / eighthSec) }, (_, i) => i);
  return places.flatMap((place) => {
    if (random.uniform() < 0.3) return [];
    const atSec = 0.5 + place * eighthSec + 0.01 * random.normal();
    const hand = random.uniform() < 0.4 ? 'left' : 'right';
    const velocity = TOUCH_VELOCITY[hand][touch()];
    const root = hand === 'left' ? 36 + random.index(16) : 57 + random.index(12);
    const keys = hand === 'left' ? [root] : [root, root + 4, root + 7];
    const soundingSec = random.uniform() < 0.5 ? 0.8 * eighthSec : 2 * eighthSec;
    return keys.map((keyNumber, i) =>
      timedNote(hand, atSec + 0.003 * i, { keyNumber, velocity, durationSec: soundingSec }),
    );
  });
}

/** The sound as a quiet microphone in a quiet room would give it. */
async function heard(notes: readonly TimedNote[], sampleRate: number): Promise<Float32Array> {
  const random = seededRandom(9);
  const { channels } = await renderOffline(notes, { sampleRate });
  return channels[0]!.map((x, i) => 0.2 * (x + channels[1]![i]!) + 0.0001 * random.normal());
}

describe.each([44100, 48000])('the sampled piano at %i samples a second', (sampleRate) => {
  it.each([70, 100, 130])(
    'at %d bpm is heard with F of at least 0.98, within 10 ms',
    async (bpm) => {
      const notes = groove(bpm, 30, seededRandom(bpm));
      const truth = [...new Set(notes.map((note) => note.startSec))].filter(
        (sec, i, all) => i === 0 || sec - all[i - 1]! > 0.05,
      );
      const found = findOnsets(await heard(notes, sampleRate), sampleRate).filter(
        (sec) => sec > 0.1,
      );
      const pairs = pairTimes(truth, found, 0.05);
      expect((2 * pairs.length) / (truth.length + found.length)).toBeGreaterThanOrEqual(0.98);
      const latenessSec = pairs.map((pair) => found[pair.played]! - truth[pair.expected]!);
      const centreSec = robustCentre(latenessSec);
      expect(Math.abs(centreSec)).toBeLessThan(0.005);
      expect(Math.max(...latenessSec.map((sec) => Math.abs(sec - centreSec)))).toBeLessThan(0.01);
    },
  );
});
