import { describe, expect, it } from 'vitest';
import type { PlayRequest } from '../../src/app/score.ts';
import { START_DELAY_SEC } from '../../src/audio/player.ts';
import type { Project } from '../../src/core/project.ts';
import { setSectionChart } from '../../src/state/edits/chart.ts';
import { removeFormEntry } from '../../src/state/edits/form.ts';
import { addPattern, removePattern } from '../../src/state/edits/pattern.ts';
import { NO_COUNT_IN, onFakeTime, threeSections } from '../support/fakePlayback.ts';
import { slots, song } from '../support/music.ts';
import { pattern } from '../support/patterns.ts';

const SONG: PlayRequest = { kind: 'song', times: 1 };

/** One hit on the first beat, and one hit on the third: two patterns to tell apart. */
const ON_ONE = pattern('4/4', { left: 'R---' }, { id: 'on one' });
const ON_THREE = pattern('4/4', { left: '..R-' }, { id: 'on three' });

describe('an edit of the song while it plays', () => {
  it('leaves the music in its bar where an earlier section becomes longer or shorter', async () => {
    const { pass, store, playback, basses, strikes } = threeSections();
    await playback.play(SONG);
    pass(START_DELAY_SEC + 5);
    store.edit(setSectionChart('verse', slots('| C | Dm | F |'), []), { label: 'add bar' });
    pass(0.5);
    expect(playback.position()).toMatchObject({ bar: 3, section: { name: 'chorus' } });
    pass(0.1);
    store.undo();
    pass(12);
    expect(basses()).toEqual(['C 0', 'F 2', 'A 4', 'G 6', 'C 8', 'F 10']);
    expect(strikes('click')).toEqual(Array.from({ length: 24 }, (_, i) => i / 2));
  });

  it('goes on in step with what follows a section that is taken out', async () => {
    const { pass, store, playback, basses, strikes } = threeSections();
    await playback.play(SONG);
    pass(START_DELAY_SEC + 4.8);
    const chorus = store.snapshot().song.form[1]!.id;
    store.edit(removeFormEntry(chorus), { label: 'take out' });
    pass(10);
    expect(basses()).toEqual(['C 0', 'F 2', 'A 4', 'F 6']);
    expect(strikes('click')).toEqual(Array.from({ length: 16 }, (_, i) => i / 2));
  });

  it('keeps going round in the bars that are marked, wherever they are then', async () => {
    const { pass, store, playback, basses } = threeSections();
    await playback.play({
      kind: 'song',
      range: { firstBar: 2, endBar: 4 },
      times: 'until-stopped',
    });
    pass(START_DELAY_SEC + 1);
    store.edit(setSectionChart('verse', slots('| C |'), []), { label: 'shorter verse' });
    pass(7.5);
    expect(playback.state()).toMatchObject({ request: { range: { firstBar: 1, endBar: 3 } } });
    expect(basses()).toEqual(['A 0', 'G 2', 'A 4', 'G 6', 'A 8']);
  });

  it('arrives where a jump was to lead', async () => {
    const { pass, store, playback, basses } = threeSections();
    await playback.play(SONG);
    pass(START_DELAY_SEC + 0.5);
    playback.jump({ toBar: 3 });
    store.edit(setSectionChart('verse', slots('| C | Dm | F |'), []), { label: 'add bar' });
    pass(2);
    expect(playback.state()).not.toHaveProperty('wantedBar');
    pass(2);
    expect(basses()).toEqual(['C 0', 'G 2', 'C 4']);
  });

  it('ends, and says why, where nothing is left to play', async () => {
    const { pass, store, playback, strikes } = threeSections();
    await playback.play(SONG);
    pass(START_DELAY_SEC + 0.6);
    store.edit((project) => ({ ...project, song: song([], '') }), { label: 'empty' });
    expect(playback.state()).toEqual({
      status: 'stopped',
      problem: { kind: 'nothing-to-play' },
    });
    pass(4);
    expect(strikes('click')).toEqual([0, 0.5]);
  });
});

describe('a pattern that plays round and round', () => {
  const parts: Partial<Project> = { patterns: [ON_ONE, ON_THREE], practice: NO_COUNT_IN };
  const request: PlayRequest = { kind: 'pattern', patternId: ON_ONE.id };

  it('gives way to the one that is turned to, without a gap', async () => {
    const { pass, playback, strikes } = onFakeTime(parts);
    await playback.play(request);
    pass(START_DELAY_SEC + 2.5);
    playback.turnTo({ ...request, patternId: ON_THREE.id });
    pass(3);
    expect(playback.state()).toMatchObject({ request: { patternId: ON_THREE.id } });
    pass(2);
    expect(strikes('left')).toEqual([0, 2, 3, 5, 7]);
    expect(strikes('click')).toEqual(Array.from({ length: 16 }, (_, i) => i / 2));
  });

  it('gives way to the first of the project when it is removed', async () => {
    const { pass, store, playback, strikes } = onFakeTime({ ...parts, patterns: [ON_THREE] });
    store.edit(addPattern(ON_ONE), { label: 'new pattern' });
    await playback.play(request);
    pass(START_DELAY_SEC + 2.5);
    store.edit(removePattern(ON_ONE.id), { label: 'remove pattern' });
    pass(3);
    expect(strikes('left')).toEqual([0, 2, 3, 5]);
  });

  it('goes on in a pattern that is only tried', async () => {
    const { pass, playback, strikes } = onFakeTime({ ...parts, patterns: [ON_THREE] });
    await playback.play({ ...request, pattern: ON_ONE });
    pass(START_DELAY_SEC + 0.5);
    playback.turnTo({ ...request, patternId: ON_THREE.id });
    pass(3);
    expect(strikes('left')).toEqual([0, 2]);
  });

  it('turns from one that is tried to another, at the tempo asked for', async () => {
    const { pass, playback, strikes } = onFakeTime(parts);
    await playback.play({ ...request, pattern: ON_ONE, bpm: 240 });
    pass(START_DELAY_SEC + 1.5);
    playback.turnTo({ ...request, pattern: ON_THREE, bpm: 240 });
    expect(playback.state()).toMatchObject({ bpm: 240 });
    pass(2);
    expect(strikes('left')).toEqual([0, 1, 2.5, 3.5]);
  });
});
