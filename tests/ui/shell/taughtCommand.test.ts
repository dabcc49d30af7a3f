import { expect, it } from 'vitest';
import type { PlaybackState } from '../../../src/app/playbackState.ts';
import { commandOfTaught } from '../../../src/ui/shell/taughtCommand.ts';

const STOPPED: PlaybackState = { status: 'stopped' };
const SONG: PlaybackState = { status: 'playing', request: { kind: 'song', times: 1 }, bpm: 90 };
const DRILL: PlaybackState = { status: 'playing', request: { kind: 'drill', rung: 0 }, bpm: 90 };
const PATTERN: PlaybackState = {
  status: 'playing',
  request: { kind: 'pattern', patternId: 'p' },
  bpm: 90,
};

it('leads through the sections of a song that plays, whichever page is open', () => {
  expect(commandOfTaught('on', SONG, 'map')).toEqual({ kind: 'section', by: 1 });
  expect(commandOfTaught('back', SONG, 'drill')).toEqual({ kind: 'section', by: -1 });
  expect(commandOfTaught('start', SONG, 'play')).toEqual({ kind: 'section', by: 0 });
});

it('leads along the ladder of a drill that plays, whichever page is open', () => {
  expect(commandOfTaught('on', DRILL, 'hands')).toEqual({ kind: 'rung', by: 1 });
  expect(commandOfTaught('back', DRILL, 'play')).toEqual({ kind: 'rung', by: -1 });
  expect(commandOfTaught('start', DRILL, 'drill')).toEqual({ kind: 'rung', by: 0 });
});

it('at rest leads along what the page shows, and nowhere on pages that show neither', () => {
  expect(commandOfTaught('on', STOPPED, 'drill')).toEqual({ kind: 'rung', by: 1 });
  expect(commandOfTaught('on', STOPPED, 'play')).toEqual({ kind: 'section', by: 1 });
  expect(commandOfTaught('on', STOPPED, 'rhythm')).toBeUndefined();
  expect(commandOfTaught('on', PATTERN, 'rhythm')).toBeUndefined();
});

it.each(['play-or-stop', 'slower', 'faster', 'click'] as const)('does %s everywhere', (taught) =>
  expect(commandOfTaught(taught, PATTERN, 'rhythm')).toEqual({ kind: taught }),
);
