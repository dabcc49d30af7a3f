import { expect, it } from 'vitest';
import { measureLatency } from '../../src/app/latency.ts';
import { createPlayer, START_DELAY_SEC } from '../../src/audio/player.ts';
import { CALIBRATION } from '../../src/core/practice/calibration.ts';
import { err, ok } from '../../src/core/result.ts';
import type { Hearing } from '../../src/input/hitInput.ts';
import { fakeTime } from '../support/fakeTime.ts';
import { errorOf, valueOf } from '../support/music.ts';

const BEAT_SEC = 60 / CALIBRATION.bpm;

/** A player with a clock that the test moves, and how many clicks it has struck. */
function clicking() {
  const time = fakeTime();
  let struck = 0;
  const player = createPlayer(
    { clock: time.clock, outputLatencySec: () => 0 },
    {
      strike: (_, atSec) => {
        struck++;
        return { startSec: atSec, endSec: atSec, release: () => undefined };
      },
      silence: () => undefined,
      startQuietly: () => undefined,
    },
    time.timer,
  );
  const outputTimestamp = () => ({ contextTime: time.clock(), performanceTime: 0 });
  return { time, parts: { player, outputTimestamp }, struck: () => struck };
}

it('tells how late someone’s hits arrive who plays along with sixteen clicks', async () => {
  const { time, parts, struck } = clicking();
  let hearing: Hearing | undefined;
  let isHeard = true;
  const measurement = valueOf(
    await measureLatency(parts, async (heard) => {
      hearing = heard;
      return ok(() => {
        isHeard = false;
      });
    }),
  );
  const firstSec = START_DELAY_SEC + 4 * BEAT_SEC;
  for (let i = 0; i < CALIBRATION.beats; i++)
    hearing!.onHit({ atSec: firstSec + i * BEAT_SEC + 0.07 + (i % 2 === 0 ? 0.01 : -0.01) });
  expect(measurement.hits()).toBe(16);
  time.pass(20 * BEAT_SEC + 3);
  const calibration = valueOf(await measurement.done);
  expect(struck()).toBe(20);
  expect(calibration.latencySec).toBeCloseTo(0.07, 6);
  expect(hearing!.latencySec).toBe(0);
  expect(isHeard).toBe(false);
});

it('has nothing to tell where hardly anything was played', async () => {
  const { time, parts } = clicking();
  const measurement = valueOf(await measureLatency(parts, async () => ok(() => undefined)));
  time.pass(20 * BEAT_SEC + 3);
  expect(errorOf(await measurement.done)).toMatchObject({ kind: 'too-few-hits', hits: 0 });
});

it('does not begin without its input, and falls silent when it is cancelled', async () => {
  const { time, parts, struck } = clicking();
  expect(await measureLatency(parts, async () => err({ kind: 'no-device' }))).toEqual(
    err({ kind: 'no-device' }),
  );
  time.pass(2);
  expect(struck()).toBe(0);
  const measurement = valueOf(await measureLatency(parts, async () => ok(() => undefined)));
  time.pass(1);
  const before = struck();
  measurement.cancel();
  time.pass(5);
  expect(struck()).toBe(before);
});
