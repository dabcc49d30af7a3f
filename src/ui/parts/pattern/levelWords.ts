import type { HitStrain } from '../../../app/patternLoad.ts';
import type { Semitones } from '../../../core/harmony/pitch.ts';
import type { Level } from '../../../core/rhythm/levels.ts';
import type { Pattern } from '../../../core/rhythm/pattern.ts';
import type { HandLoad, Strain } from '../../../core/rhythm/playable.ts';
import { BPM_RANGE } from '../../../core/time/tempoMap.ts';
import { spokenTick } from './spokenTick.ts';

/** What each level lets a player do, in a few words. */
export const LEVEL_WORDS: Readonly<Record<Level, string>> = {
  1: 'on the beat, one hand after the other or both together',
  2: 'beats in halves or thirds, no quick change of hands',
  3: 'steps up to quarters of a beat, at an easy pace',
  4: 'nearly all of it, a little under what hands can do',
  5: 'everything that two hands can play at this tempo',
};

/** Spans as musicians call them, by semitones. */
const SPANS = [
  'one key',
  'a semitone',
  'a second',
  'a minor third',
  'a third',
  'a fourth',
  'a tritone',
  'a fifth',
  'a minor sixth',
  'a sixth',
  'a minor seventh',
  'a seventh',
  'an octave',
  'a minor ninth',
  'a ninth',
  'a minor tenth',
  'a tenth',
] as const;

/** A span by its name, over a tenth in semitones. */
export function spanWords(semitones: Semitones): string {
  return SPANS[semitones] ?? `${semitones} semitones`;
}

function perSecond(rate: number): string {
  return rate.toFixed(1);
}

const OCTAVE: Semitones = 12;

/** What a hand has to do, in words; a hand that rests says so. */
export function loadWords(load: Omit<HandLoad, 'strains'>): string {
  if (load.comfortableBpm === undefined) return 'hardly anything to do.';
  const leap =
    load.biggestLeap > 0
      ? `leaps like an octave in ${(OCTAVE / load.biggestLeap).toFixed(1)} s`
      : 'no leaps';
  return [
    `${perSecond(load.fastestRate)} strikes a second at the fastest`,
    `one key ${perSecond(load.fastestRepeat)} times a second`,
    leap,
    load.widestSpan > 0 ? `a span of ${spanWords(load.widestSpan)}` : 'one key at a time',
  ].join(', ');
}

/** Faster than this nobody asks. */
const FASTEST_WORTH_SAYING = BPM_RANGE.highest;

/** Up to which tempo a pattern is comfortable for both hands. */
export function comfortWords(loads: readonly Pick<HandLoad, 'comfortableBpm'>[]): string {
  const limits = loads.flatMap(({ comfortableBpm }) => comfortableBpm ?? []);
  const slowest = Math.floor(Math.min(...limits));
  return slowest < FASTEST_WORTH_SAYING
    ? `Comfortable up to about ${slowest} beats a minute`
    : 'Comfortable at any tempo';
}

const STRAIN_WORDS: Readonly<Record<Strain['kind'], (strain: Strain) => string>> = {
  rate: ({ value, limit }) => `${perSecond(value)} strikes a second, over ${perSecond(limit)}`,
  repeat: ({ value, limit }) =>
    `one key ${perSecond(value)} times a second, over ${perSecond(limit)}`,
  leap: ({ value, limit }) =>
    `a leap like an octave in ${(OCTAVE / value).toFixed(2)} s, under ${(OCTAVE / limit).toFixed(2)}`,
  span: ({ value, limit }) => `a span of ${spanWords(value)}, over ${spanWords(limit)}`,
};

/** Where a hit stands and why it is too much: "4 and: one key 9.3 times a second, over 7.0". */
export function strainWords(pattern: Pattern, strain: HitStrain): string {
  return `${spokenTick(pattern, strain.at)}: ${STRAIN_WORDS[strain.kind](strain)}`;
}
