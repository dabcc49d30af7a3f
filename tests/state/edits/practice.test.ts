import { describe, expect, it } from 'vitest';
import { LONGEST_CLICK_REST } from '../../../src/core/rhythm/clickRests.ts';
import type { Edit } from '../../../src/state/edits/edit.ts';
import {
  drillInSong,
  LONGEST_PRACTICE,
  setBand,
  setBarsPerPass,
  setClick,
  setCountInAt,
  setDrillChord,
  setDrillHands,
  setDrillPattern,
  setLadder,
  setSoundingHands,
  setStages,
} from '../../../src/state/edits/practice.ts';
import { chord } from '../../support/music.ts';
import { project } from '../../support/project.ts';

const PROJECT = project();

function practiceAfter(edit: Edit) {
  return edit(PROJECT).practice;
}

describe('what sounds while practising', () => {
  it('is chosen for the hands and the band', () => {
    expect(practiceAfter(setSoundingHands('left')).hands).toBe('left');
    expect(practiceAfter(setBand(true)).band).toBe(true);
  });

  it('changes some settings of the click and keeps the rest', () =>
    expect(practiceAfter(setClick({ beats: 'back-beat', level: 0.8 })).click).toEqual({
      ...PROJECT.practice.click,
      beats: 'back-beat',
      level: 0.8,
    }));

  it.each([
    [-0.5, 0],
    [1.5, 1],
  ])('brings a click level of %d to %d', (level, brought) =>
    expect(practiceAfter(setClick({ level })).click.level).toBe(brought),
  );

  it('brings the rests of the click into whole bars, from one up, and takes them away', () => {
    const resting = setClick({ rests: { sounding: 0, resting: 2.4 } })(PROJECT);
    expect(resting.practice.click.rests).toEqual({ sounding: 1, resting: 2 });
    expect(
      setClick({ rests: { sounding: 500, resting: 1 } })(PROJECT).practice.click.rests,
    ).toEqual({
      sounding: LONGEST_CLICK_REST,
      resting: 1,
    });
    expect(setClick({ rests: undefined })(resting)).toEqual(PROJECT);
  });
});

describe('the drill', () => {
  it('takes another chord and another place for the count-in', () => {
    expect(practiceAfter(setDrillChord(chord('F♯m7'))).drill.chord).toEqual(chord('F♯m7'));
    expect(practiceAfter(setCountInAt('every-rung')).drill.countInAt).toBe('every-rung');
  });

  it('takes a pattern of the project, or none', () => {
    const chosen = setDrillPattern('p')(PROJECT);
    expect(chosen.practice.drill.patternId).toBe('p');
    expect(setDrillPattern(undefined)(chosen)).toEqual(PROJECT);
    expect('patternId' in setDrillPattern(undefined)(chosen).practice.drill).toBe(false);
  });

  it('has no use for a pattern that is not there', () =>
    expect(setDrillPattern('nowhere')(PROJECT)).toBe(PROJECT));

  it('keeps a list of stages of the player’s own, until the proposal is wanted again', () => {
    const stage = { id: 'a', passage: { kind: 'one-chord' }, tool: 'left' } as const;
    const listed = setStages([stage])(PROJECT);
    expect(listed.practice.drill.stages).toEqual([stage]);
    expect(setStages([{ ...stage }])(listed)).toBe(listed);
    expect(setStages(undefined)(listed)).toEqual(PROJECT);
  });

  it('lets levels climb beside the tempo, or the tempo alone again', () => {
    const levels = { from: 2, order: 'levels-first' } as const;
    const climbing = setLadder({ levels })(PROJECT);
    expect(climbing.practice.drill.ladder.levels).toEqual(levels);
    expect(setLadder({ levels: undefined })(climbing)).toEqual(PROJECT);
  });

  it('changes some of the ladder and keeps the rest', () =>
    expect(practiceAfter(setLadder({ goalBpm: 96, climb: 'when-clean' })).drill.ladder).toEqual({
      ...PROJECT.practice.drill.ladder,
      goalBpm: 96,
      climb: 'when-clean',
    }));

  it('lets the ladder go along marks, fall back and forget it again', () => {
    const falling = setLadder({ step: { kind: 'marks' }, fallBackAfter: 0.2 })(PROJECT);
    expect(falling.practice.drill.ladder).toMatchObject({
      step: { kind: 'marks' },
      fallBackAfter: 1,
    });
    const steady = setLadder({ fallBackAfter: undefined })(falling);
    expect('fallBackAfter' in steady.practice.drill.ladder).toBe(false);
  });

  it('brings the ladder and the length of a pass into what can be climbed', () => {
    const ladder = {
      startBpm: 1,
      goalBpm: 1000,
      step: { kind: 'percent', percent: 0.2 },
      passesPerRung: 0.4,
    } as const;
    expect(practiceAfter(setLadder(ladder)).drill.ladder).toMatchObject({
      startBpm: 20,
      goalBpm: 320,
      step: { kind: 'percent', percent: 1 },
      passesPerRung: 1,
    });
    expect(practiceAfter(setBarsPerPass(7.6)).drill.barsPerPass).toBe(8);
    expect(practiceAfter(setBarsPerPass(1e6)).drill.barsPerPass).toBe(LONGEST_PRACTICE.barsPerPass);
  });
});

const { practice } = PROJECT;

it.each<[string, Edit]>([
  ['click', setClick({ on: practice.click.on })],
  ['hands', setSoundingHands(practice.hands)],
  ['band', setBand(practice.band)],
  ['chord', setDrillChord({ ...practice.drill.chord })],
  ['pattern', setDrillPattern(undefined)],
  ['ladder', setLadder({ step: { ...practice.drill.ladder.step } })],
  ['bars', setBarsPerPass(practice.drill.barsPerPass)],
  ['count-in', setCountInAt(practice.drill.countInAt)],
])('stays the very same where the %s is what it was', (_, edit) =>
  expect(edit(PROJECT)).toBe(PROJECT),
);

describe('the drill and its song', () => {
  it('has hands of its own, which leave the song’s as they are', () => {
    const { drill, hands } = practiceAfter(setDrillHands('left'));
    expect(drill.hands).toBe('left');
    expect(hands).toBe(PROJECT.practice.hands);
  });

  it('holds the key’s own chord under a pattern that was open, up to the song’s tempo', () => {
    const slow = { ...PROJECT, song: { ...PROJECT.song, tempo: { bpm: 54, beatTicks: 480 } } };
    const { drill } = drillInSong('p')(slow).practice;
    expect(drill).toMatchObject({ patternId: 'p', ladder: { goalBpm: 54, startBpm: 36 } });
    expect(drill.chord).toMatchObject({ root: slow.song.key.tonic, quality: slow.song.key.mode });
    expect(drillInSong('nowhere')(PROJECT)).toBe(PROJECT);
  });
});
