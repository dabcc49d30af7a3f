import { chordTones } from '../../src/core/harmony/chord.ts';
import { chromaOf } from '../../src/core/harmony/pitch.ts';
import type { Note } from '../../src/core/rhythm/note.ts';
import {
  DIVISIONS,
  type Division,
  type Hands,
  type Hit,
  type Pattern,
  patternSteps,
} from '../../src/core/rhythm/pattern.ts';
import type { Source, SourcePart, StrokeTone } from '../../src/core/rhythm/sources.ts';
import { STRAIGHT } from '../../src/core/rhythm/swing.ts';
import type { BassTone, VoiceTone } from '../../src/core/rhythm/tones.ts';
import { type Timeline, timelineOf } from '../../src/core/song/timeline.ts';
import { beatStarts } from '../../src/core/time/meter.ts';
import type { Ticks } from '../../src/core/time/ticks.ts';
import type { Voicing } from '../../src/core/voicing/voicing.ts';
import { meter, section, slots, song } from './music.ts';

const LEFT_SIGNS: Readonly<Record<string, BassTone>> = {
  R: 'root',
  '3': 'third',
  '5': 'fifth',
  '6': 'sixth',
  '7': 'seventh',
  '8': 'octave',
  X: 'tenth',
  v: 'fifth-below',
  a: 'approach',
};

const RIGHT_SIGNS: Readonly<Record<string, VoiceTone>> = {
  C: 'all',
  T: 'top',
  M: 'middle',
  B: 'bottom',
  U: 'upper',
  '1': 'voice-1',
  '2': 'voice-2',
  '3': 'voice-3',
  '4': 'voice-4',
  '5': 'voice-5',
  '6': 'voice-6',
};

type Grid = Pick<Pattern, 'meter' | 'bars' | 'divisions'>;

/**
 * What is struck, out of one sign a step: a tone's sign strikes, `-` lets it sound on, `.` is
 * silence, so `R-..5---` holds the root for two steps and the fifth for four.
 */
function eventsOf<Tone>(
  text: string,
  signs: Readonly<Record<string, Tone>>,
  grid: Grid,
): { at: Ticks; length: Ticks; play: [Tone] }[] {
  const steps = patternSteps(grid);
  if (text.length !== steps.length)
    throw new Error(`${steps.length} steps wanted, ${text.length} signs found in ${text}`);
  const end = steps.at(-1)!.at + steps.at(-1)!.length;
  const written = text.split('');
  return written.flatMap((sign, i) => {
    const tone = signs[sign];
    if (!tone && sign !== '-' && sign !== '.') throw new Error(`no tone is written ${sign}`);
    if (!tone) return [];
    const next = written.findIndex((other, j) => j > i && other !== '-');
    const until = next < 0 ? end : steps[next]!.at;
    return [{ at: steps[i]!.at, length: until - steps[i]!.at, play: [tone] }];
  });
}

function hitsOf<Tone extends BassTone | VoiceTone>(
  text: string | undefined,
  signs: Readonly<Record<string, Tone>>,
  grid: Grid,
): Hit<Tone>[] {
  if (text === undefined) return [];
  return eventsOf(text, signs, grid).map((event) => ({ ...event, touch: 'plain', held: true }));
}

/** Both hands of a grid, one sign a step; a hand left out rests. */
export function hands(grid: Grid, text: { left?: string; right?: string }): Hands {
  return {
    left: hitsOf(text.left, LEFT_SIGNS, grid),
    right: hitsOf(text.right, RIGHT_SIGNS, grid),
  };
}

function uniformDivisions(steps: number, beats: number): Division[] {
  const division = DIVISIONS.find((d) => d === steps / beats);
  if (!division) throw new Error(`${steps} signs do not divide ${beats} beats evenly`);
  return Array.from({ length: beats }, () => division);
}

/**
 * A straight pattern as text, called `p` unless `parts` says otherwise:
 * `pattern('4/4', { left: 'R---5---', right: '--C---C-' })`. Bars 1 and divisions the even ones that
 * fit the number of signs, unless `parts` gives them. `ending` is one bar, divided as the first.
 */
export function pattern(
  meterText: string,
  text: { left?: string; right?: string; ending?: { left?: string; right?: string } },
  parts: Partial<Pattern> = {},
): Pattern {
  const bars = parts.bars ?? 1;
  const beats = beatStarts(meter(meterText)).length;
  const signs = (text.left ?? text.right ?? '').length;
  const divisions = parts.divisions ?? uniformDivisions(signs, beats * bars);
  const grid = { meter: meter(meterText), bars, divisions };
  return {
    id: 'p',
    name: 'Pattern',
    swing: STRAIGHT,
    sources: [],
    ...grid,
    ...hands(grid, text),
    ...(text.ending ? { ending: hands({ ...grid, bars: 1 }, text.ending) } : {}),
    ...parts,
  };
}

/** One playing of one section with this chart: `chartTimeline('| C / F G |')`. */
export function chartTimeline(chart: string, meterText = '4/4'): Timeline {
  const verse = section('verse', { meter: meter(meterText), slots: slots(chart, meterText) });
  return timelineOf(song([verse], 'verse'));
}

/** The sections of these charts one after the other, in 4/4, identified by their place from `s0` on. */
export function sectionsTimeline(...charts: readonly string[]): Timeline {
  const sections = charts.map((chart, i) => section(`s${i}`, { slots: slots(chart) }));
  return timelineOf(song(sections, sections.map((s) => s.id).join(' ')));
}

/** For every chord its bass in the octave from C2 (36), its notes in root position from C4 (60) up. */
export function plainVoicings(timeline: Timeline): Voicing[] {
  return timeline.chords.map(({ chord }) => {
    if (chord === 'no-chord') return [];
    const root = 60 + chromaOf(chord.root);
    const tones = chordTones(chord);
    return [
      { keyNumber: 36 + chromaOf(chord.bass ?? chord.root), degree: 1, hand: 'left' as const },
      ...tones.map(({ degree, semitones }) => ({
        keyNumber: root + semitones,
        degree,
        hand: 'right' as const,
      })),
    ];
  });
}

/** Notes as short lines, `start+duration key`, one part of them or all. */
export function noteLines(notes: readonly Note[], part?: Note['part']): string[] {
  return notes
    .filter((note) => part === undefined || note.part === part)
    .map((note) => `${note.startTick}+${note.durationTicks} ${note.keyNumber}`);
}

/** The ticks at which a list of hits or strokes attacks. */
export function ticksOf(events: readonly { readonly at: Ticks }[]): Ticks[] {
  return events.map((event) => event.at);
}

/**
 * What one part of the band plays, one sign a step: tones of the bass or of voices by the signs of
 * `hands` (bass first), `x` for a stroke without pitch; full strength, in every bar.
 */
export function source(grid: Grid, part: SourcePart, text: string): Source {
  const signs: Readonly<Record<string, StrokeTone>> =
    part === 'bass' ? { ...LEFT_SIGNS, x: 'unpitched' } : { ...RIGHT_SIGNS, x: 'unpitched' };
  const strokes = eventsOf(text, signs, grid).map(({ at, length, play }) => ({
    at,
    length,
    strength: 1,
    presence: 1,
    what: play,
  }));
  return { id: part, name: part, part, strokes };
}
