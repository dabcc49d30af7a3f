import { describe, expect, it } from 'vitest';
import { attacksOf } from '../../../src/core/rhythm/attacks.ts';
import { bassDegrees, chordRoots } from '../../../src/core/rhythm/bassDegrees.ts';
import { likelyRoots } from '../../../src/core/rhythm/likelyRoots.ts';
import { bandStrokes } from '../../../src/core/rhythm/strokes.ts';
import { bandNote, bandOf, bandTrack, times } from '../../support/bands.ts';
import { chord, meter } from '../../support/music.ts';

const BAR = 1920;

describe('attacks', () => {
  it('gathers what is struck within a thirty-second of a beat, a rolled strum too', () => {
    const rolled = [0, 20, 40, 60].map((at, i) => bandNote(40 + 5 * i, at));
    const later = bandNote(60, 120);
    expect(attacksOf([...rolled, later]).map((attack) => attack.length)).toEqual([4, 1]);
  });

  it('ends a roll after twice that, so that a run is no chord', () => {
    const run = [0, 30, 60, 90, 120].map((at) => bandNote(60 + at, at));
    expect(attacksOf(run).map((attack) => attack.length)).toEqual([3, 2]);
  });
});

/** Bar and root of each span, for bars of 4/4 that hold these keys. */
function rootsOf(keys: readonly (readonly number[])[]): number[][] {
  const bars = keys.map((_, i) => ({ startTick: i * BAR, meter: meter('4/4') }));
  const notes = keys.flatMap((inBar, i) =>
    inBar.map((key) => ({ ...bandNote(key, i * BAR, BAR), weight: 1 })),
  );
  return likelyRoots(notes, bars, keys.length * BAR).map(({ startTick, root }) => [
    startTick / BAR,
    root,
  ]);
}

describe('likely roots', () => {
  // Roots of triads and sevenths in every position, standard theory.
  it.each([
    ['C major', [48, 52, 55], 0],
    ['C major over E', [40, 48, 55], 0],
    ['A minor', [45, 48, 52], 9],
    ['G seventh', [43, 47, 50, 53], 7],
    ['D fifth', [38, 45], 2],
  ])('hears the root of %s', (_, keys, root) => {
    expect(rootsOf([keys])).toEqual([[0, root]]);
  });

  it('follows a change at the bar line', () => {
    expect(
      rootsOf([
        [36, 48, 52, 55],
        [41, 53, 57, 60],
      ]),
    ).toEqual([
      [0, 0],
      [1, 5],
    ]);
  });

  it('carries a root through a bar without notes', () => {
    expect(rootsOf([[36, 48, 52, 55], [], [36, 48, 52, 55]])).toEqual([[0, 0]]);
  });

  it('does not follow a passing note of the bass', () => {
    const bars = [{ startTick: 0, meter: meter('4/4') }];
    const chordNotes = [48, 52, 55].map((key) => ({ ...bandNote(key, 0, BAR), weight: 1 }));
    const bass = [36, 36, 38, 40].map((key, i) => ({
      ...bandNote(key, i * 480, 480),
      weight: 4,
    }));
    const roots = likelyRoots([...chordNotes, ...bass], bars, BAR);
    expect(roots.map((span) => span.root)).toEqual([0]);
  });

  it('has nothing to say without notes', () => {
    expect(likelyRoots([], [{ startTick: 0, meter: meter('4/4') }], BAR)).toEqual([]);
  });
});

describe('bass degrees', () => {
  const inC = [{ startTick: 0, endTick: BAR, root: 0 }];
  const inFour = [{ startTick: 0, meter: meter('4/4') }];
  const degrees = (keys: readonly number[]) =>
    bassDegrees(
      keys.map((key, i) => bandNote(key, i * 240)),
      inC,
      inFour,
    );

  it('names the notes of the octave above the root', () => {
    expect(degrees([36, 39, 40, 43, 45, 46, 48, 52])).toEqual([
      'root',
      'third',
      'third',
      'fifth',
      'sixth',
      'seventh',
      'octave',
      'tenth',
    ]);
  });

  it('names the fifth under the root', () => {
    expect(degrees([36, 31])).toEqual(['root', 'fifth-below']);
  });

  it('hears a semitone under the next root as an approach', () => {
    const changes = [
      { startTick: 0, endTick: BAR, root: 0 },
      { startTick: BAR, endTick: 2 * BAR, root: 5 },
    ];
    const notes = [bandNote(36, 0), bandNote(40, 1440), bandNote(41, BAR)];
    expect(bassDegrees(notes, changes, inFour)).toEqual(['root', 'approach', 'root']);
  });

  it('hears an approach in the whole last beat of a 6/8, which is a dotted quarter, and not before', () => {
    const changes = [
      { startTick: 0, endTick: 1440, root: 0 },
      { startTick: 1440, endTick: 2880, root: 5 },
    ];
    const notes = [bandNote(36, 0), bandNote(40, 480), bandNote(40, 720), bandNote(41, 1440)];
    const inSix = [{ startTick: 0, meter: meter('6/8') }];
    expect(bassDegrees(notes, changes, inSix)).toEqual(['root', 'third', 'approach', 'root']);
    expect(bassDegrees(notes, changes, inFour)[2]).toBe('third');
  });

  it('reads against written chords, a slash chord by its bass', () => {
    const roots = chordRoots([
      { startTick: 0, endTick: BAR, chord: chord('C/G') },
      { startTick: BAR, endTick: 2 * BAR, chord: 'no-chord' },
    ]);
    expect(roots).toEqual([{ startTick: 0, endTick: BAR, root: 7 }]);
  });

  it('takes every note for the root where no harmony is known', () => {
    expect(bassDegrees([bandNote(40, 0)], [], inFour)).toEqual(['root']);
  });
});

describe('strokes of a band', () => {
  const range = { firstBar: 0, lastBar: 0 };

  it('splits the drums into sources by what is struck', () => {
    const kit = bandTrack(
      [bandNote(36, 0), bandNote(42, 0), bandNote(38, 480), bandNote(46, 480)],
      'drums',
    );
    const { sources, strokes } = bandStrokes(bandOf([kit], ['4/4']), ['drums'], range);
    expect(sources.map((source) => source.part)).toEqual(['kick', 'hi-hat', 'snare']);
    expect(strokes.map(({ source, at }) => [source, at])).toEqual([
      ['kick', 0],
      ['hi-hat', 0],
      ['hi-hat', 480],
      ['snare', 480],
    ]);
  });

  it('reads the bass against the harmony that the band plays', () => {
    const bass = bandTrack([bandNote(45, 0, 960), bandNote(52, 960, 960)], 'bass');
    const keys = bandTrack(
      [57, 60, 64].map((key) => bandNote(key, 0, BAR)),
      'other',
    );
    const band = bandOf([bass, keys], ['4/4']);
    const { sources, strokes } = bandStrokes(band, ['bass', 'other'], range);
    expect(sources).toEqual([{ id: 'bass-0', name: 'bass', part: 'bass' }]);
    expect(strokes.map((stroke) => stroke.what)).toEqual([['root'], ['fifth']]);
  });

  it('numbers picked notes by height within each bar and strums as the whole chord', () => {
    const bar = [48, 55, 60, 55].map((key, i) => bandNote(key, i * 240));
    const strum = [48, 55, 60].map((key) => bandNote(key, 960));
    const next = [64, 60].map((key, i) => bandNote(key, BAR + i * 240));
    const band = bandOf([bandTrack([...bar, ...strum, ...next], 'picking')], times(2));
    const { strokes } = bandStrokes(band, ['picking'], { firstBar: 0, lastBar: 1 });
    expect(strokes.map((stroke) => stroke.what?.join())).toEqual([
      'voice-1',
      'voice-2',
      'voice-3',
      'voice-2',
      'all',
      'voice-2',
      'voice-1',
    ]);
  });

  it('leaves out a track that doubles another of its role', () => {
    const line = [0, 480, 960].map((at) => bandNote(36, at));
    const octave = [5, 485, 965].map((at) => bandNote(48, at));
    const band = bandOf([bandTrack(line, 'bass'), bandTrack(octave, 'bass')], ['4/4']);
    expect(bandStrokes(band, ['bass', 'bass'], range).sources).toHaveLength(1);
    expect(bandStrokes(band, ['bass', 'picking'], range).sources).toHaveLength(2);
  });

  it('takes only the chosen bars, with a stroke just before the first', () => {
    const notes = [0, BAR - 30, BAR + 960, 2 * BAR].map((at) => bandNote(36, at));
    const band = bandOf([bandTrack(notes, 'drums')], times(3));
    const { strokes, beats } = bandStrokes(band, ['drums'], { firstBar: 1, lastBar: 1 });
    expect(strokes.map((stroke) => stroke.at)).toEqual([BAR - 30, BAR + 960]);
    expect(beats).toEqual([0, 480, 960, 1440, 1920].map((at) => BAR + at));
  });

  it('gives strengths as shares of the loudest and keeps lengths', () => {
    const band = bandOf([bandTrack([bandNote(60, 0, 700, 127)], 'sung')], ['4/4']);
    const { strokes } = bandStrokes(band, ['sung'], range);
    expect(strokes).toMatchObject([{ strength: 1, length: 700, what: ['top'] }]);
  });
});
