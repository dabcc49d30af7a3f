import { arrivalAt, isTonic } from './arrivals.ts';
import type { Chord } from './chord.ts';
import { roleReading } from './chordRoles.ts';
import { type HeardLine, heardLine, isDominantSeventh } from './heardChords.ts';
import { fifthsOf, type Key, MODES, type Mode, scaleOf } from './key.ts';
import { type KeyReading, keyReading } from './keyReading.ts';
import { chromaOf, PLAIN_PITCH_CLASSES, type Semitones, samePitchClass } from './pitch.ts';

/** A key that the chords may be in; the confidences of all suggestions sum to 1. */
export type KeySuggestion = { readonly key: Key; readonly confidence: number };

/** A chord and how long it lasts. */
type TimedChord = { readonly chord: Chord | 'no-chord'; readonly durationTicks: number };

/**
 * What speaks for a key, as natural logarithms of odds (house values, set so that common progressions
 * in known keys come out right): what each different chord costs to explain, the tonic as first and
 * as last chord, an arrival at it, and its share of the time.
 */
const EVIDENCE = {
  cost: -1.2,
  first: 1,
  last: 1,
  authentic: 1,
  plagal: 0.4,
  share: 2,
} as const;

/** No chord counts as stranger than this, so that one cannot outvote the rest. */
const HIGHEST_COST = 2;

function averageOf(values: readonly number[]): number {
  return values.reduce((total, value) => total + value, 0) / values.length;
}

/** Cost of explaining the chords in a key, each different chord counted once, however often it comes. */
function explainingCost(line: HeardLine, reading: KeyReading): number {
  const costs = new Map<string, number[]>();
  for (const [i, chord] of line.entries()) {
    const cost = roleReading(line, i, reading)?.cost;
    if (!chord || cost === undefined) continue;
    const name = `${chord.root} ${chord.chord.quality}`;
    costs.set(name, [...(costs.get(name) ?? []), Math.min(cost, HIGHEST_COST)]);
  }
  return [...costs.values()].map(averageOf).reduce((total, cost) => total + cost, 0);
}

/** Share of the time that sounds in which a chord of the line is the tonic. */
function tonicShare(
  line: HeardLine,
  durations: readonly number[],
  isTonicAt: (place: number) => boolean,
): number {
  const timeOf = (counts: (place: number) => boolean) =>
    durations.reduce((total, ticks, i) => (counts(i) ? total + ticks : total), 0);
  return timeOf(isTonicAt) / timeOf((i) => line[i] !== undefined);
}

function evidenceFor(line: HeardLine, durations: readonly number[], key: Key): number {
  const reading = keyReading(key, line);
  const { tonic, isBlues } = reading;
  const isTonicAt = (i: number) => {
    const chord = line[i];
    return (
      isTonic(line, i, tonic, key.mode) &&
      (isBlues || (chord !== undefined && !isDominantSeventh(chord)))
    );
  };
  const sounding = [...line.keys()].filter((i) => line[i] !== undefined);
  const arrivals = sounding.filter(isTonicAt).map((i) => arrivalAt(line, i, tonic, key.mode));
  return (
    EVIDENCE.cost * explainingCost(line, reading) +
    (isTonicAt(sounding[0] ?? -1) ? EVIDENCE.first : 0) +
    (isTonicAt(sounding.at(-1) ?? -1) ? EVIDENCE.last : 0) +
    (arrivals.includes('authentic') ? EVIDENCE.authentic : 0) +
    (arrivals.includes('plagal') ? EVIDENCE.plagal : 0) +
    EVIDENCE.share * tonicShare(line, durations, isTonicAt)
  );
}

/** The key on a sound as the chart spells it: with the most roots in its scale, then the fewest signs. */
function spelledKey(chroma: Semitones, mode: Mode, chords: readonly Chord[]): Key {
  const strangers = (key: Key) => {
    const scale = scaleOf(key);
    return chords.filter(({ root }) => !scale.some((note) => samePitchClass(note, root))).length;
  };
  const keys = PLAIN_PITCH_CLASSES.filter((tonic) => chromaOf(tonic) === chroma)
    .map((tonic) => ({ tonic, mode }))
    .filter((key) => Math.abs(fifthsOf(key)) <= 7);
  return keys.reduce((best, key) => {
    const more = strangers(key) - strangers(best);
    const signs = Math.abs(fifthsOf(key)) - Math.abs(fifthsOf(best));
    return more < 0 || (more === 0 && signs < 0) ? key : best;
  });
}

/**
 * All 24 keys with how sure it is that the chords are in each, surest first, spelled as the chords are.
 * Heard are the chords' roles in each key, which chord begins and ends, what is arrived at and how
 * long the tonic lasts; relative keys share their chords and often come close. No chord, no suggestion.
 */
export function suggestKeys(timed: readonly TimedChord[]): KeySuggestion[] {
  const line = heardLine(timed.map(({ chord }) => chord));
  const chords = line.flatMap((heard) => (heard ? [heard.chord] : []));
  if (chords.length === 0) return [];
  const durations = timed.map(({ durationTicks }) => durationTicks);
  const keys = Array.from({ length: 12 }, (_, chroma) =>
    MODES.map((mode) => spelledKey(chroma, mode, chords)),
  ).flat();
  const odds = keys.map((key) => ({ key, odds: Math.exp(evidenceFor(line, durations, key)) }));
  const all = odds.reduce((total, each) => total + each.odds, 0);
  return odds
    .map((each) => ({ key: each.key, confidence: each.odds / all }))
    .toSorted((a, b) => b.confidence - a.confidence);
}
