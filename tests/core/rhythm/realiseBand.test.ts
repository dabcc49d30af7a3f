import { describe, expect, it } from 'vitest';
import { bassGuitarKey, guitarKeys } from '../../../src/core/rhythm/bandKeys.ts';
import type { Pattern } from '../../../src/core/rhythm/pattern.ts';
import { realiseBand } from '../../../src/core/rhythm/realiseBand.ts';
import type { SourcePart } from '../../../src/core/rhythm/sources.ts';
import { chord } from '../../support/music.ts';
import {
  chartTimeline,
  noteLines,
  pattern,
  plainVoicings,
  sectionsTimeline,
  source,
} from '../../support/patterns.ts';

const still = pattern('4/4', { left: '........' });

function withSource(part: SourcePart, text: string): Pattern {
  return { ...still, sources: [source(still, part, text)] };
}

function band(chart: string, p: Pattern) {
  const timeline = chartTimeline(chart);
  return realiseBand(timeline, plainVoicings(timeline), () => p);
}

function lines(chart: string, part: SourcePart, text: string): string[] {
  return noteLines(band(chart, withSource(part, text)));
}

describe('drums', () => {
  // General MIDI percussion key map (docs/sources.md#percussion-map).
  it.each<[SourcePart, number]>([
    ['kick', 36],
    ['snare', 38],
    ['hi-hat', 42],
    ['tom', 45],
    ['cymbal', 51],
    ['percussion', 54],
  ])('sound the %s on key %i', (part, key) => {
    const notes = band('| C |', withSource(part, 'x---....'));
    expect(notes.map(({ part: sounded, keyNumber }) => [sounded, keyNumber])).toEqual([
      [part, key],
    ]);
  });

  it('go on through N.C. and over chord changes', () =>
    expect(lines('| C / N.C. / | F |', 'kick', '..x---..')).toEqual(['480+960 36', '2400+960 36']));

  it('are as loud as their strokes are strong', () => {
    const kick = source(still, 'kick', 'xxx.....');
    const strengths = [1, 0.5, 0];
    const strokes = kick.strokes.map((stroke, i) => ({ ...stroke, strength: strengths[i]! }));
    const notes = band('| C |', { ...still, sources: [{ ...kick, strokes }] });
    expect(notes.map((note) => note.velocity)).toEqual([127, 64, 1]);
  });
});

describe('the bass', () => {
  it('plays its degrees from E1 up', () =>
    expect(lines('| C |', 'bass', 'R-5-8-v-')).toEqual([
      '0+480 36',
      '480+480 43',
      '960+480 48',
      '1440+480 31',
    ]));

  it.each([
    ['E', 'root', 28],
    ['E♭', 'root', 39],
    ['E♭', 'fifth', 34],
    ['E♭', 'octave', 51],
    ['C/E', 'root', 28],
    ['Am', 'third', 36],
  ] as const)('over %s takes the %s on key %i', (symbol, tone, key) =>
    expect(bassGuitarKey(tone, chord(symbol), 40)).toBe(key),
  );

  it('approaches the lowest string from the octave above', () =>
    expect(bassGuitarKey('approach', chord('C'), 28)).toBe(39));

  it('rests in N.C.', () =>
    expect(lines('| N.C. / C / |', 'bass', 'R---R---')).toEqual(['960+960 36']));

  it('sounds the root where its strokes have no pitch', () =>
    expect(lines('| C |', 'bass', 'x-------')).toEqual(['0+1920 36']));
});

describe('a pitched stroke at a chord change', () => {
  it('late in a beat and over the change takes the chord it leads into', () => {
    const p = withSource('bass', '.......R');
    const strokes = p.sources[0]!.strokes.map((stroke) => ({ ...stroke, length: 480 }));
    const tied = { ...p, sources: [{ ...p.sources[0]!, strokes }] };
    expect(noteLines(band('| C | F |', tied))).toEqual(['1680+480 29', '3600+240 29']);
  });

  it('up to the change keeps its chord', () =>
    expect(lines('| C | F |', 'bass', '.......R')).toEqual(['1680+240 36', '3600+240 29']));

  it('takes the new chord where a hand anticipates at its tick', () => {
    const p = withSource('bass', '.......R');
    const left = pattern('4/4', { left: '.......R' }).left;
    const pushed = { ...p, left: left.map((hit) => ({ ...hit, anticipates: true })) };
    expect(noteLines(band('| C | F |', pushed))).toEqual(['1680+240 29', '3600+240 29']);
  });

  it('held from early on is struck again', () =>
    expect(lines('| C / F / |', 'bass', 'R-------')).toEqual(['0+960 36', '960+960 29']));
});

describe('a guitar', () => {
  // A barre chord's shape (common practice): E major 022100, G7 as 353433.
  it.each([
    ['E', [40, 47, 52, 56, 59, 64]],
    ['G7', [43, 50, 53, 59, 62, 67]],
    ['Am', [45, 52, 57, 60, 64, 69]],
    ['C6', [48, 55, 57, 64, 67, 72]],
    ['D5', [50, 57, 62, 69, 74]],
    ['D/F♯', [42, 50, 57, 62, 66, 69]],
  ])('holds %s as %j', (symbol, keys) => expect(guitarKeys(chord(symbol))).toEqual(keys));

  it('strums the whole chord and picks single voices', () => {
    expect(lines('| E |', 'strumming', 'x-------')).toHaveLength(6);
    expect(lines('| E |', 'picking', '1-3-4-x-')).toEqual([
      '0+480 40',
      '480+480 52',
      '960+480 56',
      '1440+480 64',
    ]);
  });
});

it('a sung line takes the top of the right hand’s voicing', () =>
  expect(lines('| C |', 'sung', 'x-------')).toEqual(['0+1920 67']));

it('strokes that most bars lack are left out', () => {
  const kick = source(still, 'kick', 'x-x-x---');
  const presences = [0.4, 0.5, 1];
  const strokes = kick.strokes.map((stroke, i) => ({ ...stroke, presence: presences[i]! }));
  expect(noteLines(band('| C |', { ...still, sources: [{ ...kick, strokes }] }))).toEqual([
    '480+480 36',
    '960+960 36',
  ]);
});

it('the band swings with the hands', () => {
  const swung = {
    ...withSource('hi-hat', 'xx......'),
    swing: { level: 'eighth', ratio: 2 } as const,
  };
  expect(noteLines(band('| C |', swung))).toEqual(['0+320 42', '320+160 42']);
});

it('is silent where a bar has another meter than its pattern, and where there is none', () => {
  const timeline = chartTimeline('| C | C |', '3/4');
  const p = withSource('kick', 'x-------');
  expect(realiseBand(timeline, plainVoicings(timeline), () => p)).toEqual([]);
  expect(realiseBand(timeline, plainVoicings(timeline), () => undefined)).toEqual([]);
});

it('goes on in the bar where the hands play an ending', () => {
  const p = { ...withSource('kick', 'x-------'), ending: { left: [], right: [] } };
  const timeline = sectionsTimeline('| C |', '| C |');
  expect(noteLines(realiseBand(timeline, plainVoicings(timeline), () => p))).toEqual([
    '0+1920 36',
    '1920+1920 36',
  ]);
});
