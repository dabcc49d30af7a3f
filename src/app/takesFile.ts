import type { TakeRecord } from '../core/practice/takeRecord.ts';
import { type TakeTableContext, takesAsCsv } from '../formats/takeTable.ts';
import { fileNameOf } from './fileName.ts';

/** The takes of a song as a file: its name and its text, a table in CSV. */
export function takesFile(
  takes: readonly TakeRecord[],
  context: TakeTableContext,
): { readonly name: string; readonly text: string } {
  return {
    name: fileNameOf([context.song, 'what I played'], 'csv'),
    text: takesAsCsv(takes, context),
  };
}
