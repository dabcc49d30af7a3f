import { type Key, MODES, type Mode } from './key.ts';
import type { KeySuggestion } from './keyGuess.ts';
import { suggestKeys } from './keyGuess.ts';
import { plainestKey } from './keySpelling.ts';
import { chromaOf, PLAIN_PITCH_CLASSES, type Semitones } from './pitch.ts';
import { type SoundingChord, spelledChord } from './soundingChord.ts';

/** A chord that was heard and for how long. */
export type HeardFor = {
  readonly chord: SoundingChord | 'no-chord';
  readonly durationSec: number;
};

/**
 * Shares of the twelve places above the tonic in music of each mode (Albrecht and Shanahan 2013, from memory:
 * docs/sources.md#heard-keys).
 */
const PROFILES: Readonly<Record<Mode, readonly number[]>> = {
  major: [0.238, 0.006, 0.111, 0.006, 0.137, 0.094, 0.016, 0.214, 0.009, 0.08, 0.008, 0.081],
  minor: [0.22, 0.006, 0.104, 0.123, 0.019, 0.103, 0.012, 0.214, 0.062, 0.022, 0.061, 0.052],
};

/** What a recording has of any note whatever is played: overtones, drums, slips. */
const STRAY = 0.02;

/** As how many independent draws of a note the whole of a recording counts. */
const DRAWS = 20;

/** What the share of time on the tonic's own triad counts, and being the first or the last chord. */
const TONIC_SHARE = 3;
const FIRST_OR_LAST = 0.5;

/** What the roles of the chords in a key count (`suggestKeys`): they are heard, not written, and one slip may weigh much. */
const ROLES = 0.25;

/** No key's roles count as less likely than this. */
const LEAST_ROLES = 1e-8;

/** A chord that is shorter is as likely a slip of the ear. */
const SHORTEST_SEC = 0.4;

const C_MAJOR: Key = { tonic: { letter: 'C', alteration: 0 }, mode: 'major' };

/** Qualities that stand for the minor tonic's triad rather than the major one's. */
const MINOR_QUALITIES = ['minor', 'minor-seventh', 'minor-sixth', 'minor-major-seventh'];

type Place = { readonly tonic: Semitones; readonly mode: Mode };

const PLACES: readonly Place[] = Array.from({ length: 12 }, (_, tonic) =>
  MODES.map((mode) => ({ tonic, mode })),
).flat();

function keyAt({ tonic, mode }: Place): Key {
  const found = PLAIN_PITCH_CLASSES.find((pitchClass) => chromaOf(pitchClass) === tonic);
  if (!found) throw new Error(`no pitch class lies ${tonic} semitones above C`);
  return plainestKey({ tonic: found, mode });
}

function profileEvidence({ tonic, mode }: Place, shares: ArrayLike<number>): number {
  const profile = PROFILES[mode];
  let sum = 0;
  for (let i = 0; i < 12; i++) sum += shares[(tonic + i) % 12]! * Math.log(profile[i]! + STRAY);
  return DRAWS * sum;
}

function isTonicOf({ tonic, mode }: Place, { root, quality }: SoundingChord): boolean {
  return root === tonic && (mode === 'minor') === MINOR_QUALITIES.includes(quality);
}

function tonicEvidence(place: Place, heard: readonly HeardFor[]): number {
  const sounding = heard.filter(({ chord }) => chord !== 'no-chord');
  const isTonic = ({ chord }: HeardFor) => chord !== 'no-chord' && isTonicOf(place, chord);
  const secOf = (chords: readonly HeardFor[]) =>
    chords.reduce((sum, { durationSec }) => sum + durationSec, 0);
  const all = secOf(sounding);
  const ends = [sounding[0], sounding.at(-1)].filter((end) => end && isTonic(end)).length;
  return (
    FIRST_OR_LAST * ends + (all === 0 ? 0 : (TONIC_SHARE * secOf(sounding.filter(isTonic))) / all)
  );
}

/** How likely the roles of the chords make each place the tonic (`suggestKeys`), as natural logarithms. */
function rolesEvidence(heard: readonly HeardFor[]): (place: Place) => number {
  const timed = heard
    .filter(({ durationSec }) => durationSec >= SHORTEST_SEC)
    .map(({ chord, durationSec }) => ({
      chord: chord === 'no-chord' ? chord : spelledChord({ ...chord, bass: chord.root }, C_MAJOR),
      durationTicks: Math.round(1000 * durationSec),
    }));
  const suggested = suggestKeys(timed);
  return ({ tonic, mode }) => {
    const found = suggested.find(({ key }) => chromaOf(key.tonic) === tonic && key.mode === mode);
    return Math.log(Math.max(LEAST_ROLES, found?.confidence ?? LEAST_ROLES));
  };
}

/**
 * All 24 keys with how sure it is that what was heard is in each, surest first, by the notes that sounded (`shares`
 * of the twelve from C up, adding up to 1) and by the chords in order: their roles, how long the tonic's triad lasts,
 * whether it begins or ends. Each key is spelled with the fewest signs. Without a chord there is none.
 */
export function heardKeys(
  shares: ArrayLike<number>,
  heard: readonly HeardFor[],
): readonly KeySuggestion[] {
  if (heard.every(({ chord }) => chord === 'no-chord')) return [];
  const roles = rolesEvidence(heard);
  const logs = PLACES.map(
    (place) => profileEvidence(place, shares) + tonicEvidence(place, heard) + ROLES * roles(place),
  );
  const most = Math.max(...logs);
  const odds = logs.map((log) => Math.exp(log - most));
  const all = odds.reduce((sum, each) => sum + each, 0);
  return PLACES.map((place, i) => ({ key: keyAt(place), confidence: odds[i]! / all })).toSorted(
    (a, b) => b.confidence - a.confidence,
  );
}
