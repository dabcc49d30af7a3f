import { expect, it } from 'vitest';
import { createDrillTakes, type HeardWith } from '../../src/app/drillTakes.ts';
import type { KindOfInput } from '../../src/app/takeInputs.ts';
import { START_DELAY_SEC } from '../../src/audio/player.ts';
import type { PlayedNote } from '../../src/core/practice/playedHits.ts';
import { err } from '../../src/core/result.ts';
import { setLadder } from '../../src/state/edits/practice.ts';
import { NO_COUNT_IN } from '../support/fakePlayback.ts';
import { onFakeTakes } from '../support/fakeTakes.ts';

const DRILL = { kind: 'drill', rung: 0 } as const;

async function denied() {
  return err({ kind: 'denied' } as const);
}

/** A drill of one bar to a rung, 60, 66 and 72 bpm, heard as `heard` says. */
function drilling(heard: HeardWith | undefined, listen?: KindOfInput['listen']) {
  const fakes = onFakeTakes({ practice: NO_COUNT_IN });
  fakes.store.edit(setLadder({ passesPerRung: 1, climb: 'when-clean' }), { label: 'ladder' });
  const { listen: fakeListen, sees } = fakes.input();
  const kind = { listen: listen ?? fakeListen, sees };
  const drillTakes = createDrillTakes({
    ...fakes,
    inputs: { keys: kind, pads: kind, midi: kind, microphone: kind },
    heardWith: () => heard,
  });
  const begin = async () => {
    await fakes.playback.play(DRILL);
    // The take opens its clock and its input first.
    await new Promise((resolve) => setTimeout(resolve));
  };
  return { ...fakes, drillTakes, begin };
}

function bar(startSec: number, bpm: number): PlayedNote[] {
  const at = (beat: number) => startSec + (60 * beat) / bpm;
  return [
    { atSec: at(0), hand: 'left' },
    { atSec: at(0), hand: 'right' },
    { atSec: at(2), hand: 'right' },
  ];
}

const KEYS: HeardWith = { kind: 'keys', latencySec: 0 };

it('tells how a rung was played when the drill goes on to the next, and how all was at the end', async () => {
  const { run, willPlay, begin, drillTakes, playback } = drilling(KEYS);
  await begin();
  willPlay(...bar(0, 60), { atSec: 4, hand: 'left' });
  run(START_DELAY_SEC + 4.5);
  expect(playback.state()).toMatchObject({ bpm: 66 });
  expect(drillTakes.state().result).toMatchObject({
    bpm: 60,
    score: { expected: 3, played: 3, matched: 3, clean: true },
  });
  run(2);
  playback.stop();
  const { result } = drillTakes.state();
  expect(result?.bpm).toBeUndefined();
  expect(result?.score).toMatchObject({ expected: 6, matched: 4, clean: false });
});

it('hears nobody where nothing is chosen', async () => {
  const { run, begin, drillTakes, playback, takes } = drilling(undefined);
  await begin();
  expect(takes.isRunning()).toBe(false);
  run(2);
  playback.stop();
  expect(drillTakes.state()).toEqual({});
});

it('says why the player is not heard, when an input is tried and when it is needed', async () => {
  const { begin, drillTakes } = drilling(KEYS, denied);
  await drillTakes.tryInput('midi');
  expect(drillTakes.state()).toEqual({ problem: { kind: 'denied' } });
  drillTakes.forget();
  await begin();
  expect(drillTakes.state()).toEqual({ problem: { kind: 'denied' } });
});

it('lets the song be played unheard', async () => {
  const { playback, takes } = drilling(KEYS);
  await playback.play({ kind: 'song', times: 1 });
  await new Promise((resolve) => setTimeout(resolve));
  expect(takes.isRunning()).toBe(false);
});
