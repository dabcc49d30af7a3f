import * as v from 'valibot';
import type { PracticeTarget, TakeRecord } from '../core/practice/takeRecord.ts';
import type { TakeScore } from '../core/practice/takeScore.ts';
import { err, ok, type Result } from '../core/result.ts';
import {
  countSchema,
  idSchema,
  list,
  positiveSchema,
  recordOf,
  shareSchema,
  wholeSchema,
} from './schemaParts.ts';

const numberSchema = v.pipe(v.number(), v.finite());
const handSchema = v.picklist(['left', 'right', 'both']);

const targetSchema = v.variant('kind', [
  recordOf({ kind: v.literal('pattern'), patternId: idSchema }),
  recordOf({ kind: v.literal('section'), sectionId: idSchema }),
  recordOf({ kind: v.literal('join'), from: idSchema, to: idSchema }),
  recordOf({ kind: v.literal('song') }),
  recordOf({ kind: v.literal('bars'), firstBar: wholeSchema, endBar: countSchema }),
]) satisfies v.GenericSchema<unknown, PracticeTarget>;

const deviations = {
  hits: wholeSchema,
  meanMs: v.exactOptional(numberSchema),
  spreadMs: v.exactOptional(numberSchema),
};

const scoreSchema = recordOf({
  expected: wholeSchema,
  played: wholeSchema,
  matched: wholeSchema,
  precision: shareSchema,
  recall: shareSchema,
  f: shareSchema,
  gapSec: v.exactOptional(positiveSchema),
  all: recordOf(deviations),
  hands: list(
    recordOf({
      ...deviations,
      hand: handSchema,
      expected: wholeSchema,
      extra: wholeSchema,
      unevennessMs: v.exactOptional(numberSchema),
    }),
  ),
  steps: list(
    recordOf({
      ...deviations,
      hand: handSchema,
      patternId: v.exactOptional(idSchema),
      patternTick: wholeSchema,
      expected: countSchema,
      wrongKeys: wholeSchema,
    }),
  ),
  drift: v.exactOptional(recordOf({ fasterPercent: numberSchema, gainPercent: numberSchema })),
  changes: v.exactOptional(
    recordOf({ hits: wholeSchema, laterMs: numberSchema, errorMs: numberSchema }),
  ),
  keys: v.exactOptional(
    recordOf({
      hits: wholeSchema,
      wrongHits: wholeSchema,
      wrongKeys: wholeSchema,
      absentKeys: wholeSchema,
    }),
  ),
  grades: recordOf({
    'very-good': wholeSchema,
    good: wholeSchema,
    fair: wholeSchema,
    off: wholeSchema,
  }),
  clean: v.boolean(),
}) satisfies v.GenericSchema<unknown, TakeScore>;

const takeSchema = recordOf({
  atMs: wholeSchema,
  target: targetSchema,
  hand: handSchema,
  bpm: positiveSchema,
  level: v.exactOptional(v.picklist([1, 2, 3, 4, 5])),
  passes: wholeSchema,
  sees: v.picklist(['keys', 'hands', 'onsets']),
  score: scoreSchema,
}) satisfies v.GenericSchema<unknown, TakeRecord>;

/** How takes are written since they are kept; another number is another way of writing them. */
const TAKE_VERSION = 1;

const rowSchema = v.strictObject({ version: v.literal(TAKE_VERSION), take: takeSchema });

/** A take as it is kept: plain data, which a database takes as it is. */
export type TakeRow = { readonly version: typeof TAKE_VERSION; readonly take: TakeRecord };

/** A take as it is kept. */
export function encodeTake(take: TakeRecord): TakeRow {
  return { version: TAKE_VERSION, take };
}

/** What is wrong with a row that is no take, or one of a later way of writing: the place in it. */
export type TakeRowError = { readonly kind: 'no-take'; readonly path: string };

/** The take of a row that may hold anything. */
export function decodeTake(row: unknown): Result<TakeRecord, TakeRowError> {
  const read = v.safeParse(rowSchema, row, { abortEarly: true });
  if (read.success) return ok(read.output.take);
  return err({ kind: 'no-take', path: v.getDotPath(read.issues[0]) ?? '' });
}
