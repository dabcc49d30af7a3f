import type { PatternId } from '../core/ids.ts';
import type { Project } from '../core/project.ts';
import type { Result } from '../core/result.ts';
import type { Pattern } from '../core/rhythm/pattern.ts';
import { decodePatternFamily, encodePatternFamily } from '../formats/patternFamilyFile.ts';
import type { PatternFileError } from '../formats/patternFile.ts';
import { familyOf } from '../state/edits/variations.ts';
import { fileNameOf } from './fileName.ts';

export type { PatternFileError } from '../formats/patternFile.ts';

/** A file to be saved. */
export type SavedFile = { readonly name: string; readonly text: string };

/** A pattern with its variations, the original first, as a file; undefined where there is no such pattern. */
export function savedPatterns({ patterns }: Project, id: PatternId): SavedFile | undefined {
  const [original, ...variations] = familyOf(patterns, id);
  return (
    original && {
      name: fileNameOf([original.name], 'json'),
      text: encodePatternFamily([original, ...variations]),
    }
  );
}

/** The pattern of a pattern file's text, and behind it its variations. */
export function readPatterns(text: string): Result<readonly Pattern[], PatternFileError> {
  return decodePatternFamily(text);
}
