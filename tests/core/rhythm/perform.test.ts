import { expect, it } from 'vitest';
import type { Note } from '../../../src/core/rhythm/note.ts';
import { perform } from '../../../src/core/rhythm/perform.ts';
import { steadyTempo } from '../../../src/core/time/tempoMap.ts';

const note = (startTick: number, durationTicks: number): Note => ({
  part: 'right',
  keyNumber: 60,
  startTick,
  durationTicks,
  velocity: 70,
  patternTick: 0,
});

it('times a note by the tempo of its beat', () =>
  expect(perform([note(960, 480)], steadyTempo(60))).toEqual([
    {
      part: 'right',
      keyNumber: 60,
      startSec: 2,
      durationSec: 1,
      velocity: 70,
      patternTick: 0,
    },
  ]));

it('counts dotted quarters where the tempo does', () =>
  expect(perform([note(720, 720)], steadyTempo(60, 720))[0]).toMatchObject({
    startSec: 1,
    durationSec: 1,
  }));

it('gives a count-in negative times', () =>
  expect(perform([note(-480, 60)], steadyTempo(120))[0]?.startSec).toBe(-0.5));

it('lets a note last over a change of tempo as long as both tempos say', () => {
  const map = [
    { tick: 0, tempo: { bpm: 60, beatTicks: 480 } },
    { tick: 480, tempo: { bpm: 120, beatTicks: 480 } },
  ];
  expect(perform([note(0, 960)], map)[0]?.durationSec).toBeCloseTo(1.5, 12);
});

it('gives nothing for no notes', () => expect(perform([], steadyTempo(100))).toEqual([]));
