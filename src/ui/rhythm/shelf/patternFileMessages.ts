import type { PatternFileError } from '../../../app/patternFiles.ts';
import { unreachable } from '../../../core/result.ts';
import { expectedWords, foundWords } from '../../parts/tool/fileWords.ts';

/** What is wrong with a pattern file, with its place. */
export function patternFileSentence(error: PatternFileError): string {
  switch (error.kind) {
    case 'not-json':
      return 'This is no pattern file: it can’t be read.';
    case 'newer-version':
      return `This pattern file is of a later version (${error.version}) than this program reads.`;
    case 'wrong-value': {
      const place = error.path === '' ? 'at its beginning' : `at ${error.path}`;
      const found = foundWords(error.found, error.expected);
      return `This is no pattern file, or a damaged one: ${place} there should be ${expectedWords(error.expected)}, but there is ${found}.`;
    }
    default:
      return unreachable(error);
  }
}
