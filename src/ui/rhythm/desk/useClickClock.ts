import { useRef } from 'react';
import { type Pattern, patternTicks } from '../../../core/rhythm/pattern.ts';
import { countedOn, type HeardMoment, tickAtMs } from '../../../core/rhythm/taps.ts';
import { tempoBeatTicks } from '../../../core/time/meter.ts';
import { secondsPerTick } from '../../../core/time/tempoMap.ts';
import type { Seconds } from '../../../core/time/ticks.ts';
import { useFrame } from '../../kit/useFrame.ts';
import { useParts } from '../../parts/tool/parts.ts';

/** So many looks at the music are kept: about half a second of them. */
const LOOKS_KEPT = 30;

/**
 * Reads a pattern that is heard round and round as a clock: the seconds from its first downbeat at a
 * moment of the page's clock, as events are stamped (in milliseconds); below 0 in the count-in.
 * Undefined while it is not heard. It looks at the music at every frame while `isRunning`.
 */
export function useClickClock(
  isRunning: boolean,
  pattern: Pattern,
): (ms: number) => Seconds | undefined {
  const { playback } = useParts();
  const looks = useRef<HeardMoment[]>([]);

  function tempo() {
    const state = playback.state();
    if (state.status !== 'playing') return undefined;
    const secPerTick = secondsPerTick({
      bpm: state.bpm,
      beatTicks: tempoBeatTicks(pattern.meter),
    });
    return { secPerTick, ticksPerMs: 1 / (1000 * secPerTick) };
  }

  function look(): void {
    const position = playback.position();
    const now = tempo();
    if (!position || !now) {
      looks.current = [];
      return;
    }
    const ms = performance.now();
    const last = looks.current.at(-1);
    const expected = last ? last.tick + (ms - last.ms) * now.ticksPerMs : position.tick;
    const round = patternTicks(pattern);
    const tick = position.countingIn ? position.tick : countedOn(position.tick, expected, round);
    looks.current = [...looks.current, { ms, tick }].slice(-LOOKS_KEPT);
  }

  useFrame(isRunning, () => {
    if (isRunning) look();
    else looks.current = [];
  });

  return (ms) => {
    const now = tempo();
    if (!now || looks.current.length === 0) return undefined;
    return tickAtMs(looks.current, ms, now.ticksPerMs) * now.secPerTick;
  };
}
