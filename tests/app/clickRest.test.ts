import { describe, expect, it } from 'vitest';
import { exportMidi } from '../../src/app/exports.ts';
import { songScore, timedScore } from '../../src/app/score.ts';
import { wordAheadSec } from '../../src/audio/countWords.ts';
import { START_DELAY_SEC } from '../../src/audio/player.ts';
import type { ClickSettings } from '../../src/core/practice/practiceSettings.ts';
import { decodeMidi } from '../../src/formats/midi.ts';
import { setClick } from '../../src/state/edits/practice.ts';
import { onFakeTime, threeSections } from '../support/fakePlayback.ts';
import { valueOf } from '../support/music.ts';
import { PRACTICE, project } from '../support/project.ts';

/** The downbeats alone click, in one bar of two, without a count-in. */
const RESTING: ClickSettings = {
  ...PRACTICE.click,
  beats: 'downbeat',
  countInBars: 0,
  rests: { sounding: 1, resting: 1 },
};

describe('a click that rests', () => {
  it('is silent in its bars of a song, and the position says for how long still', async () => {
    const { pass, playback, strikes } = threeSections({
      practice: { ...PRACTICE, click: RESTING },
    });
    await playback.play({ kind: 'song', times: 1 });
    pass(START_DELAY_SEC + 1);
    expect(playback.position()?.clickRests).toBe(0);
    pass(2);
    expect(playback.position()?.clickRests).toBe(1);
    pass(10);
    expect(strikes('click')).toEqual([0, 4, 8]);
  });

  it('goes on counting its bars from pass to pass of a drill', async () => {
    const { pass, playback, strikes } = onFakeTime({
      practice: {
        ...PRACTICE,
        click: RESTING,
        drill: {
          ...PRACTICE.drill,
          ladder: { ...PRACTICE.drill.ladder, startBpm: 120, goalBpm: 120 },
        },
      },
    });
    await playback.play({ kind: 'drill', rung: 0 });
    pass(START_DELAY_SEC + 11);
    // A pass is one bar of two seconds: the second, fourth and sixth rest.
    expect(strikes('click')).toEqual([0, 4, 8]);
  });

  it('begins anew after a count-in, which never rests', async () => {
    const { pass, playback, strikes } = onFakeTime({
      practice: {
        ...PRACTICE,
        click: { ...RESTING, countInBars: 1 },
        drill: {
          ...PRACTICE.drill,
          ladder: {
            ...PRACTICE.drill.ladder,
            startBpm: 120,
            goalBpm: 240,
            passesPerRung: 1,
            step: { kind: 'bpm', bpm: 120 },
          },
          countInAt: 'every-rung',
        },
      },
    });
    await playback.play({ kind: 'drill', rung: 0 });
    pass(START_DELAY_SEC + 5.9);
    // Four beats of count-in and a bar at 120; four beats and a bar at 240.
    expect(strikes('click')).toEqual([0, 0.5, 1, 1.5, 2, 4, 4.25, 4.5, 4.75, 5]);
  });

  it('does not rest where a pattern is written', async () => {
    const { pass, playback, strikes } = onFakeTime({ practice: { ...PRACTICE, click: RESTING } });
    await playback.play({ kind: 'pattern', patternId: 'p' });
    pass(START_DELAY_SEC + 5);
    expect(strikes('click')).toEqual([0, 2, 4]);
  });

  it('sounds again at once where its rests are taken away', async () => {
    const { pass, playback, store, strikes } = threeSections({
      practice: { ...PRACTICE, click: RESTING },
    });
    await playback.play({ kind: 'song', times: 1 });
    pass(START_DELAY_SEC + 1);
    store.edit(setClick({ rests: undefined }), { label: 'rests of the click' });
    pass(4);
    expect(strikes('click')).toEqual([0, 2, 4]);
  });

  it('rests in what is handed on as well', () => {
    const clicks = (click: ClickSettings) => {
      const made = project({ practice: { ...PRACTICE, click } });
      const file = exportMidi(made, {
        passage: { kind: 'song', bpm: 120 },
        band: false,
        click: true,
      });
      const { tracks } = valueOf(decodeMidi(valueOf(file)));
      return tracks.flatMap(({ notes }) => notes).filter(({ keyNumber }) => keyNumber === 76);
    };
    const { rests: _, ...steady } = RESTING;
    expect(clicks(steady).map(({ startTick }) => startTick)).toEqual([0, 1920]);
    expect(clicks(RESTING).map(({ startTick }) => startTick)).toEqual([0]);
  });
});

describe('a spoken count-in', () => {
  const SPOKEN: ClickSettings = { ...PRACTICE.click, countInVoice: 'spoken' };

  it('begins each word so far before its beat that it is heard on it', () => {
    const made = project({ practice: { ...PRACTICE, click: SPOKEN } });
    const score = valueOf(songScore(made, undefined, 100));
    const words = timedScore(score, made.practice, 1).notes.filter(({ says }) => says);
    expect(words.map(({ says }) => says)).toEqual([1, 2, 3, 4]);
    // A beat lasts half a second.
    for (const [i, { startSec, says }] of words.entries())
      expect(startSec + wordAheadSec(says)).toBeCloseTo(-2 + i / 2, 9);
  });

  it('is heard from its first word on when a song is played', async () => {
    const { pass, playback, strikes } = onFakeTime({ practice: { ...PRACTICE, click: SPOKEN } });
    await playback.play({ kind: 'song', times: 1 });
    pass(START_DELAY_SEC + 1.9);
    const words = strikes('click').slice(0, 4);
    const heard = words.map((sec, i) => sec + wordAheadSec(i + 1));
    expect(heard).toHaveLength(4);
    for (const [i, sec] of heard.entries()) expect(sec).toBeCloseTo(i / 2, 2);
  });
});
