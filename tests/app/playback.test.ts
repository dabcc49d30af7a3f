import * as fc from 'fast-check';
import { expect, it } from 'vitest';
import { createPlayback } from '../../src/app/playback.ts';
import type { PlayRequest } from '../../src/app/score.ts';
import { START_DELAY_SEC } from '../../src/audio/player.ts';
import { err } from '../../src/core/result.ts';
import { AS_WRITTEN } from '../../src/state/arrangement.ts';
import { setClick, setLadder, setSoundingHands } from '../../src/state/edits/practice.ts';
import { createStore } from '../../src/state/store.ts';
import { NO_COUNT_IN, onFakeTime, threeSections } from '../support/fakePlayback.ts';
import { song } from '../support/music.ts';
import { pattern } from '../support/patterns.ts';
import { PRACTICE, project } from '../support/project.ts';

const SONG: PlayRequest = { kind: 'song', times: 1 };

it('plays a song after its count-in and stops at its end', async () => {
  const { pass, playback, strikes } = onFakeTime();
  await playback.play(SONG);
  expect(playback.state()).toMatchObject({ status: 'playing', bpm: 120 });
  pass(1);
  expect(playback.position()).toMatchObject({ countingIn: true, beat: 1 });
  pass(12);
  expect(strikes('left')).toEqual([2, 4]);
  expect(strikes('right')).toEqual([2, 3, 4, 5]);
  expect(strikes('click')).toEqual(Array.from({ length: 12 }, (_, i) => i / 2));
  expect(playback.state()).toEqual({ status: 'stopped' });
  expect(playback.position()).toBeUndefined();
});

it('tells the bar, the beat and the chord that are heard', async () => {
  const { pass, playback } = onFakeTime({ practice: NO_COUNT_IN });
  await playback.play(SONG);
  pass(START_DELAY_SEC + 2.6);
  const position = playback.position();
  expect(position).toMatchObject({ bar: 1, beat: 1, countingIn: false });
  expect(position?.chord?.slot).toBe(1);
  expect(position?.tick).toBeCloseTo(2.6 * 960, 6);
});

it('climbs the tempo ladder pass by pass and stays on its top', async () => {
  const { pass, playback, strikes } = onFakeTime();
  await playback.play({ kind: 'drill', rung: 0 });
  expect(playback.state()).toMatchObject({ bpm: 60, drill: { rung: 1, rungs: 3, pass: 1 } });
  pass(9);
  expect(playback.state()).toMatchObject({ drill: { rung: 1, pass: 2, passes: 2 } });
  pass(12);
  // A bar of four lasts 4 s at 60, 240/66 s at 66 and 240/72 s at 72 beats a minute.
  const [at60, at66, at72] = [4, 240 / 66, 240 / 72];
  const starts = [at60, 2 * at60, 3 * at60, 3 * at60 + at66, 3 * at60 + 2 * at66];
  expect(strikes('left').slice(0, 5)).toEqual(starts.map((sec) => Math.round(sec * 1000) / 1000));
  pass(2 * at72);
  expect(playback.state()).toMatchObject({ bpm: 72, drill: { rung: 3, pass: 3 } });
});

it('moves a drill to another rung at its next pass', async () => {
  const { pass, playback } = onFakeTime({ practice: NO_COUNT_IN });
  await playback.play({ kind: 'drill', rung: 0 });
  playback.changeRung(1);
  playback.changeRung(1);
  expect(playback.state()).toMatchObject({ drill: { rung: 1 }, wanted: { rung: 2 } });
  pass(START_DELAY_SEC + 4.1);
  expect(playback.state()).toMatchObject({ bpm: 72, drill: { rung: 3, pass: 1 } });
  playback.changeRung(-1);
  pass(240 / 72);
  expect(playback.state()).toMatchObject({ bpm: 66, drill: { rung: 2, pass: 1 } });
});

it('begins a drill on the rung that was chosen', async () => {
  const { pass, playback } = onFakeTime({ practice: NO_COUNT_IN });
  await playback.play({ kind: 'drill', rung: 1 });
  pass(START_DELAY_SEC + 0.1);
  expect(playback.state()).toMatchObject({ bpm: 66, drill: { rung: 2, pass: 1 } });
});

it('waits on a rung until it is told where the ladder climbs only when clean', async () => {
  const { pass, store, playback } = onFakeTime({ practice: NO_COUNT_IN });
  store.edit(setLadder({ climb: 'when-clean' }), { label: 'climb' });
  await playback.play({ kind: 'drill', rung: 0 });
  pass(30);
  expect(playback.state()).toMatchObject({ bpm: 60, drill: { rung: 1 } });
});

it('lets an edit be heard from the look-ahead on, without starting anew', async () => {
  const { pass, store, playback, strikes } = onFakeTime({ practice: NO_COUNT_IN });
  await playback.play(SONG);
  pass(START_DELAY_SEC + 0.5);
  store.edit(setSoundingHands('left'), { label: 'hands' });
  store.edit(setClick({ beats: 'downbeat' }), { label: 'click' });
  pass(4);
  expect(strikes('right')).toEqual([0]);
  expect(strikes('left')).toEqual([0, 2]);
  expect(strikes('click')).toEqual([0, 0.5, 2]);
});

it('keeps its place in the music when the speed changes', async () => {
  const { pass, playback } = onFakeTime({ practice: NO_COUNT_IN });
  await playback.play(SONG);
  pass(START_DELAY_SEC + 1);
  const before = playback.position()?.tick ?? 0;
  playback.setManner({ speedPercent: 50, arrangement: AS_WRITTEN });
  expect(playback.position()?.tick).toBeCloseTo(before, 6);
  pass(1.2);
  expect(playback.state()).toMatchObject({ bpm: 60 });
  // 0.2 s of look-ahead at 120, then 1 s at 60 beats a minute.
  expect(playback.position()?.tick).toBeCloseTo(before + 0.2 * 960 + 480, 3);
});

it('plays only the bars asked for, again and again', async () => {
  const { pass, playback, strikes } = onFakeTime({ practice: NO_COUNT_IN });
  await playback.play({ kind: 'song', range: { firstBar: 1, endBar: 2 }, times: 'until-stopped' });
  pass(START_DELAY_SEC + 3);
  expect(playback.position()).toMatchObject({ bar: 1, beat: 2 });
  pass(2);
  expect(strikes('left')).toEqual([0, 2, 4]);
});

it('stays silent when it is stopped before the sound has opened', async () => {
  const { pass, playback, strikes } = onFakeTime();
  const started = playback.play(SONG);
  playback.stop();
  await started;
  pass(5);
  expect(strikes('click')).toEqual([]);
  expect(playback.state()).toEqual({ status: 'stopped' });
});

it('says why nothing sounds, and forgets it when told', async () => {
  const store = createStore(project());
  const playback = createPlayback({
    store,
    openSound: async () => err({ reason: 'no device' }),
    often: () => () => undefined,
  });
  await playback.play(SONG);
  expect(playback.state()).toEqual({
    status: 'stopped',
    problem: { kind: 'no-sound', reason: 'no device' },
  });
  playback.dismiss();
  expect(playback.state()).toEqual({ status: 'stopped' });
});

it('stops and says so where the system takes the sound away, and plays again when asked to', async () => {
  const { playback, interrupt, pass } = onFakeTime();
  interrupt();
  await playback.play(SONG);
  pass(1);
  interrupt();
  expect(playback.state()).toEqual({ status: 'stopped', problem: { kind: 'interrupted' } });
  await playback.play(SONG);
  expect(playback.state().status).toBe('playing');
});

it('has nothing to play where the form is empty', async () => {
  const { playback } = onFakeTime({ song: song([], '') });
  await playback.play(SONG);
  expect(playback.state()).toMatchObject({ problem: { kind: 'nothing-to-play' } });
});

it('lets a pattern be tried that is not in the project, at once and with both hands', async () => {
  const { pass, store, playback, strikes } = onFakeTime({
    practice: { ...PRACTICE, hands: 'none' },
  });
  const before = store.snapshot();
  const tried = pattern('4/4', { left: '..R.', right: 'C..C' }, { id: 'from the shelf' });
  await playback.play({ kind: 'pattern', patternId: tried.id, pattern: tried });
  pass(3.1);
  expect(strikes('left')).toEqual([1, 3]);
  expect(strikes('right')).toEqual([0, 1.5, 2]);
  expect(store.snapshot()).toBe(before);
});

it('jumps at the next bar line, without a gap, and goes on from there to the end', async () => {
  const { pass, playback, basses, strikes } = threeSections();
  await playback.play(SONG);
  pass(START_DELAY_SEC + 0.5);
  playback.jump({ toBar: 3 });
  expect(playback.state()).toMatchObject({ wantedBar: 3 });
  pass(1.4);
  expect(playback.state()).toMatchObject({ wantedBar: 3 });
  expect(playback.position()).toMatchObject({ bar: 0 });
  pass(0.2);
  expect(playback.state()).not.toHaveProperty('wantedBar');
  expect(playback.position()).toMatchObject({ bar: 3 });
  pass(8);
  expect(basses()).toEqual(['C 0', 'G 2', 'C 4', 'F 6']);
  expect(strikes('click')).toEqual(Array.from({ length: 16 }, (_, i) => i / 2));
  expect(playback.state()).toEqual({ status: 'stopped' });
});

it('takes the bar line after, where what leads over the next is under way already', async () => {
  const { pass, playback, basses } = threeSections();
  await playback.play(SONG);
  pass(START_DELAY_SEC + 1.9);
  playback.jump({ toBar: 2 });
  pass(3.5);
  expect(basses()).toEqual(['C 0', 'F 2', 'A 4']);
});

it('follows the last jump that was asked for', async () => {
  const { pass, playback, basses } = threeSections();
  await playback.play(SONG);
  pass(START_DELAY_SEC + 0.5);
  playback.jump({ toBar: 3 });
  pass(1);
  playback.jump({ toBar: 2 });
  pass(3);
  expect(basses()).toEqual(['C 0', 'A 2', 'G 4']);
});

it('jumps also when what follows has been made already', async () => {
  const { pass, playback, basses } = threeSections();
  await playback.play({ kind: 'song', range: { firstBar: 0, endBar: 1 }, times: 'until-stopped' });
  // The second time through is made 0.3 s before the end of the first, the look-ahead is 0.2 s.
  pass(START_DELAY_SEC + 1.75);
  playback.jump({ toBar: 2 });
  pass(4);
  expect(basses()).toEqual(['C 0', 'A 2', 'G 4']);
});

it('keeps the count-in when it jumps during it', async () => {
  const { pass, playback, basses, strikes } = threeSections({ practice: PRACTICE });
  await playback.play(SONG);
  pass(START_DELAY_SEC + 0.7);
  playback.jump({ toBar: 2 });
  pass(4);
  expect(basses()).toEqual(['A 2', 'G 4']);
  expect(strikes('click').slice(0, 5)).toEqual([0, 0.5, 1, 1.5, 2]);
});

it('goes round in other bars after a jump that names them', async () => {
  const { pass, playback, basses } = threeSections();
  await playback.play({ kind: 'song', range: { firstBar: 0, endBar: 2 }, times: 2 });
  pass(START_DELAY_SEC + 0.5);
  playback.jump({ toBar: 2, range: { firstBar: 2, endBar: 4 } });
  pass(2);
  expect(playback.state()).toMatchObject({ request: { range: { firstBar: 2 } }, time: 1 });
  pass(4);
  expect(playback.state()).toMatchObject({ time: 2 });
  pass(6);
  expect(basses()).toEqual(['C 0', 'A 2', 'G 4', 'A 6', 'G 8']);
  expect(playback.state()).toEqual({ status: 'stopped' });
});

it('jumps back while the last notes die away', async () => {
  const { pass, playback, basses } = threeSections();
  await playback.play({ kind: 'song', range: { firstBar: 5, endBar: 6 }, times: 1 });
  pass(START_DELAY_SEC + 2.5);
  playback.jump({ toBar: 4 });
  pass(1);
  expect(basses()).toEqual(['F 0', `C ${2.5 + START_DELAY_SEC}`]);
});

it('jumps in step at another speed', async () => {
  const { pass, playback, basses } = threeSections();
  await playback.play(SONG);
  pass(START_DELAY_SEC + 1);
  playback.jump({ toBar: 2 });
  playback.setManner({ speedPercent: 50, arrangement: AS_WRITTEN });
  pass(4);
  // The look-ahead of 0.2 s still goes at 120; the 0.8 s to the bar line take twice as long at 60.
  expect(basses()).toEqual(['C 0', 'A 2.8']);
});

it('does not jump in a drill', async () => {
  const { pass, playback } = threeSections();
  await playback.play({ kind: 'drill', rung: 0 });
  pass(START_DELAY_SEC + 0.5);
  playback.jump({ toBar: 2 });
  expect(playback.state()).not.toHaveProperty('wantedBar');
});

it('plays so many times as it is asked to', async () => {
  const { pass, playback, basses } = threeSections();
  await playback.play({ kind: 'song', range: { firstBar: 1, endBar: 2 }, times: 3 });
  pass(START_DELAY_SEC + 4.5);
  expect(playback.state()).toMatchObject({ time: 3 });
  pass(5);
  expect(basses()).toEqual(['F 0', 'F 2', 'F 4']);
});

it('lets it be changed while it plays how often it is played', async () => {
  const { pass, playback, basses } = threeSections();
  await playback.play({ kind: 'song', range: { firstBar: 1, endBar: 2 }, times: 'until-stopped' });
  pass(START_DELAY_SEC + 2.5);
  playback.setTimes(3);
  pass(2);
  expect(playback.state()).toMatchObject({ request: { times: 3 }, time: 3 });
  pass(5);
  expect(basses()).toEqual(['F 0', 'F 2', 'F 4']);
});

it('keeps the beat whenever and wherever it jumps', async () => {
  const jumps = fc.record({
    waitSec: fc.double({ min: 0.001, max: 3, noNaN: true }),
    toBar: fc.integer({ min: 0, max: 5 }),
  });
  await fc.assert(
    fc.asyncProperty(fc.array(jumps, { minLength: 1, maxLength: 12 }), async (each) => {
      const { pass, playback, basses, strikes } = threeSections();
      await playback.play({ kind: 'song', times: 'until-stopped' });
      for (const { waitSec, toBar } of each) {
        pass(waitSec);
        playback.jump({ toBar });
      }
      for (let step = 0; step < 9; step++) pass(0.5);
      const beats = strikes('click').length;
      expect(strikes('click')).toEqual(Array.from({ length: beats }, (_, i) => i / 2));
      expect(basses().map((line) => Number(line.slice(2)))).toEqual(
        Array.from({ length: Math.ceil(beats / 4) }, (_, i) => 2 * i),
      );
      expect(playback.state()).not.toHaveProperty('wantedBar');
    }),
    { numRuns: 60 },
  );
});

it('goes over to another key in step, and back', async () => {
  const { pass, playback, basses } = threeSections();
  await playback.play(SONG);
  pass(START_DELAY_SEC + 1);
  playback.setManner({ speedPercent: 100, arrangement: { semitones: 2 } });
  pass(2);
  expect(playback.position()).toMatchObject({
    bar: 1,
    chord: { chord: { root: { letter: 'G' } } },
  });
  playback.setManner({ speedPercent: 100, arrangement: AS_WRITTEN });
  pass(2);
  expect(basses()).toEqual(['C 0', 'G 2', 'A 4']);
});

it('keeps its bars and a jump that was asked for when the key changes', async () => {
  const { pass, playback, basses } = threeSections();
  await playback.play({ kind: 'song', range: { firstBar: 0, endBar: 2 }, times: 2 });
  pass(START_DELAY_SEC + 0.5);
  playback.jump({ toBar: 3 });
  playback.setManner({ speedPercent: 100, arrangement: { semitones: 1 } });
  expect(playback.state()).toMatchObject({ wantedBar: 3 });
  pass(2.5);
  expect(basses()).toEqual(['C 0', '. 2']);
});

it('plays less of its pattern from the moment on that a lower level is chosen', async () => {
  const { pass, playback, strikes } = threeSections({
    patterns: [pattern('4/4', { left: 'R-------', right: 'CCCCCCCC' })],
  });
  await playback.play(SONG);
  pass(START_DELAY_SEC + 1.8);
  playback.setManner({ speedPercent: 100, arrangement: { semitones: 0, level: 1 } });
  pass(2);
  expect(strikes('right').filter((sec) => sec < 2)).toEqual([
    0, 0.25, 0.5, 0.75, 1, 1.25, 1.5, 1.75,
  ]);
  expect(strikes('right').filter((sec) => sec >= 2 && sec < 4)).toEqual([2, 2.5, 3, 3.5]);
});
