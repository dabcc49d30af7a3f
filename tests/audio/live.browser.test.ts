import { afterAll, beforeAll, expect, it } from 'vitest';
import { type AudioRoom, startAudio } from '../../src/audio/context.ts';
import { createInstruments, type Instruments } from '../../src/audio/instruments.ts';
import type { Pass } from '../../src/audio/pass.ts';
import { createPlayer } from '../../src/audio/player.ts';
import { LOOK_AHEAD_SEC } from '../../src/audio/scheduler.ts';
import { createWorkerTimer, type Timer } from '../../src/audio/workerTimer.ts';
import type { TimedNote } from '../../src/core/rhythm/note.ts';
import type { Seconds } from '../../src/core/time/ticks.ts';
import { valueOf } from '../support/music.ts';
import { timedNote } from '../support/sound.ts';

/** How long the page plays while it is edited and blocked. */
const PLAYING_SEC = 60;

const BEATS = 16;

let room: AudioRoom;
let instruments: Instruments;

beforeAll(async () => {
  room = valueOf(await startAudio());
  instruments = await createInstruments(room.context);
});

afterAll(() => room.context.close());

/** A note that can be told from all others through every edit: the name says pass, part and beat. */
type NamedNote = TimedNote & { readonly name: string };

type Groove = { readonly beatSec: Seconds; readonly swing: number; readonly withBand: boolean };

type GroovePass = Pass & { readonly serial: number; readonly groove: Groove };

type Strike = { readonly name: string; readonly atSec: Seconds; readonly isLate: boolean };

/** Four bars: a click on every beat, a chord on every swung off-beat, the band where it is wanted. */
function groovePass(serial: number, groove: Groove): GroovePass {
  const { beatSec, swing, withBand } = groove;
  const notes = Array.from({ length: BEATS }, (_, beat): NamedNote[] => {
    const named = (note: TimedNote, what: string) => ({
      ...note,
      name: `${serial} ${what} ${beat}`,
    });
    const offBeat = (beat + swing) * beatSec;
    const patternTick = 480 * beat + 240;
    return [
      named(timedNote('click', beat * beatSec, { keyNumber: 77 }), 'click'),
      ...[60, 64, 67].map((keyNumber) =>
        named(timedNote('right', offBeat, { keyNumber, patternTick }), `chord ${keyNumber}`),
      ),
      ...(withBand ? [named(timedNote('snare', beat * beatSec, { keyNumber: 38 }), 'snare')] : []),
    ];
  });
  return { notes: notes.flat(), leadInSec: 0, lengthSec: BEATS * beatSec, serial, groove };
}

/** The groove after so many edits: swing, tempo and band change in turn. */
function grooveAfter(edits: number): Groove {
  const tempos = [0.5, 0.45, 0.55, 0.4] as const;
  const swings = [0.5, 2 / 3, 0.6] as const;
  return {
    beatSec: tempos[Math.floor(edits / 3) % 4]!,
    swing: swings[edits % 3]!,
    withBand: edits % 2 === 1,
  };
}

/** Keeps the main thread busy 60 of every 90 ms until it is told to stop. */
function blockMainThread(): () => void {
  const interval = setInterval(() => {
    const until = performance.now() + 60;
    while (performance.now() < until);
  }, 90);
  return () => clearInterval(interval);
}

function waitFor(milliseconds: number): Promise<void> {
  return new Promise((resolve) => {
    setTimeout(resolve, milliseconds);
  });
}

/** Names of the notes that no edit takes away, of all passes that were played to their end. */
function lastingNames(passes: number): string[] {
  return Array.from({ length: passes }, (_, serial) =>
    groovePass(serial, grooveAfter(0)).notes.map((note) => (note as NamedNote).name),
  ).flat();
}

/**
 * Tells when the player could not work for longer than the look-ahead, although the test itself
 * never blocks the page for so long: other processes had the processor. Only what should have been
 * handed over at an earlier wake is late by the player's fault. `wake` is to be called whenever the
 * player gets to work.
 */
function standstillWatch() {
  let beforeSec = room.clock();
  let lastSec = room.clock();
  let count = 0;
  return {
    wake(): void {
      beforeSec = lastSec;
      lastSec = room.clock();
      if (lastSec - beforeSec > LOOK_AHEAD_SEC) count++;
    },
    standsStill: () => room.clock() - beforeSec > LOOK_AHEAD_SEC,
    count: () => count,
  };
}

it(`plays ${PLAYING_SEC} s, edited every second, the page blocked two thirds of the time: nothing late, twice or lost`, async () => {
  const strikes: Strike[] = [];
  const watch = standstillWatch();
  const watchedInstruments: Instruments = {
    ...instruments,
    strike(note, atSec) {
      const isLate = room.clock() > atSec && !watch.standsStill();
      strikes.push({ name: (note as NamedNote).name, atSec, isLate });
      return instruments.strike(note, atSec);
    },
  };
  const timer = createWorkerTimer();
  const watchedTimer: Timer = {
    ...timer,
    start(tick) {
      timer.start(() => {
        watch.wake();
        tick();
      });
    },
  };
  const player = createPlayer<GroovePass>(room, watchedInstruments, watchedTimer);
  let edits = 0;
  let serial = 0;
  const unblock = blockMainThread();
  player.play(() => groovePass(serial++, grooveAfter(edits)));
  while (edits < PLAYING_SEC) {
    await waitFor(1000);
    edits++;
    watch.wake();
    player.revise((old) => {
      const pass = groovePass(old.serial, grooveAfter(edits));
      const ratio = pass.groove.beatSec / old.groove.beatSec;
      return { pass, secondsIn: (sec) => sec * ratio };
    });
  }
  const whole = player.position()!.passIndex;
  player.stop();
  unblock();
  player.dispose();

  expect(whole).toBeGreaterThan(6);
  expect(watch.count(), 'standstills of an overloaded machine').toBeLessThan(PLAYING_SEC / 3);
  expect(strikes.filter((strike) => strike.isLate)).toEqual([]);
  const { leftOut } = player.statistics();
  expect(leftOut).toBeLessThanOrEqual(4 * watch.count());
  const names = new Set(strikes.map((strike) => strike.name));
  const again = strikes.filter(({ name }, i) => strikes.findIndex((s) => s.name === name) < i);
  expect(again).toEqual([]);
  const lost = lastingNames(whole).filter((name) => !names.has(name));
  expect(lost.slice(leftOut)).toEqual([]);

  const clicks = strikes.filter((strike) => strike.name.includes('click'));
  const gaps = clicks.slice(1).map((click, i) => click.atSec - clicks[i]!.atSec);
  expect(Math.min(...gaps)).toBeGreaterThan(0.4 - 1e-6);
  if (leftOut === 0) expect(Math.max(...gaps)).toBeLessThan(0.55 + 1e-6);
});
