import * as v from 'valibot';
import { err, ok, type Result } from '../core/result.ts';
import { DIVISIONS, MOST_PATTERN_BARS } from '../core/rhythm/pattern.ts';
import { SOURCE_PARTS } from '../core/rhythm/sources.ts';
import type { Expected } from './patternEvents.ts';
import { schemaIssue } from './schemaIssue.ts';
import { swingSchema } from './schemaParts.ts';

/**
 * Why a pattern file cannot be read: it is no JSON, it is of a later version of the format, or one
 * place of it (`path`, such as `left[1]` for the left hand's second bar; empty for the whole) does not hold what it should.
 */
export type PatternFileError =
  | { readonly kind: 'not-json'; readonly text: string }
  | { readonly kind: 'newer-version'; readonly version: number }
  | ({ readonly kind: 'wrong-value'; readonly path: string } & Expected);

/** The version that is written; docs/pattern-file.schema.json describes it. */
export const PATTERN_FILE_VERSION = 1;

/** One line of text a bar. */
const Bars = v.pipe(v.array(v.string()), v.maxLength(MOST_PATTERN_BARS));
const Tempo = v.pipe(v.number(), v.minValue(1));

/** One division for every beat, or one for each. */
const Divisions = v.union([v.picklist(DIVISIONS), v.array(v.picklist(DIVISIONS))]);

const PatternFile = v.strictObject({
  $schema: v.optional(v.string()),
  version: v.literal(PATTERN_FILE_VERSION),
  id: v.pipe(v.string(), v.nonEmpty()),
  name: v.string(),
  origin: v.optional(v.pipe(v.string(), v.nonEmpty())),
  use: v.optional(v.pipe(v.string(), v.nonEmpty())),
  tempo: v.optional(v.tuple([Tempo, Tempo])),
  tags: v.optional(v.array(v.string())),
  meter: v.string(),
  divisions: Divisions,
  swing: v.optional(swingSchema),
  pedal: v.optional(v.literal('by-chord')),
  left: v.pipe(Bars, v.minLength(1)),
  right: v.pipe(Bars, v.minLength(1)),
  ending: v.optional(
    v.strictObject({ divisions: v.optional(Divisions), left: v.string(), right: v.string() }),
  ),
  sources: v.optional(
    v.array(
      v.strictObject({
        id: v.optional(v.string()),
        name: v.optional(v.string()),
        part: v.picklist(SOURCE_PARTS),
        strokes: Bars,
      }),
    ),
  ),
  /** Pattern files in their turn: see `decodePatternFamily`. */
  variations: v.optional(v.array(v.unknown())),
});

/** The fields of a pattern file, its hits and strokes still as text. */
export type PatternFile = v.InferOutput<typeof PatternFile>;

/** What reading any part of a pattern file gives. */
export type Read<T> = Result<T, PatternFileError>;

/** The error for one place of the file. */
export function wrong(path: string, expected: Expected): Read<never> {
  return err({ kind: 'wrong-value', path, ...expected });
}

/** The fields of a pattern file that is given as text or as the JSON it holds. */
export function readShape(json: unknown): Read<PatternFile> {
  const parsed = typeof json === 'string' ? parseJson(json) : ok(json);
  if (!parsed.ok) return parsed;
  const version = v.safeParse(v.object({ version: v.number() }), parsed.value);
  if (version.success && version.output.version > PATTERN_FILE_VERSION)
    return err({ kind: 'newer-version', version: version.output.version });
  const file = v.safeParse(PatternFile, parsed.value);
  if (file.success) return ok(file.output);
  return err({ kind: 'wrong-value', ...schemaIssue(file.issues[0]) });
}

function parseJson(text: string): Read<unknown> {
  try {
    return ok(JSON.parse(text) as unknown);
  } catch (error) {
    return err({ kind: 'not-json', text: error instanceof Error ? error.message : String(error) });
  }
}
