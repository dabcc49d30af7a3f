import { describe, expect, it } from 'vitest';
import { QUALITY_INTERVALS } from '../../../src/core/harmony/chord.ts';
import { pitchClassOf } from '../../../src/core/harmony/pitch.ts';
import {
  type Hands,
  type Pattern,
  patternSteps,
  patternTicks,
} from '../../../src/core/rhythm/pattern.ts';
import { handLoad } from '../../../src/core/rhythm/playable.ts';
import { realise } from '../../../src/core/rhythm/realise.ts';
import { realiseBand } from '../../../src/core/rhythm/realiseBand.ts';
import type { ChordSpan, Timeline } from '../../../src/core/song/timeline.ts';
import { barTicks, formatMeter, tempoBeatTicks } from '../../../src/core/time/meter.ts';
import { BPM_RANGE } from '../../../src/core/time/tempoMap.ts';
import { QUALITIES } from '../../support/chords.ts';
import { chord, valueOf } from '../../support/music.ts';
import { plainVoicings } from '../../support/patterns.ts';
import { SHELF_FILES, shelf } from '../../support/shelf.ts';

const SHELF = shelf();

function shelfPattern(id: string): Pattern {
  const found = SHELF.find(({ pattern }) => pattern.id === id);
  if (!found) throw new Error(`nothing on the shelf is called ${id}`);
  return found.pattern;
}

/** Where the hits of one hand stand, in steps of which so many make `bars` bars. */
function stepsOf(p: Pattern, hand: keyof Hands, steps: number, bars: number): number[][] {
  const span = bars * barTicks(p.meter);
  const grid = p[hand].map(({ at }) => (at * steps) / span);
  return Array.from({ length: p.bars / bars }, (_, i) =>
    grid.filter((step) => Math.floor(step / steps) === i).map((step) => step - i * steps),
  );
}

/** Steps as lists `0 3 6`; `free` where the book leaves the hand to the tune. */
type Row = readonly [id: string, steps: number, bars: number, left: string, right: string];

// docs/sources.md#accompaniment-patterns, traditional patterns as onset grids. M: handbook form, from
// memory; CP: common practice. Rows of low confidence are left out here.
const ROWS: readonly Row[] = [
  ['country-two-beat', 8, 1, '0 4', '2 6'], // Fling & Foxx, grid CP
  ['ballad-eighths', 8, 1, '0 4', '0 1 2 3 4 5 6 7'], // CP
  ['root-and-quarters', 8, 1, '0', '0 2 4 6'], // pianoclues.com
  ['rock-eighths', 8, 1, '0 1 2 3 4 5 6 7', '2 6'], // CP
  ['soul-backbeat', 8, 1, '0 3 4', '2 6'], // CP
  ['waltz', 3, 1, '0', '1 2'], // CP
  ['alberti-bass', 8, 1, '0 1 2 3 4 5 6 7', 'free'], // M
  ['march', 4, 1, '0 2', '1 3'], // CP
  ['polka', 4, 1, '0 2', '1 3'], // CP
  ['stride', 8, 1, '0 2 4 6', 'free'], // M
  ['boogie-shuffle', 8, 1, '0 1 2 3 4 5 6 7', '2 6'], // steakauzoorecords.com, grid M
  ['charleston', 8, 1, '0', '0 3'], // M
  ['bossa-nova', 8, 1, '0 3 4 7', 'free'], // jazzpianoblog.com
  ['bossa-nova', 16, 2, 'free', '0 3 6 10 13'], // Toussaint timeline, as comp M
  ['tresillo', 8, 1, '0 3 6', 'free'], // Toussaint 2005
  ['habanera', 8, 1, '0 3 4 6', 'free'], // M
  ['cinquillo', 8, 1, 'free', '0 2 3 5 6'], // Toussaint 2005
  ['son-clave-three-two', 16, 2, 'free', '0 3 6 10 12'], // Toussaint
  ['son-clave-two-three', 16, 2, 'free', '2 4 8 11 14'], // computed by swapping halves
  ['rumba-clave-three-two', 16, 2, 'free', '0 3 7 10 12'], // Toussaint (docs/sources.md#timelines)
  ['tumbao', 8, 1, '3 6', 'free'], // M, several descriptions agree
  ['tumbao', 16, 2, 'free', '1 3 5 7 8 10 11 13 15'], // M, the son montuno's 2–3 with its halves swapped
  ['reggae-off-beat', 8, 1, 'free', '2 6'], // M
  // The same hand-book forms, from memory.
  ['whole-note-pads', 4, 1, '0', '0'],
  ['four-part-hymn', 4, 1, '0 1 2 3', '0 1 2 3'],
  ['four-on-the-floor-quarters', 4, 1, '0 1 2 3', '0 1 2 3'],
  ['off-beat-dance-stabs', 8, 1, '0 2 4 6', '1 3 5 7'],
  ['half-time', 8, 1, 'free', '0 4'],
  ['gospel-shout', 8, 1, '0 2 4 6', '1 3 5 7'],
  ['second-line', 16, 2, 'free', '0 3 6 10 12 14'],
  ['dembow', 16, 1, '0 4 8 12', '3 6 11 14'],
  ['cumbia', 4, 1, '0 2 3', '1 3'],
  ['doo-wop-triplets', 12, 1, 'free', '0 1 2 3 4 5 6 7 8 9 10 11'],
  ['seven-eight-two-two-three', 7, 1, '0 2 4', '1 3 5 6'],
  ['seven-eight-three-two-two', 7, 1, '0 3 5', '1 2 4 6'],
  ['two-beat-alla-breve', 4, 1, '0 2', '1 3'],
  ['two-feel-swing', 8, 1, '0 4', 'free'],
  ['baiao', 8, 1, '0 3', '2 6'],
  ['milonga', 8, 1, '0 3 4 6', '2 6'], // the habanera's bass
  ['gospel-twelve-eight', 12, 1, '0 6', '0 1 2 3 4 5 6 7 8 9 10 11'], // M
  ['six-eight-ballad', 6, 1, '0 3', '0 1 2 3 4 5'], // CP
  ['tango-marcato', 8, 1, '0 2 4 6', '0 2 4 6'], // M
  ['bolero', 8, 1, '0 4 6', '1 2 3 4 5 6 7'], // M
  ['samba', 8, 1, '0 3 4 7', 'free'], // M
  ['bembe', 12, 1, 'free', '0 2 4 5 7 9 11'], // Toussaint, bembé 101011010101 (docs/sources.md#timelines)
];

describe('onsets of the traditional patterns', () => {
  it.each(ROWS)('%s on %i steps', (id, steps, bars, left, right) => {
    const p = shelfPattern(id);
    for (const [hand, text] of [
      ['left', left],
      ['right', right],
    ] as const) {
      if (text === 'free') continue;
      for (const bar of stepsOf(p, hand, steps, bars))
        expect(bar, hand).toEqual(text.split(' ').map(Number));
    }
  });

  it('alternating thumb: thumb on the beats, fingers at 3, 5, 7, with or without a pinch at 0', () => {
    const p = shelfPattern('alternating-thumb');
    expect(stepsOf(p, 'left', 8, 1)).toEqual([[0, 2, 4, 6]]);
    expect(stepsOf(p, 'right', 8, 1)[0]!.filter((step) => step !== 0)).toEqual([3, 5, 7]);
  });
});

/** What the left hand plays, hit by hit. */
function leftTones(id: string): string {
  return shelfPattern(id)
    .left.map((hit) => hit.play.join('+'))
    .join(' ');
}

describe('tones of the traditional patterns', () => {
  // docs/sources.md#accompaniment-patterns.
  it.each([
    ['alberti-bass', 'root fifth third fifth root fifth third fifth'],
    [
      'boogie-shuffle',
      'root+fifth root+fifth root+sixth root+sixth root+fifth root+fifth root+sixth root+sixth',
    ],
    ['bolero', 'root fifth octave'],
    ['country-two-beat', 'root fifth-below'],
    ['march', 'root fifth-below'],
    ['polka', 'root fifth-below root fifth-below'],
    ['waltz', 'root fifth-below'],
    ['rock-eighths', 'root root root root root root root root'],
    ['soul-backbeat', 'root root root'],
    ['stride', 'root fifth+octave+tenth fifth-below fifth+octave+tenth'],
    ['bossa-nova', 'root fifth fifth root root fifth fifth root'],
    ['samba', 'root fifth fifth root root fifth fifth root'],
    ['alternating-thumb', 'root fifth root fifth'],
    ['gospel-twelve-eight', 'root root'],
    ['tumbao', 'fifth root fifth root'],
    ['four-to-the-bar-swing', 'root third fifth approach'],
    ['quarters-moving-tenor', 'root+fifth root+fifth root+sixth root+fifth'],
    ['six-eight-ballad', 'root fifth'],
  ])('of %s in the left hand: %s', (id, text) => expect(leftTones(id)).toBe(text));

  it('bossa and samba basses and a tumbao anticipate the next chord with their last stroke', () => {
    for (const id of ['bossa-nova', 'samba'])
      expect(
        shelfPattern(id)
          .left.map((hit) => hit.anticipates === true)
          .join(' '),
      ).toBe('false false false true false false false true');
    expect(shelfPattern('tumbao').left.at(-1)?.anticipates).toBe(true);
  });

  it('the 6/8 ballad rises and falls through the chord: 1 3 5 8 5 3', () =>
    expect(shelfPattern('six-eight-ballad').right.map((hit) => hit.play[0])).toEqual([
      'voice-1',
      'voice-2',
      'voice-3',
      'voice-4',
      'voice-3',
      'voice-2',
    ]));
});

/** A timeline in the pattern's meter that holds each chord for one round of the pattern. */
function roundFor(p: Pattern, chords: readonly ChordSpan['chord'][]): Timeline {
  const bar = barTicks(p.meter);
  const length = patternTicks(p);
  const bars = chords.length * p.bars;
  return {
    bars: Array.from({ length: bars }, (_, i) => ({
      startTick: i * bar,
      meter: p.meter,
      section: 0,
      barInSection: i,
    })),
    chords: chords.map((c, i) => ({
      startTick: i * length,
      endTick: (i + 1) * length,
      chord: c,
      section: 0,
      slot: i,
    })),
    sections: [{ startTick: 0, endTick: bars * bar, sectionId: 's', name: 'S', repeat: 0, bars }],
    lengthTicks: bars * bar,
  };
}

const ROOT_NAMES = ['C', 'D♭', 'D', 'E♭', 'E', 'F', 'F♯', 'G', 'A♭', 'A', 'B♭', 'B'];

const EVERY_CHORD = ROOT_NAMES.flatMap((name) =>
  QUALITIES.map((quality) => ({ root: pitchClassOf(name)!, quality, tensions: [] })),
);

describe('every pattern of the shelf', () => {
  it.each(SHELF)(
    '$pattern.name stands on its grid, hand by hand without overlaps',
    ({ pattern: p }) => {
      const steps = new Set(patternSteps(p).map((step) => step.at));
      for (const hits of [p.left, p.right, ...p.sources.map((s) => s.strokes)]) {
        expect(hits.every((hit) => steps.has(hit.at))).toBe(true);
        for (const [i, hit] of hits.entries()) {
          const next = hits[i + 1]?.at ?? hits[0]!.at + patternTicks(p);
          expect(hit.at + hit.length).toBeLessThanOrEqual(next);
        }
      }
      for (const hits of p.ending ? [p.ending.left, p.ending.right] : [])
        for (const [i, hit] of hits.entries())
          expect(hit.at + hit.length).toBeLessThanOrEqual(hits[i + 1]?.at ?? barTicks(p.meter));
    },
  );

  it.each(SHELF)('$pattern.name sounds on every chord in every key', ({ pattern: p }) => {
    const timeline = roundFor(p, EVERY_CHORD);
    const voicings = plainVoicings(timeline);
    const notes = valueOf(realise(timeline, voicings, () => p));
    const ticks = patternTicks(p);
    for (const part of ['left', 'right'] as const) {
      const rounds = new Set(
        notes.filter((n) => n.part === part).map((n) => Math.floor(n.startTick / ticks)),
      );
      expect(rounds.size).toBe(EVERY_CHORD.length);
    }
    const all = [...notes, ...realiseBand(timeline, voicings, () => p)];
    expect(all.every((note) => note.keyNumber >= 21 && note.keyNumber <= 108)).toBe(true);
    expect(all.every((note) => note.velocity >= 1 && note.velocity <= 127)).toBe(true);
  });

  it.each(SHELF)('$pattern.name can be played at its fastest usual tempo', (entry) => {
    const { pattern: p, tempoRange } = entry;
    const [, bpm] = tempoRange;
    const timeline = roundFor(p, [chord('C'), chord('C')]);
    const notes = valueOf(realise(timeline, plainVoicings(timeline), () => p));
    const load = handLoad(notes, bpm, tempoBeatTicks(p.meter));
    expect([...load.left.strains, ...load.right.strains]).toEqual([]);
  });

  it.each(SHELF)('$pattern.name has a usual tempo and is described', (entry) => {
    expect(entry.tempoRange[0]).toBeGreaterThanOrEqual(BPM_RANGE.lowest);
    expect(entry.tempoRange[1]).toBeLessThanOrEqual(BPM_RANGE.highest);
    expect(entry.tempoRange[0]).toBeLessThan(entry.tempoRange[1]);
    expect(entry.use).toMatch(/\.$/);
    expect(entry.tags.length).toBeGreaterThan(0);
  });
});

describe('the shelf', () => {
  it('holds at least 80 patterns, each in the file of its id', () => {
    expect(SHELF.length).toBeGreaterThanOrEqual(80);
    expect(SHELF.map(({ pattern }) => pattern.id)).toEqual(SHELF_FILES.map(({ name }) => name));
    expect(new Set(SHELF.map(({ pattern }) => pattern.name)).size).toBe(SHELF.length);
  });

  it('has patterns in every usual meter', () =>
    expect([...new Set(SHELF.map(({ pattern }) => formatMeter(pattern.meter)))].toSorted()).toEqual(
      ['12/8', '2/2', '2/4', '3+2+2/8', '3/4', '4/4', '5/4', '6/4', '6/8', '7/4', '7/8', '9/8'],
    ));

  it('has a pedal where hits are held, and never under short ones', () => {
    const pedalled = SHELF.map(({ pattern }) => pattern).filter(({ pedal }) => pedal);
    expect(pedalled.length).toBeGreaterThan(10);
    const hits = (p: (typeof pedalled)[number]) => [...p.left, ...p.right];
    expect(pedalled.filter((p) => hits(p).some(({ held }) => !held))).toEqual([]);
  });

  it('knows every chord quality there is', () =>
    expect(QUALITIES).toHaveLength(Object.keys(QUALITY_INTERVALS).length));
});
