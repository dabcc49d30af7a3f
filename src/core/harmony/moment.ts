import { type HeardChord, type HeardLine, lastRoot, nextRoot } from './heardChords.ts';
import type { KeyReading } from './keyReading.ts';
import type { NumeralTarget } from './numerals.ts';
import type { PitchClass } from './pitch.ts';

/** A chord where it stands in a line, read in a key; `before` and `after` are on other roots. */
export type Moment = {
  readonly line: HeardLine;
  readonly place: number;
  readonly chord: HeardChord;
  readonly before: HeardChord | undefined;
  readonly after: HeardChord | undefined;
  readonly reading: KeyReading;
};

/** What a rule finds: the root as the key spells it, and the step that the chord is applied to. */
export type Finding = { readonly root: PitchClass; readonly of?: NumeralTarget };

/** The chord at a place of the line with its surroundings; undefined where no chord is played. */
export function momentAt(line: HeardLine, place: number, reading: KeyReading): Moment | undefined {
  const chord = line[place];
  if (!chord) return undefined;
  const before = line[lastRoot(line, place) ?? -1];
  const after = line[nextRoot(line, place) ?? -1];
  return { line, place, chord, before, after, reading };
}

/** The moment of the next chord on another root; undefined at the end of the line. */
export function nextMoment({ line, place, reading }: Moment): Moment | undefined {
  return momentAt(line, nextRoot(line, place) ?? -1, reading);
}
