import { expect, it } from 'vitest';
import { songScore, timedScore } from '../../src/app/score.ts';
import { renderOffline } from '../../src/audio/renderOffline.ts';
import { pairTimes } from '../../src/core/practice/pairTimes.ts';
import type { TimedNote } from '../../src/core/rhythm/note.ts';
import type { Pattern } from '../../src/core/rhythm/pattern.ts';
import { decodeShelfPattern } from '../../src/formats/patternFile.ts';
import { findOnsets } from '../../src/signal/onsetStream.ts';
import { NO_COUNT_IN } from '../support/fakePlayback.ts';
import { section, slots, song, valueOf } from '../support/music.ts';
import { project } from '../support/project.ts';
import { seededRandom } from '../support/random.ts';

const FILES = import.meta.glob<unknown>('../../patterns/*.json', {
  eager: true,
  import: 'default',
});

/** A shipped pattern without its ending, which a section would end with. */
function shelfPattern(name: string): Pattern {
  const { pattern } = valueOf(decodeShelfPattern(FILES[`../../patterns/${name}.json`]));
  const { ending: _, ...main } = pattern;
  return main;
}

const RATE = 48_000;

/** Four bars of 4/4 at 120, so that a beat lasts half a second, after half a second of silence. */
const BAR_SEC = 2;
const BARS = 4;
const SILENCE_SEC = 0.5;

function notesOf(p: Pattern): readonly TimedNote[] {
  const verse = section('verse', { slots: slots('| C | F | G7 | C |'), patternId: p.id });
  const made = project({ song: song([verse], 'verse'), patterns: [p], practice: NO_COUNT_IN });
  const practice = { ...NO_COUNT_IN, click: { ...NO_COUNT_IN.click, on: false } };
  const { notes } = timedScore(valueOf(songScore(made, undefined, 100)), practice, 0);
  return notes.map((note) => ({ ...note, startSec: note.startSec + SILENCE_SEC }));
}

/** Where sound begins in what is rendered, in seconds of the music, heard as in a quiet room. */
async function heardOnsets(p: Pattern): Promise<number[]> {
  const { channels } = await renderOffline(notesOf(p), { sampleRate: RATE });
  const random = seededRandom(4);
  const sound = channels[0]!.map((x, i) => 0.2 * (x + channels[1]![i]!) + 1e-4 * random.normal());
  return findOnsets(sound, RATE)
    .map((sec) => sec - SILENCE_SEC)
    .filter((sec) => sec > -0.1 && sec < BARS * BAR_SEC - 0.05);
}

const SWUNG = 2 / 3;

// Beats of a bar, counted from 0, at which either hand strikes, by bars of the pattern:
// docs/sources.md#accompaniment-patterns (onsets of both hands together) and #swing (2:1 is two thirds of a beat).
it.each<[string, readonly (readonly number[])[]]>([
  ['boogie-shuffle', [[0, SWUNG, 1, 1 + SWUNG, 2, 2 + SWUNG, 3, 3 + SWUNG]]],
  [
    'bossa-nova',
    [
      [0, 1.5, 2, 3, 3.5],
      [0, 1, 1.5, 2, 2.5, 3.5],
    ],
  ],
  ['tresillo', [[0, 1, 1.5, 3]]],
  ['soul-backbeat', [[0, 1, 1.5, 2, 3]]],
  ['country-two-beat', [[0, 1, 2, 3]]],
])('%s is heard where it stands on its grid', async (name, bars) => {
  const expected = Array.from({ length: BARS }, (_, bar) =>
    bars[bar % bars.length]!.map((beat) => bar * BAR_SEC + beat / 2),
  ).flat();
  const heard = await heardOnsets(shelfPattern(name));
  const pairs = pairTimes(expected, heard, 0.015);
  expect(pairs).toHaveLength(expected.length);
  // The finder of onsets may once take the end of a chord for a beginning (F of 0.98 on this piano).
  expect(heard.length - pairs.length).toBeLessThanOrEqual(1);
});
