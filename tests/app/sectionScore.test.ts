import { describe, expect, it } from 'vitest';
import { scoreOfPass } from '../../src/app/course.ts';
import { isHeardOver, sectionScore } from '../../src/app/sectionScore.ts';
import { AS_WRITTEN } from '../../src/state/arrangement.ts';
import { NO_COUNT_IN, onFakeTime } from '../support/fakePlayback.ts';
import { meter, section, slots, song, valueOf } from '../support/music.ts';
import { pattern } from '../support/patterns.ts';
import { project } from '../support/project.ts';

const GROOVE = pattern('4/4', { left: 'R---', right: 'C-C-', ending: { left: 'R-5-' } });
const VERSE = section('verse', { slots: slots('| C | F | G | C |') });
const WALTZ = section('waltz', { meter: meter('3/4'), slots: slots('| C |', '3/4') });
const SONG = project({ patterns: [GROOVE], song: song([VERSE, WALTZ], 'waltz verse verse') });

/** When the left hand strikes, and which key, in ticks from the beginning. */
function bass(over: string, one = GROOVE): string[] {
  return valueOf(sectionScore(SONG, one, over, 90))
    .notes.filter(({ part }) => part === 'left')
    .map(({ startTick, keyNumber }) => `${startTick}: ${keyNumber % 12}`);
}

it('a pattern that plays goes over from the chord to a section and back without a gap', async () => {
  const beats = pattern('4/4', { left: 'RRRR' });
  const quiet = { ...NO_COUNT_IN, click: { ...NO_COUNT_IN.click, on: false } };
  const parts = { patterns: [beats], song: SONG.song, practice: quiet };
  const { playback, pass, strikes } = onFakeTime(parts);
  await playback.play({ kind: 'pattern', patternId: 'p' });
  pass(3.2);
  playback.turnTo({ kind: 'pattern', patternId: 'p', over: 'verse' });
  pass(7.1);
  playback.turnTo({ kind: 'pattern', patternId: 'p' });
  pass(3);
  const heard = strikes('left');
  const beatSec = 60 / SONG.song.tempo.bpm;
  expect(heard.length).toBeGreaterThan(10);
  expect(heard).toEqual(heard.map((_, i) => Math.round(i * beatSec * 1000) / 1000));
});

describe('a pattern over the progression of a section', () => {
  it('plays its chords once through, wherever the section stands in the form', () => {
    const { timeline, tempoMap } = valueOf(sectionScore(SONG, GROOVE, 'verse', 90));
    expect(timeline.lengthTicks).toBe(4 * 1920);
    expect(timeline.chords).toHaveLength(4);
    expect(tempoMap[0]?.tempo).toEqual({ bpm: 90, beatTicks: 480 });
  });

  it('ends with its ending', () =>
    expect(bass('verse')).toEqual(['0: 0', '1920: 5', '3840: 7', '5760: 0', '6720: 7']));

  it('stays on the held chord where the meters differ or the section is gone', () => {
    expect(isHeardOver(SONG, GROOVE, 'verse')).toBe(true);
    expect(isHeardOver(SONG, GROOVE, 'waltz')).toBe(false);
    expect(isHeardOver(SONG, GROOVE, 'gone')).toBe(false);
    expect(bass('waltz')).toEqual(['0: 0']);
    expect(bass('gone')).toEqual(['0: 0']);
  });

  it('is what a pass plays that asks for it, at the speed that is wanted', () => {
    const request = { kind: 'pattern', patternId: 'p', over: 'verse' } as const;
    const manner = { speedPercent: 50, arrangement: AS_WRITTEN };
    const score = valueOf(scoreOfPass({ request, countInBars: 0 }, SONG, manner));
    expect(score.timeline.bars).toHaveLength(4);
    expect(score.tempoMap[0]?.tempo.bpm).toBe(SONG.song.tempo.bpm / 2);
  });
});
