import { err, ok } from '../core/result.ts';
import type { Pattern } from '../core/rhythm/pattern.ts';
import { decodePattern, encodePattern } from './patternFile.ts';
import { type Read, readShape } from './patternFileShape.ts';

/**
 * A pattern with its variations as the text of one pattern file: the first is the file's own pattern,
 * the others stand in it as `variations`. There is at least one.
 */
export function encodePatternFamily([original, ...variations]: readonly [
  Pattern,
  ...Pattern[],
]): string {
  const file = fileOf(original);
  const whole = variations.length > 0 ? { ...file, variations: variations.map(fileOf) } : file;
  return `${JSON.stringify(whole, undefined, 2)}\n`;
}

function fileOf(pattern: Pattern): object {
  return JSON.parse(encodePattern(pattern)) as object;
}

/**
 * Reads a pattern file, as text or as the JSON it holds, with its variations: the pattern itself
 * first, then those, which name it as what they are variations of. See `decodePattern`.
 */
export function decodePatternFamily(json: unknown): Read<[Pattern, ...Pattern[]]> {
  const file = readShape(json);
  if (!file.ok) return file;
  const original = decodePattern(json);
  if (!original.ok) return original;
  const family: [Pattern, ...Pattern[]] = [original.value];
  for (const [i, each] of (file.value.variations ?? []).entries()) {
    const read = decodePattern(each);
    if (!read.ok)
      return read.error.kind === 'wrong-value'
        ? err({ ...read.error, path: `variations[${i}].${read.error.path}` })
        : read;
    family.push({ ...read.value, variationOf: original.value.id });
  }
  return ok(family);
}
