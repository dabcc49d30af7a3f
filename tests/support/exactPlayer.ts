import type { OpenSound } from '../../src/app/openSound.ts';
import type { Playback } from '../../src/app/playback.ts';
import { scoreSeconds } from '../../src/app/score.ts';
import type { SoundingPass } from '../../src/app/soundingPass.ts';
import { outputTimestampOf } from '../../src/audio/outputTimestamp.ts';
import type { Result } from '../../src/core/result.ts';
import { HOME_KEYS } from '../../src/input/keyInput.ts';

/** Presses a key as if at a moment of the page's clock. */
function press(code: string, ms: number): void {
  const event = new KeyboardEvent('keydown', { code, bubbles: true, cancelable: true });
  Object.defineProperty(event, 'timeStamp', { value: ms });
  document.body.dispatchEvent(event);
}

/**
 * Plays each hit of both hands on two keys at its very time, by the clock that the music plays by, but
 * the right hand's on rungs that it leaves out. Gives the function that ends it.
 */
export async function playExactly(
  playback: Pick<Playback, 'passes'>,
  openSound: () => Promise<Result<OpenSound, { readonly reason: string }>>,
  leavesOut: (rung: number) => boolean = () => false,
): Promise<() => void> {
  const sound = await openSound();
  if (!sound.ok) throw new Error(sound.error.reason);
  const { room } = sound.value;
  const done = new Set<string>();
  const playDue = ({ score, originSec, plan, passIndex }: SoundingPass) => {
    const { contextTime, performanceTime } = outputTimestampOf(room);
    for (const { part, startTick } of score.notes) {
      if (part !== 'left' && part !== 'right') continue;
      const atSec = originSec + scoreSeconds(score, startTick);
      const ms = performanceTime + 1000 * (atSec - contextTime);
      const hit = `${passIndex} ${originSec} ${part} ${startTick}`;
      if (ms > performance.now() || done.has(hit)) continue;
      done.add(hit);
      if (part === 'right' && leavesOut(plan.drill?.rung ?? 0)) continue;
      press(HOME_KEYS[part], ms);
    }
  };
  const watch = setInterval(() => {
    for (const pass of playback.passes()) playDue(pass);
  }, 10);
  return () => clearInterval(watch);
}
