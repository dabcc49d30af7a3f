import type { PlanItem } from '../../../core/practice/plan.ts';
import type { Seconds } from '../../../core/time/ticks.ts';
import type { Parts } from '../tool/parts.ts';
import { practise } from './practise.ts';

/** Begins a line of the plan (by its place) and the clock of its minutes; in a rest nothing plays. */
export function startLine(
  parts: Parts,
  items: readonly PlanItem[],
  index: number,
  nowMs: number,
): void {
  const item = items[index];
  if (!item) return;
  const { view, playback } = parts;
  const { plan } = view.snapshot();
  view.set({
    plan: {
      minutes: plan.minutes,
      next: index + 1,
      begunAtMs: plan.begunAtMs ?? nowMs,
      line: { index, begunAtMs: nowMs },
    },
  });
  if (item.kind === 'rest') playback.stop();
  if (item.kind === 'drill') practise(parts, item);
  if (item.kind === 'run-through')
    practise(parts, { target: { kind: 'song' }, startBpm: item.bpm, goalBpm: item.bpm });
}

/** Puts the clock of the plan away; the plan stays where it is. */
export function leaveLine({ view }: Pick<Parts, 'view'>): void {
  const { line: _, ...plan } = view.snapshot().plan;
  view.set({ plan });
}

/** How much of so many minutes is left, in whole seconds rounded up; 0 once they are over. */
export function secondsLeft(minutes: number, begunAtMs: number, nowMs: number): Seconds {
  return Math.max(0, Math.ceil(60 * minutes - (nowMs - begunAtMs) / 1000));
}

/** Minutes and seconds as on a clock: 2:05. */
export function planClockText(sec: Seconds): string {
  return `${Math.floor(sec / 60)}:${String(sec % 60).padStart(2, '0')}`;
}
