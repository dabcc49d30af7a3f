import * as fc from 'fast-check';
import { expect, it } from 'vitest';
import { createScheduler, type DueEvent, LOOK_AHEAD_SEC } from '../../src/audio/scheduler.ts';
import { type FakeTime, fakeTime } from '../support/fakeTime.ts';

type Handed = { readonly atSec: number; readonly nowSec: number };

function schedulerOver(time: FakeTime) {
  const handed: Handed[] = [];
  const scheduler = createScheduler<DueEvent>(time.clock, time.timer, ({ atSec }) => {
    handed.push({ atSec, nowSec: time.clock() });
  });
  return { scheduler, handed, times: () => handed.map((event) => event.atSec) };
}

const events = (...times: number[]): DueEvent[] => times.map((atSec) => ({ atSec }));

it('hands over what is due within the look-ahead, at the start and with every tick', () => {
  const time = fakeTime(5);
  const { scheduler, times } = schedulerOver(time);
  scheduler.add(events(5.05, 5.1, 5.3, 6));
  scheduler.start();
  expect(times()).toEqual([5.05, 5.1]);
  time.pass(0.2);
  expect(times()).toEqual([5.05, 5.1, 5.3]);
  time.pass(1);
  expect(times()).toEqual([5.05, 5.1, 5.3, 6]);
});

it('hands over every event once, in order and in time, however irregular the ticks', () => {
  const gap = fc.double({ min: 0.001, max: 0.19, noNaN: true });
  const due = fc.array(fc.double({ min: 0.21, max: 5, noNaN: true }), { maxLength: 60 });
  fc.assert(
    fc.property(due, fc.array(gap, { minLength: 60, maxLength: 60 }), (dueTimes, gaps) => {
      const time = fakeTime();
      const { scheduler, handed, times } = schedulerOver(time);
      scheduler.add(events(...dueTimes));
      scheduler.start();
      for (const sec of gaps) time.stall(sec);
      time.pass(6);
      expect(times()).toEqual(dueTimes.toSorted((a, b) => a - b));
      expect(handed.every(({ atSec, nowSec }) => nowSec <= atSec)).toBe(true);
    }),
  );
});

it('loses nothing when the page stands still longer than the look-ahead', () => {
  const time = fakeTime();
  const { scheduler, times } = schedulerOver(time);
  scheduler.add(events(0.5, 1, 1.5, 2.5));
  scheduler.start();
  time.stall(2);
  expect(times()).toEqual([0.5, 1, 1.5]);
});

it('hands an event at the edge of the look-ahead to the next tick, not to both', () => {
  const time = fakeTime();
  const { scheduler, times } = schedulerOver(time);
  scheduler.add(events(LOOK_AHEAD_SEC));
  scheduler.start();
  expect(times()).toEqual([]);
  time.pass(0.025);
  time.pass(0.025);
  expect(times()).toEqual([LOOK_AHEAD_SEC]);
});

it('keeps the order of events of one time', () => {
  const time = fakeTime();
  const order: string[] = [];
  const scheduler = createScheduler<DueEvent & { readonly name: string }>(
    time.clock,
    time.timer,
    (event) => order.push(event.name),
  );
  scheduler.add([
    { atSec: 1, name: 'first' },
    { atSec: 1, name: 'second' },
  ]);
  scheduler.add([
    { atSec: 1, name: 'third' },
    { atSec: 0.5, name: 'before' },
  ]);
  scheduler.start();
  time.pass(2);
  expect(order).toEqual(['before', 'first', 'second', 'third']);
});

it('replaces what was not handed over, and no more', () => {
  const time = fakeTime();
  const { scheduler, times } = schedulerOver(time);
  scheduler.add(events(0.1, 0.5, 0.9));
  scheduler.start();
  expect(scheduler.waiting()).toEqual(events(0.5, 0.9));
  scheduler.replaceWaiting(events(0.7));
  time.pass(2);
  expect(times()).toEqual([0.1, 0.7]);
});

it('hands over nothing before the start and nothing after the stop', () => {
  const time = fakeTime();
  const { scheduler, times } = schedulerOver(time);
  scheduler.add(events(0.1, 3));
  scheduler.handOver();
  expect(times()).toEqual([]);
  scheduler.start();
  scheduler.stop();
  time.pass(4);
  expect(times()).toEqual([0.1]);
  expect(time.isTicking()).toBe(false);
});

it('may be stopped and filled anew from within the handing over', () => {
  const time = fakeTime();
  const seen: number[] = [];
  const scheduler = createScheduler<DueEvent>(time.clock, time.timer, ({ atSec }) => {
    seen.push(atSec);
    if (atSec !== 0.1) return;
    scheduler.stop();
    scheduler.add(events(0.15, 0.6));
    scheduler.start();
  });
  scheduler.add(events(0.1, 0.12, 0.14));
  scheduler.start();
  time.pass(1);
  expect(seen).toEqual([0.1, 0.15, 0.6]);
});
