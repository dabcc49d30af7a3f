import { describe, expect, it } from 'vitest';
import { targetOf } from '../../src/app/takeTarget.ts';
import type { Stage } from '../../src/core/practice/stage.ts';
import { section, slots, song } from '../support/music.ts';
import { project } from '../support/project.ts';

const SONG = project({
  song: song(
    [
      section('verse', { slots: slots('| C | F | G |'), patternId: 'p' }),
      section('chorus', { slots: slots('| Am | G |'), patternId: 'p' }),
      section('tag', { slots: slots('| C |'), patternId: 'p' }),
    ],
    'verse chorus verse tag tag',
  ),
});

function ofBars(firstBar: number, endBar: number) {
  return targetOf({ kind: 'song', range: { firstBar, endBar }, times: 1 }, SONG);
}

describe('what is practised', () => {
  it.each([
    ['the whole song', 0, 10, { kind: 'song' }],
    ['a playing of a section', 0, 3, { kind: 'section', sectionId: 'verse' }],
    ['a later playing of it', 5, 8, { kind: 'section', sectionId: 'verse' }],
    [
      'the last bar of one and the first of the next',
      2,
      4,
      { kind: 'join', from: 'verse', to: 'chorus' },
    ],
    ['two sections of one bar', 8, 10, { kind: 'join', from: 'tag', to: 'tag' }],
    ['part of a section', 0, 2, { kind: 'bars', firstBar: 0, endBar: 2 }],
    ['two sections', 0, 5, { kind: 'bars', firstBar: 0, endBar: 5 }],
    ['more than there is', 8, 20, { kind: 'join', from: 'tag', to: 'tag' }],
    ['no bar', 10, 12, undefined],
  ])('by %s', (_, firstBar, endBar, target) => {
    expect(ofBars(firstBar, endBar)).toEqual(target);
  });

  it('by a song without a range is the song', () =>
    expect(targetOf({ kind: 'song', times: 1 }, SONG)).toEqual({ kind: 'song' }));

  it('by the only section of a song is that section, where it was asked for', () =>
    expect(
      targetOf({ kind: 'song', range: { firstBar: 0, endBar: 2 }, times: 1 }, project()),
    ).toEqual({ kind: 'section', sectionId: 'verse' }));

  it('by a drill is its pattern, or what its stage goes through', () => {
    const stage = (passage: Stage['passage']): Stage => ({ id: 's', passage, tool: 'none' });
    const drill = (passage: Stage['passage']) =>
      targetOf({ kind: 'drill', rung: 0, stage: stage(passage) }, SONG);
    const pattern = { kind: 'pattern', patternId: 'p' };
    expect(targetOf({ kind: 'drill', rung: 0 }, SONG)).toEqual(pattern);
    expect(drill({ kind: 'one-chord' })).toEqual(pattern);
    expect(drill({ kind: 'section', sectionId: 'verse' })).toEqual({
      kind: 'section',
      sectionId: 'verse',
    });
    expect(drill({ kind: 'join', from: 'verse', to: 'chorus' })).toEqual({
      kind: 'join',
      from: 'verse',
      to: 'chorus',
    });
  });

  it('is nothing by what is only listened to, or without a pattern', () => {
    expect(targetOf({ kind: 'pattern', patternId: 'p' }, SONG)).toBeUndefined();
    expect(targetOf({ kind: 'drill', rung: 0 }, project({ patterns: [] }))).toBeUndefined();
  });
});
