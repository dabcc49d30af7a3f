import { describe, expect, it } from 'vitest';
import { renderOffline } from '../../src/audio/renderOffline.ts';
import { TOUCH_VELOCITY } from '../../src/core/rhythm/realise.ts';
import { timedNote } from '../support/sound.ts';

const RATE = 48_000;

/** Mean level of the first 0.3 s of a note, in dB. */
async function levelDb(part: 'left' | 'right', keyNumber: number, velocity: number) {
  const note = timedNote(part, 0, { keyNumber, velocity, durationSec: 1 });
  const { channels } = await renderOffline([note], { sampleRate: RATE, durationSec: 0.3 });
  const power = channels.map((samples) => samples.reduce((sum, x) => sum + x * x, 0));
  return 10 * Math.log10(power.reduce((sum, x) => sum + x, 0) / (2 * 0.3 * RATE));
}

/** A bass, the middle of either hand, and the top of the treble. */
const KEYS = [36, 48, 60, 72, 84] as const;

describe.each(KEYS)('key %i', (keyNumber) => {
  // About 3 dB make a step of dynamics, 10 dB sound twice as loud (common practice).
  it.each(['left', 'right'] as const)(
    'is ghosted, plain and accented apart in the %s hand',
    async (hand) => {
      const { ghost, plain, accent } = TOUCH_VELOCITY[hand];
      const [soft, usual, loud] = await Promise.all(
        [ghost, plain, accent].map((velocity) => levelDb(hand, keyNumber, velocity)),
      );
      expect(usual! - soft!).toBeGreaterThan(6);
      expect(usual! - soft!).toBeLessThan(11);
      expect(loud! - usual!).toBeGreaterThan(4);
      expect(loud! - usual!).toBeLessThan(8);
    },
  );

  it.each([54, 84])(
    'gets evenly louder where one recording gives way to the next, at %i',
    async (velocity) => {
      const below = await levelDb('right', keyNumber, velocity);
      const above = await levelDb('right', keyNumber, velocity + 1);
      expect(above - below).toBeGreaterThan(0);
      expect(above - below).toBeLessThan(0.6);
    },
  );
});

it('is as loud from the bass to the middle, and the left hand a little under the right', async () => {
  const levels = await Promise.all(KEYS.slice(0, 4).map((key) => levelDb('right', key, 72)));
  expect(Math.max(...levels) - Math.min(...levels)).toBeLessThan(1);
  const left = await levelDb('left', 48, TOUCH_VELOCITY.left.plain);
  const right = await levelDb('right', 72, TOUCH_VELOCITY.right.plain);
  expect(right - left).toBeGreaterThan(0.5);
  expect(right - left).toBeLessThan(4);
});
