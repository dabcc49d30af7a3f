import { describe, expect, it } from 'vitest';
import {
  drillBars,
  exportMidi,
  exportSong,
  type MidiRequest,
  midiFileName,
  songFileName,
  type TrackPassage,
  trackFileName,
  trackSec,
} from '../../src/app/exports.ts';
import { oneChordScore, type Score, songScore } from '../../src/app/score.ts';
import type { Project } from '../../src/core/project.ts';
import type { Note } from '../../src/core/rhythm/note.ts';
import { decodeMidi } from '../../src/formats/midi.ts';
import { decodeProject } from '../../src/formats/projectFile.ts';
import { arrangedProject } from '../../src/state/arrangement.ts';
import { errorOf, keyNamed, section, slots, song, valueOf } from '../support/music.ts';
import { pattern, source } from '../support/patterns.ts';
import { project } from '../support/project.ts';

const plain = pattern('4/4', { left: 'R---5---', right: '..C-..C-' });
const WITH_BAND = project({
  patterns: [{ ...plain, sources: [source(plain, 'snare', '..x...x.')] }],
  song: song(
    [section('verse', { slots: slots('| C | F / G7 / |'), patternId: 'p' })],
    'verse verse',
    {
      title: 'Two/Four',
      key: keyNamed('F'),
    },
  ),
});

const SONG: MidiRequest = { passage: { kind: 'song', bpm: 120 }, band: true, click: true };
const ARRANGED = { ...SONG.passage, arrangement: { semitones: -2, level: 2 } } as const;
const DRILL: MidiRequest = {
  passage: { kind: 'drill', bpm: 66, bars: 3 },
  band: true,
  click: true,
};

type Sounding = Pick<Note, 'startTick' | 'durationTicks' | 'keyNumber' | 'velocity'>;

function inOrder(notes: readonly Sounding[]): string[] {
  return notes
    .map((n) => `${n.startTick} ${n.keyNumber} ${n.durationTicks} ${n.velocity}`)
    .toSorted();
}

function readBack(of: Project, request: MidiRequest) {
  const band = valueOf(decodeMidi(valueOf(exportMidi(of, request))));
  return { ...band, notes: inOrder(band.tracks.flatMap((track) => track.notes)) };
}

function notesOf(score: Score, ...parts: readonly Note['part'][]): string[] {
  return inOrder(score.notes.filter(({ part }) => parts.includes(part)));
}

describe('a MIDI file', () => {
  const whole = valueOf(songScore(WITH_BAND, undefined, 100));

  it('of the song holds the very notes that are played, without a count-in', () => {
    const { notes, bars, key, tempoMap } = readBack(WITH_BAND, SONG);
    expect(notes).toEqual(notesOf(whole, 'left', 'right', 'snare', 'click'));
    expect(notes.length).toBeGreaterThan(40);
    expect(bars).toHaveLength(4);
    expect(key).toEqual(keyNamed('F'));
    expect(tempoMap[0]?.tempo.bpm).toBeCloseTo(120, 3);
  });

  it.each([
    [{ band: false, click: false }, ['left', 'right']],
    [{ band: true, click: false }, ['left', 'right', 'snare']],
    [{ band: false, click: true }, ['left', 'right', 'click']],
  ] as const)('with %j holds %j', (wish, parts) => {
    expect(readBack(WITH_BAND, { ...SONG, ...wish }).notes).toEqual(notesOf(whole, ...parts));
  });

  it('holds both hands and the band, whatever is practised just now', () => {
    const { practice } = WITH_BAND;
    const practising: Project = {
      ...WITH_BAND,
      practice: { ...practice, hands: 'none', band: false },
    };
    expect(readBack(practising, SONG).notes).toEqual(readBack(WITH_BAND, SONG).notes);
  });

  it('of the drill holds its chord for as many bars, at its tempo and in no key', () => {
    const { notes, bars, key, tempoMap } = readBack(WITH_BAND, DRILL);
    const score = valueOf(oneChordScore(WITH_BAND, WITH_BAND.patterns[0]!, 3, 66));
    expect(notes).toEqual(notesOf(score, 'left', 'right', 'snare', 'click'));
    expect(bars).toHaveLength(3);
    expect(key).toBeUndefined();
    expect(tempoMap[0]?.tempo.bpm).toBeCloseTo(66, 3);
  });

  it('holds the song in the key and at the level that it is asked for', () => {
    const { notes, key } = readBack(WITH_BAND, { ...SONG, passage: ARRANGED });
    const arranged = arrangedProject(WITH_BAND, ARRANGED.arrangement);
    const score = valueOf(songScore(arranged, undefined, 100));
    expect(notes).toEqual(notesOf(score, 'left', 'right', 'snare', 'click'));
    expect(notes).not.toEqual(readBack(WITH_BAND, SONG).notes);
    expect(key).toEqual(keyNamed('E♭'));
  });

  it('of a song without sections in its form is none', () => {
    const empty = project({ song: song([section('verse')], '') });
    expect(errorOf(exportMidi(empty, SONG))).toEqual({ kind: 'nothing-to-play' });
  });
});

it('writes a song file that opens as the very same song', () => {
  expect(valueOf(decodeProject(exportSong(WITH_BAND)))).toEqual(WITH_BAND);
});

it('names files after the song, what of it, and the tempo', () => {
  expect(songFileName(WITH_BAND)).toBe('Two-Four.json');
  expect(midiFileName(WITH_BAND, SONG.passage)).toBe('Two-Four.mid');
  expect(midiFileName(WITH_BAND, ARRANGED)).toBe('Two-Four - in E♭ major - level 2.mid');
  expect(midiFileName(WITH_BAND, DRILL.passage)).toBe('Two-Four - drill on C.mid');
  expect(trackFileName(WITH_BAND, DRILL.passage)).toBe('Two-Four - drill on C - 66 bpm.wav');
});

/** A drill on one root a bar. */
function drillOf(meter: string, left: string, bars: number): Project {
  return project({ patterns: [pattern(meter, { left }, { bars })] });
}

it.each([
  // 60 beats a minute, four to the bar.
  [drillOf('4/4', 'R---', 1), 60, 1, 15],
  [drillOf('4/4', 'R---', 1), 61, 1, 16],
  // Two dotted quarters to the bar.
  [drillOf('6/8', 'R-', 1), 60, 2, 60],
  // A pattern of two bars is played to its end, and at least once.
  [drillOf('4/4', 'R---R---', 2), 60, 0.2, 4],
  [drillOf('3/4', 'R--R--', 2), 90, 0.001, 2],
])('a drill fills its time with whole rounds of its pattern', (drilled, bpm, minutes, bars) => {
  expect(drillBars(drilled, minutes, bpm)).toBe(bars);
});

it('knows how long a track lasts, with its count-in and two seconds to die away', () => {
  const parts = { hands: 'both', band: false, click: false } as const;
  const lasting = (whole: Project, passage: TrackPassage, countInBars: 0 | 1 = 0) =>
    trackSec(whole, { ...parts, passage, countInBars });
  // Four bars of 4/4 at 120: 16 beats of half a second.
  expect(lasting(WITH_BAND, { kind: 'song', bpm: 120 })).toBeCloseTo(10, 9);
  expect(lasting(WITH_BAND, { kind: 'song', bpm: 60 })).toBeCloseTo(18, 9);
  expect(lasting(WITH_BAND, { kind: 'song', bpm: 120 }, 1)).toBeCloseTo(12, 9);
  // Three bars of two dotted quarters at 60: six seconds.
  const drilled = drillOf('6/8', 'R-', 1);
  expect(lasting(drilled, { kind: 'drill', bpm: 60, bars: 3 })).toBeCloseTo(8, 9);
});
