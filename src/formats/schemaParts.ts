import * as v from 'valibot';
import { type Chord, QUALITY_INTERVALS } from '../core/harmony/chord.ts';
import { TENSIONS } from '../core/harmony/chordSpellings.ts';
import { READ_SWING_RATIOS } from '../core/rhythm/swing.ts';

/** A record of exactly these properties; unknown ones are refused, so that nothing is dropped unseen. */
export function recordOf<Entries extends v.ObjectEntries>(entries: Entries) {
  return v.pipe(v.strictObject(entries), v.readonly());
}

export function list<Schema extends v.GenericSchema>(item: Schema) {
  return v.pipe(v.array(item), v.readonly());
}

/** Names of a table as its own type. */
export function names<Name extends string>(table: Readonly<Record<Name, unknown>>): Name[] {
  return Object.keys(table) as Name[];
}

/** Whether values rise, each above the one before. */
export function ascends(values: readonly number[]): boolean {
  return values.every((value, i) => i === 0 || value > (values[i - 1] ?? value));
}

export const textSchema = v.string();
export const idSchema = v.pipe(v.string(), v.nonEmpty());
export const shareSchema = v.pipe(v.number(), v.minValue(0), v.maxValue(1));
export const positiveSchema = v.pipe(v.number(), v.finite(), v.gtValue(0));
export const notNegativeSchema = v.pipe(v.number(), v.finite(), v.minValue(0));
export const wholeSchema = v.pipe(v.number(), v.safeInteger(), v.minValue(0));
export const countSchema = v.pipe(v.number(), v.safeInteger(), v.minValue(1));

/** A number between two bounds, ends included. */
export function within({ lowest, highest }: { readonly lowest: number; readonly highest: number }) {
  return v.pipe(v.number(), v.minValue(lowest), v.maxValue(highest));
}

/** The swing of a pattern, in every file that holds one. */
export const swingSchema = recordOf({
  level: v.picklist(['eighth', 'sixteenth']),
  ratio: within(READ_SWING_RATIOS),
});

/** A count that stays small enough to lay out: a wrong file must not ask for endless bars. */
export function countUpTo(most: number) {
  return v.pipe(v.number(), v.integer(), v.minValue(1), v.maxValue(most));
}

export const keyNumberSchema = v.pipe(v.number(), v.integer(), v.minValue(0), v.maxValue(127));

/** Key numbers that a hand holds, low to high. */
export const heldKeysSchema = v.pipe(
  list(keyNumberSchema),
  v.check(ascends, 'key numbers from low to high'),
);

export const pitchClassSchema = recordOf({
  letter: v.picklist(['C', 'D', 'E', 'F', 'G', 'A', 'B']),
  alteration: v.pipe(v.number(), v.integer(), v.minValue(-3), v.maxValue(3)),
});

export const chordSchema = recordOf({
  root: pitchClassSchema,
  quality: v.picklist(names(QUALITY_INTERVALS)),
  tensions: v.pipe(
    list(v.picklist(TENSIONS)),
    v.check(
      (tensions) => ascends(tensions.map((tension) => TENSIONS.indexOf(tension))),
      'tensions in ascending order, each once',
    ),
  ),
  bass: v.exactOptional(pitchClassSchema),
}) satisfies v.GenericSchema<unknown, Chord>;

export const meterSchema = v.pipe(
  recordOf({ beats: countUpTo(32), unit: v.picklist([2, 4, 8, 16]), groups: list(countSchema) }),
  v.forward(
    v.check(
      ({ beats, groups }) => groups.reduce((sum, group) => sum + group, 0) === beats,
      'groups that add up to the beats',
    ),
    ['groups'],
  ),
);
