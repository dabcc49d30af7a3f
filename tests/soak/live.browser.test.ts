import * as fc from 'fast-check';
import { expect, it } from 'vitest';
import { createPlayback, type Sound } from '../../src/app/playback.ts';
import type { PlayRequest } from '../../src/app/score.ts';
import { startAudio } from '../../src/audio/context.ts';
import { createInstruments } from '../../src/audio/instruments.ts';
import { createPlayer } from '../../src/audio/player.ts';
import { LOOK_AHEAD_SEC } from '../../src/audio/scheduler.ts';
import { SILENT_AFTER_SEC } from '../../src/audio/stage.ts';
import { createWorkerTimer, type Timer } from '../../src/audio/workerTimer.ts';
import { ok } from '../../src/core/result.ts';
import type { Part } from '../../src/core/rhythm/note.ts';
import type { Seconds } from '../../src/core/time/ticks.ts';
import { createStore } from '../../src/state/store.ts';
import { NO_COUNT_IN } from '../support/fakePlayback.ts';
import { section, slots, song, valueOf } from '../support/music.ts';
import { type HeardBlock, outputTap } from '../support/outputTap.ts';
import { pageMemory } from '../support/pageMemory.ts';
import { pattern, source } from '../support/patterns.ts';
import { playLog, type Strike } from '../support/playLog.ts';
import { project } from '../support/project.ts';
import { anyCommand } from '../support/soakCommands.ts';
import { IS_SOAK } from '../support/soakSize.ts';

const LENGTH_SEC = IS_SOAK ? 600 : 12;

const MINUS_ONE_DB = 10 ** (-1 / 20);

function waitFor(sec: Seconds): Promise<void> {
  return new Promise((resolve) => {
    setTimeout(resolve, 1000 * sec);
  });
}

const GRID = {
  meter: { beats: 4, unit: 4, groups: [2, 2] },
  bars: 1,
  divisions: [2, 2, 2, 2],
} as const;

function liveProject() {
  const verse = section('verse', { slots: slots('| C | F |'), patternId: 'p' });
  const chorus = section('chorus', { slots: slots('| Am | G / C / |'), patternId: 'p' });
  const sources = [source(GRID, 'hi-hat', 'xxxxxxxx'), source(GRID, 'bass', 'R--RR---')];
  return project({
    song: song([verse, chorus], 'verse chorus verse'),
    practice: { ...NO_COUNT_IN, band: true },
    patterns: [
      pattern('4/4', { left: 'R---5---', right: '--C---C-' }, { sources, pedal: 'by-chord' }),
    ],
  });
}

const WHOLE_SONG: PlayRequest = { kind: 'song', times: 'until-stopped' };

/** How long after its strike a part may make sharp edges: clicks are over at once, drums are noise. */
const SHARP_SEC: Readonly<Partial<Record<Part, Seconds>>> = {
  click: 0.03,
  left: 0.08,
  right: 0.08,
  bass: 0.08,
};

const DRUM_SEC: Seconds = 2.5;

/** A sharper edge than this where no note begins would be heard as a click (0.4 % of full scale). */
const SHARP_EDGE = 0.004;

/** A page that could not work for longer than the look-ahead had its processor taken away. */
const STANDSTILL_SEC: Seconds = 0.9 * LOOK_AHEAD_SEC;

type Standstill = { readonly fromSec: Seconds; readonly toSec: Seconds };

/** A context computes so much at a time for its device, in which a command comes too late. */
const OUTPUT_SEC: Seconds = 0.03;

type Act = { readonly name: string; readonly atSec: Seconds; readonly tookSec: Seconds };

/** The real thing, from the commands to the context's output, watched everywhere. */
async function livePlayback() {
  const room = valueOf(await startAudio());
  const { clock } = room;
  const tap = await outputTap(room.context);
  const instruments = await createInstruments(room.context);
  const standstills: Standstill[] = [];
  const timer = createWorkerTimer();
  const watchedTimer: Timer = {
    ...timer,
    start(tick) {
      let lastSec = clock();
      timer.start(() => {
        const nowSec = clock();
        if (nowSec - lastSec > STANDSTILL_SEC)
          standstills.push({ fromSec: lastSec, toSec: nowSec });
        lastSec = nowSec;
        tick();
      });
    },
  };
  const player: Sound['player'] = createPlayer(
    room,
    {
      ...instruments,
      strike(note, atSec) {
        log.struck(note, atSec);
        return instruments.strike(note, atSec);
      },
    },
    watchedTimer,
  );
  const log = playLog(player, clock);
  const store = createStore(liveProject());
  const playback = createPlayback({
    store,
    openSound: async () =>
      ok({
        player: log.watched,
        setLevels: (levels) => instruments.setLevels(levels),
        resume: () => room.resume(),
        onInterrupted: () => undefined,
      }),
    often: (act) => {
      const watch = setInterval(act, 60);
      return () => clearInterval(watch);
    },
  });
  const sampling = setInterval(log.sample, 60);
  return {
    room,
    tap,
    instruments,
    player,
    log,
    store,
    playback,
    standstills: (): readonly Standstill[] => standstills,
    async close() {
      clearInterval(sampling);
      player.dispose();
      instruments.dispose();
      tap.close();
      await room.context.close();
    },
  };
}

/** Gives commands for so long and stops; what was done when, and how long each took. */
async function commanded(live: Awaited<ReturnType<typeof livePlayback>>): Promise<Act[]> {
  const { playback, store, room } = live;
  const { clock } = room;
  const acts: Act[] = [];
  const act = async (name: string, run: () => void | Promise<void>) => {
    const atSec = clock();
    const fromMs = performance.now();
    await run();
    acts.push({ name, atSec, tookSec: (performance.now() - fromMs) / 1000 });
  };
  const untilSec = clock() + LENGTH_SEC;
  await act('play', () => playback.play(WHOLE_SONG));
  for (const command of fc.sample(anyCommand(liveProject(), 2), { seed: 4, numRuns: 4000 })) {
    if (clock() > untilSec) break;
    await act(command.name, () => command.act({ playback, store }));
    await waitFor(command.waitSec);
    const state = playback.state();
    if (state.status !== 'stopped') continue;
    // Silence finds few faults: mostly it does not last.
    if (state.problem) store.replace(liveProject());
    if (acts.length % 4 > 0) await act('play', () => playback.play(WHOLE_SONG));
  }
  await act('stop', playback.stop);
  return acts;
}

/** Blocks that should be silent, as nothing was struck since play-back was stopped. */
function soundAfterStops(acts: readonly Act[], heard: readonly HeardBlock[]): string[] {
  return acts.flatMap(({ name, atSec, tookSec }, i) => {
    if (name !== 'stop') return [];
    const fromSec = atSec + tookSec + SILENT_AFTER_SEC + OUTPUT_SEC;
    const next = acts.slice(i).find((act) => act.name.startsWith('play'));
    const toSec = next ? next.atSec : Number.POSITIVE_INFINITY;
    const loud = heard.find((b) => b.atSec > fromSec && b.atSec < toSec && b.peak > 1e-6);
    return loud ? [`${loud.peak} at ${loud.atSec}, stopped at ${atSec}`] : [];
  });
}

function sharpEdges(
  strikes: readonly Strike[],
  heard: readonly HeardBlock[],
  acts: readonly Act[],
): string[] {
  const isOfNote = ({ atSec }: HeardBlock) =>
    strikes.some(
      (strike) =>
        atSec >= strike.atSec - 0.005 &&
        atSec < strike.atSec + (SHARP_SEC[strike.note.part] ?? DRUM_SEC),
    );
  return heard
    .filter((block) => block.edge > SHARP_EDGE && !isOfNote(block))
    .map(({ atSec, edge }) => {
      const act = acts.findLast((each) => each.atSec <= atSec);
      return `edge of ${edge} at ${atSec}, ${atSec - (act?.atSec ?? 0)} s after ${act?.name}`;
    });
}

it(`plays ${LENGTH_SEC} s of random commands without a click, a clip, a stuck, lost or late note`, async () => {
  const live = await livePlayback();
  const before = await pageMemory();
  const acts = await commanded(live);
  await waitFor(1.5);
  const { log, tap } = live;
  const heard = tap.heard();
  const strikes = log.strikes();
  const standstills = live.standstills();
  const slow = acts.filter(({ tookSec }) => tookSec > STANDSTILL_SEC);
  const peak = heard.reduce((most, block) => Math.max(most, block.peak), 0);
  if (IS_SOAK)
    console.log({
      acts: acts.length,
      strikes: strikes.length,
      standstills: standstills.length,
      peak,
      slow,
      ...live.player.statistics(),
    });

  expect(heard.length).toBeGreaterThan((0.9 * LENGTH_SEC * live.room.context.sampleRate) / 128);
  expect(peak).toBeGreaterThan(0.02);
  expect(peak).toBeLessThanOrEqual(MINUS_ONE_DB);
  expect({
    afterStops: soundAfterStops(acts, heard),
    sharp: sharpEdges(strikes, heard, acts).slice(0, 10),
  }).toEqual({ afterStops: [], sharp: [] });
  // A command that takes the page longer than the look-ahead is the machine's fault only now and then.
  expect(slow.length, JSON.stringify(slow)).toBeLessThan(1 + acts.length / 50);
  const excused = (atSec: Seconds) =>
    standstills.some(({ fromSec, toSec }) => atSec > fromSec && atSec < toSec + 0.05);
  const faults = log.faults(excused);
  expect(faults.slice(0, 10)).toEqual([]);

  const after = await pageMemory();
  expect(after.nodes).toBe(before.nodes);
  // What the log itself keeps is in it.
  expect(after.megabytes - before.megabytes).toBeLessThan(10 + LENGTH_SEC / 30);
  await live.close();
}, 1_000_000);
