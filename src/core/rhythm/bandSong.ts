import type { Chord } from '../harmony/chord.ts';
import type { Key } from '../harmony/key.ts';
import { type KeySuggestion, suggestKeys } from '../harmony/keyGuess.ts';
import { plainestKey } from '../harmony/keySpelling.ts';
import { type SoundingChord, spelledChord } from '../harmony/soundingChord.ts';
import { type RepeatedPart, repeatedParts } from '../song/repeatedParts.ts';
import type { ChordSlot, SectionKind } from '../song/song.ts';
import { barTicks, type Meter, sameMeter, tempoBeatTicks } from '../time/meter.ts';
import type { Tempo } from '../time/tempoMap.ts';
import type { Ticks } from '../time/ticks.ts';
import type { Band, TrackRole } from './band.ts';
import { type BandChord, bandChords } from './bandChords.ts';

/** A chord of a map that is drawn from a band, with what it could be as well, likeliest first. */
export type MappedSlot = ChordSlot & { readonly alternatives: readonly Chord[] };

/** A section of the map, as it is first played; `firstBar` counts the band's bars from 0. */
export type MappedSection = {
  readonly kind: SectionKind;
  readonly meter: Meter;
  readonly firstBar: number;
  readonly bars: number;
  readonly slots: readonly MappedSlot[];
};

/**
 * The map of a song as its band's file tells it: proposals, to be corrected. `form` lists the sections by place in
 * the order in which they are played; `keys` are all keys, likeliest first.
 */
export type BandMap = {
  readonly keys: readonly KeySuggestion[];
  readonly tempo: Tempo;
  readonly sections: readonly MappedSection[];
  readonly form: readonly number[];
};

const C_MAJOR: Key = { tonic: { letter: 'C', alteration: 0 }, mode: 'major' };

function sameChord(a: SoundingChord | undefined, b: SoundingChord | undefined): number {
  if (!a || !b) return a === b ? 1 : 0;
  if (a.root !== b.root) return 0;
  return a.quality === b.quality ? 1 : 0.8;
}

/** How much of the likeness of two bars their chords make; the rest is who plays. */
const CHORD_SHARE = 0.75;

/** Parts of a bar in which chords are compared. */
const COMPARED = 4;

function likenessIn(band: Band, chords: readonly BandChord[]) {
  const chordAt = (tick: Ticks) => chords.findLast(({ startTick }) => startTick <= tick)?.chord;
  const bars = band.bars.map(({ startTick, meter }) =>
    Array.from({ length: COMPARED }, (_, i) =>
      chordAt(startTick + (i * barTicks(meter)) / COMPARED),
    ),
  );
  const playing = band.bars.map(({ startTick, meter }) => {
    const end = startTick + barTicks(meter);
    return band.tracks.map(({ notes }) =>
      notes.some((note) => note.startTick >= startTick && note.startTick < end),
    );
  });
  return (a: number, b: number): number => {
    if (!sameMeter(band.bars[a]!.meter, band.bars[b]!.meter)) return 0;
    const alike =
      bars[a]!.reduce((sum, chord, i) => sum + sameChord(chord, bars[b]![i]), 0) / COMPARED;
    const either = playing[a]!.filter((plays, i) => plays || playing[b]![i]).length;
    const both = playing[a]!.filter((plays, i) => plays && playing[b]![i]).length;
    return CHORD_SHARE * alike + (1 - CHORD_SHARE) * (either === 0 ? 1 : both / either);
  };
}

/** Parts are cut where the meter changes, so that a section has one. */
function partsOf(band: Band, chords: readonly BandChord[]): RepeatedPart[] {
  const likeness = likenessIn(band, chords);
  return repeatedParts(band.bars.length, likeness).flatMap((part) => {
    const change = Array.from({ length: part.bars }, (_, i) => i).filter(
      (i) =>
        i > 0 &&
        !sameMeter(band.bars[part.firstBar + i]!.meter, band.bars[part.firstBar + i - 1]!.meter),
    );
    const cuts = [0, ...change, part.bars];
    return cuts.slice(1).map((end, i) => ({
      firstBar: part.firstBar + cuts[i]!,
      bars: end - cuts[i]!,
      label: change.length === 0 ? part.label : -1 - part.firstBar - i,
    }));
  });
}

/** How often a part is come back to: neighbours of one label are one visit. */
function visitsOf(parts: readonly RepeatedPart[]): Map<number, number> {
  const visits = new Map<number, number>();
  parts.forEach(({ label }, i) => {
    if (parts[i - 1]?.label !== label) visits.set(label, (visits.get(label) ?? 0) + 1);
  });
  return visits;
}

/**
 * What the parts are called until somebody knows better (common practice): what is come back to most is the
 * chorus where another part is come back to as well, else the verse; what is visited once is intro or outro at
 * the ends, a verse where it is played more than once in a row, and a bridge in between.
 */
function kindsOf(parts: readonly RepeatedPart[]): Map<number, SectionKind> {
  const visits = visitsOf(parts);
  const returning = [...visits]
    .filter(([, count]) => count > 1)
    .toSorted(([, a], [, b]) => b - a)
    .map(([label]) => label);
  const playings = (label: number) => parts.filter((part) => part.label === label).length;
  const kindOf = (label: number): SectionKind => {
    if (returning.includes(label))
      return label === returning[0] && returning.length > 1 ? 'chorus' : 'verse';
    if (visits.size === 1) return 'verse';
    if (parts[0]?.label === label) return 'intro';
    if (parts.at(-1)?.label === label) return 'outro';
    return playings(label) > 1 || returning.length === 0 ? 'verse' : 'bridge';
  };
  return new Map([...visits.keys()].map((label) => [label, kindOf(label)]));
}

function slotsIn(chords: readonly BandChord[], from: Ticks, to: Ticks, key: Key): MappedSlot[] {
  return chords
    .filter(({ startTick, endTick }) => endTick > from && startTick < to)
    .map(({ startTick, endTick, chord, alternatives }) => ({
      chord: chord ? spelledChord(chord, key) : ('no-chord' as const),
      durationTicks: Math.min(endTick, to) - Math.max(startTick, from),
      alternatives: alternatives.map((each) => spelledChord(each, key)),
    }));
}

function keysOf(band: Band, chords: readonly BandChord[]): KeySuggestion[] {
  const timed = chords.map(({ startTick, endTick, chord }) => ({
    chord: chord ? spelledChord(chord, band.key ?? C_MAJOR) : ('no-chord' as const),
    durationTicks: endTick - startTick,
  }));
  return suggestKeys(timed).map((suggestion) => ({
    ...suggestion,
    key: plainestKey(suggestion.key),
  }));
}

/** The map in one of its keys, the likeliest where none is named: see `BandMap`. */
export function bandMap(band: Band, roles: readonly TrackRole[], inKey?: Key): BandMap {
  const chords = bandChords(band, roles);
  const keys = keysOf(band, chords);
  const key = inKey ?? keys[0]?.key ?? C_MAJOR;
  const parts = partsOf(band, chords);
  const kinds = kindsOf(parts);
  const firsts = parts.filter(
    (part, i) => parts.findIndex(({ label }) => label === part.label) === i,
  );
  const endOf = (bar: number) => {
    const last = band.bars[bar]!;
    return last.startTick + barTicks(last.meter);
  };
  const first = band.bars[0]!;
  const { tempo } = band.tempoMap[0]!;
  const beatTicks = tempoBeatTicks(first.meter);
  return {
    keys,
    tempo: { bpm: (tempo.bpm * tempo.beatTicks) / beatTicks, beatTicks },
    sections: firsts.map(({ firstBar, bars, label }) => ({
      kind: kinds.get(label)!,
      meter: band.bars[firstBar]!.meter,
      firstBar,
      bars,
      slots: slotsIn(chords, band.bars[firstBar]!.startTick, endOf(firstBar + bars - 1), key),
    })),
    form: parts.map(({ label }) => firsts.findIndex((part) => part.label === label)),
  };
}
