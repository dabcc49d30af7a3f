import { describe, expect, it } from 'vitest';
import type { SongsProblem } from '../../../src/app/songs.ts';
import { decodeProject } from '../../../src/formats/projectFile.ts';
import { filePlace, songsSentence, trackSentence } from '../../../src/ui/songs/songsMessages.ts';
import { errorOf } from '../../support/music.ts';
import { project } from '../../support/project.ts';

function sentenceOf(text: string): string {
  const error = errorOf(decodeProject(text));
  return songsSentence({ kind: 'no-song-file', fileName: 'x.json', error });
}

function fileWith(change: (song: ReturnType<typeof project>) => unknown, version: unknown = 1) {
  return JSON.stringify({ format: 'vampwright-project', version, project: change(project()) });
}

const { song, ...rest } = project();
const [verse] = song.sections;

it.each([
  ['song.sections[2].slots[0].durationTicks', 'section 3, chord 1'],
  ['patterns[0].right[4].at', 'pattern 1, right-hand hit 5'],
  ['song.form[1].sectionId', 'place in the form 2'],
])('a place in a file, %s, is said in words', (path, words) => {
  expect(filePlace(path)).toBe(`${words} (${path})`);
});

it('a place without a list is said as it is', () => {
  expect([filePlace('song.tempo.bpm'), filePlace('')]).toEqual(['song.tempo.bpm', 'its beginning']);
});

describe('a file that is no song', () => {
  it.each([
    ['of another kind', '{}', 'it is a file of another kind'],
    ['without a version', '{"format":"vampwright-project"}', 'it does not say its version'],
    ['with a strange version', fileWith((p) => p, 'old'), 'its version "old" is none'],
    ['of a later release', fileWith((p) => p, 999), 'a newer Vampwright saved it (version 999'],
    [
      'with a wrong value',
      fileWith(() => ({ ...rest, song: { ...song, tempo: { ...song.tempo, bpm: 'fast' } } })),
      'at song.tempo.bpm stands "fast", where a number belongs',
    ],
    [
      'with chords that end inside a bar',
      fileWith(() => ({
        ...rest,
        song: {
          ...song,
          sections: [{ ...verse, slots: verse?.slots.map((s) => ({ ...s, durationTicks: 1000 })) }],
        },
      })),
      'at section 1 (song.sections[0].slots) the chords end inside a bar',
    ],
  ])('%s is told so, with the place', (_, text, words) => {
    expect(sentenceOf(text)).toContain(`“x.json” can't be opened: ${words}`);
    expect(sentenceOf(text)).toContain('Your song is untouched.');
  });

  it.each([
    [
      "Expected ':' after property name in JSON at position 14 (line 2 column 6)",
      'line 2, column 6',
    ],
    ['Unexpected token } in JSON at position 14', 'sign 15'],
    ['JSON.parse: unexpected character at line 1 column 2 of the JSON data', 'line 1, column 2'],
  ])('breaks where the browser says: %s', (reason, place) => {
    const error = { kind: 'not-json', reason } as const;
    expect(songsSentence({ kind: 'no-song-file', fileName: 'x.json', error })).toContain(
      `its text breaks at ${place};`,
    );
  });

  it('is no song file where the browser names no place', () => {
    const error = { kind: 'not-json', reason: 'Unexpected identifier "Milk"' } as const;
    expect(songsSentence({ kind: 'no-song-file', fileName: 'x.txt', error })).toBe(
      "“x.txt” can't be opened: it is no song file. Your song is untouched.",
    );
  });
});

it('says why the storage failed and what would be lost', () => {
  const error = { kind: 'full', reason: 'QuotaExceededError' } as const;
  const problem: SongsProblem = { kind: 'open-song-not-kept', error };
  expect(songsSentence(problem)).toBe(
    "The song that lies open can't be kept: this device has no room left. Save its song file first, or it is lost.",
  );
  const failed: SongsProblem = { kind: 'not-deleted', error: { kind: 'failed', reason: 'odd' } };
  expect(songsSentence(failed)).toBe('The song could not be deleted: the browser refused: odd.');
});

it('says what became of a track', () => {
  expect(trackSentence({ kind: 'given-up' })).toBe('Given up; no track was made.');
  expect(trackSentence({ kind: 'not-rendered', reason: 'no memory' })).toContain('(no memory)');
  expect(trackSentence({ kind: 'nothing-playable', chord: 'C13' })).toContain('C13');
});
