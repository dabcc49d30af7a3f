import type { Chord } from '../../src/core/harmony/chord.ts';
import { parseChordSymbol } from '../../src/core/harmony/chordSymbol.ts';
import type { Key } from '../../src/core/harmony/key.ts';
import { formatPitchClass, type PitchClass, pitchClassOf } from '../../src/core/harmony/pitch.ts';
import type { Result } from '../../src/core/result.ts';
import { parseChart, parseChartBars } from '../../src/core/song/chart.ts';
import type { ChordSlot, OtherEnding, Section, Song } from '../../src/core/song/song.ts';
import { type Meter, parseMeter } from '../../src/core/time/meter.ts';

/** The value of a result that must be one; a test that builds its input from bad text fails here. */
export function valueOf<T, E>(result: Result<T, E>): T {
  if (!result.ok) throw new Error(JSON.stringify(result.error));
  return result.value;
}

/** The error of a result that must be one. */
export function errorOf<T, E>(result: Result<T, E>): E {
  if (result.ok) throw new Error(`expected an error, found ${JSON.stringify(result.value)}`);
  return result.error;
}

/** `meter('7/8')`, `meter('3+2+2/8')`. */
export function meter(text: string): Meter {
  return valueOf(parseMeter(text));
}

/** `pitchClass('B♭')`. */
export function pitchClass(text: string): PitchClass {
  const found = pitchClassOf(text);
  if (!found) throw new Error(`no pitch class: ${text}`);
  return found;
}

/** `chord('Am7/G')`. */
export function chord(symbol: string): Chord {
  return valueOf(parseChordSymbol(symbol));
}

/** `majorKey('E♭')`. */
export function majorKey(tonic: string): Key {
  return { tonic: pitchClass(tonic), mode: 'major' };
}

/** A key by its name: `keyNamed('E♭')`, `keyNamed('F♯ minor')`. */
export function keyNamed(name: string): Key {
  const tonic = name.replace(/ minor$/, '');
  return name === tonic ? majorKey(tonic) : minorKey(tonic);
}

/** The name that `keyNamed` reads. */
export function keyName({ tonic, mode }: Key): string {
  return formatPitchClass(tonic) + (mode === 'minor' ? ' minor' : '');
}

/** `minorKey('F♯')`. */
export function minorKey(tonic: string): Key {
  return { tonic: pitchClass(tonic), mode: 'minor' };
}

/** `slots('| C / F G |')` in 4/4, or in the meter that is named. */
export function slots(chart: string, meterText = '4/4'): readonly ChordSlot[] {
  return valueOf(parseChart(chart, meter(meterText)));
}

/** Slots of so many ticks each on one and the same chord, where the chords do not matter. */
export function slotsOfTicks(...lengths: readonly number[]): ChordSlot[] {
  return lengths.map((durationTicks) => ({ chord: chord('C'), durationTicks }));
}

/** An ending in 4/4, or in the meter that is named, in place of so many bars: `otherEnding(1, '| F / G / | C |')`. */
export function otherEnding(replacesBars: number, chart: string, meterText = '4/4'): OtherEnding {
  return { replacesBars, ...valueOf(parseChartBars(chart, meter(meterText))) };
}

/** The song with other endings of its form entries, by their place. */
export function withEndings(base: Song, endings: Readonly<Record<number, OtherEnding>>): Song {
  const form = base.form.map((entry, place) => {
    const other = endings[place];
    return other ? { ...entry, ending: other } : entry;
  });
  return { ...base, form };
}

/** A section in 4/4 without chords, named and identified by `id`, with what `parts` says instead. */
export function section(id: string, parts: Partial<Section> = {}): Section {
  return {
    id,
    name: id,
    kind: 'verse',
    wash: 'straw',
    meter: meter('4/4'),
    barMeters: [],
    slots: [],
    ...parts,
  };
}

/** A song in C at 120 that plays the sections as `form` names them: `song([verse, chorus], 'verse chorus verse')`. */
export function song(sections: readonly Section[], form: string, parts: Partial<Song> = {}): Song {
  return {
    title: 'Test song',
    key: majorKey('C'),
    tempo: { bpm: 120, beatTicks: 480 },
    sections,
    form: form
      .split(/\s+/)
      .filter(Boolean)
      .map((sectionId, place) => ({ id: `entry ${place}`, sectionId })),
    notes: '',
    ...parts,
  };
}
