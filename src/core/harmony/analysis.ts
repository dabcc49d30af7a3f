import { arrivalAt, visitedKeys } from './arrivals.ts';
import type { Chord } from './chord.ts';
import { numeralFor, type Role, roleReading } from './chordRoles.ts';
import { type HeardLine, heardLine } from './heardChords.ts';
import type { Key } from './key.ts';
import { type KeyReading, keyReading } from './keyReading.ts';
import type { Numeral } from './numerals.ts';

/** A chord of the chart as it is understood: the key it is heard in there, its numeral in that key, its role. */
export type AnalysedChord = {
  readonly key: Key;
  readonly role: Role;
  readonly numeral: Numeral;
};

/** Leaving one key for another costs as much as a chord that is almost unexplained; so one strange chord is no modulation. */
const CHANGE_COST = 6;

/** What each chord heard away from the home key costs, so that readings that say as much stay at home. */
const AWAY_COST = 0.25;

const FEWEST_CHORDS_AWAY = 3;

/** A stretch of chords heard in one key, the last place not included. */
type Stretch = { readonly from: number; readonly to: number; readonly reading: KeyReading };

/** The cheapest way through the line: for each place the key (by its place in `readings`, home first) it is heard in. */
function cheapestKeys(line: HeardLine, readings: readonly KeyReading[]): number[] {
  let totals: readonly number[] = readings.map((_, k) => (k === 0 ? 0 : CHANGE_COST));
  const cameFrom = line.map((_, i) => {
    const cheapest = totals.indexOf(Math.min(...totals));
    const from = totals.map((total, k) =>
      i > 0 && totals[cheapest]! + CHANGE_COST < total ? cheapest : k,
    );
    totals = from.map((before, k) => {
      const change = before === k ? 0 : CHANGE_COST;
      const cost = roleReading(line, i, readings[k]!)?.cost ?? 0;
      return totals[before]! + change + cost + (k === 0 ? 0 : AWAY_COST);
    });
    return from;
  });
  const keys: number[] = [];
  let key = totals.indexOf(Math.min(...totals));
  for (let i = line.length - 1; i >= 0; i--) {
    keys[i] = key;
    key = cameFrom[i]![key]!;
  }
  return keys;
}

function stretchesOf(keys: readonly number[], readings: readonly KeyReading[]): Stretch[] {
  const starts = keys.flatMap((key, i) => (i === 0 || key !== keys[i - 1] ? [i] : []));
  return starts.map((from, s) => ({
    from,
    to: starts[s + 1] ?? keys.length,
    reading: readings[keys[from]!]!,
  }));
}

/** Whether a stretch makes its key heard: it arrives there, with at least three chords in all. */
function isEstablished(line: HeardLine, { from, to, reading }: Stretch): boolean {
  const stretch = line.slice(from, to);
  const { tonic, key } = reading;
  return (
    stretch.filter((chord) => chord !== undefined).length >= FEWEST_CHORDS_AWAY &&
    stretch.some((_, i) => arrivalAt(stretch, i, tonic, key.mode) !== undefined)
  );
}

function stretchesIn(line: HeardLine, readings: readonly KeyReading[]): Stretch[] {
  const stretches = stretchesOf(cheapestKeys(line, readings), readings);
  const passing = stretches.find(
    ({ reading, ...places }) =>
      reading !== readings[0] && !isEstablished(line, { ...places, reading }),
  );
  if (!passing) return stretches;
  return stretchesIn(
    line,
    readings.filter((reading) => reading !== passing.reading),
  );
}

/**
 * Every chord of a chart in its key: its numeral and its role there (`Role` lists what is recognised;
 * what fits no rule is `unexplained` and named by root and quality alone). Where several chords make
 * another key heard and the line arrives at its tonic, they are read in that key, which then stands at
 * each of them. One entry for each chord, undefined where no chord is played. The chords are heard by
 * sound, so A♯7 for B♭7 is understood; the numeral spells them as the key does.
 *
 * The reading is the one of least total cost (dynamic programming over the keys that the line arrives
 * in), ties going to the home key.
 */
export function analyse(
  chords: ReadonlyArray<Chord | 'no-chord'>,
  key: Key,
): Array<AnalysedChord | undefined> {
  const line = heardLine(chords);
  const readings = [key, ...visitedKeys(line, key)].map((each) => keyReading(each, line));
  return stretchesIn(line, readings).flatMap(({ from, to, reading }) =>
    line.slice(from, to).map((heard, i) => {
      const read = roleReading(line, from + i, reading);
      if (!heard || !read) return undefined;
      const numeral = numeralFor(heard.chord, read, reading.key);
      return { key: reading.key, role: read.role, numeral };
    }),
  );
}
