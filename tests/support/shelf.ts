import { readdirSync, readFileSync } from 'node:fs';
import { join, resolve } from 'node:path';
import type { ShelfPattern } from '../../src/core/rhythm/shelf.ts';
import { decodeShelfPattern } from '../../src/formats/patternFile.ts';
import { valueOf } from './music.ts';

const FOLDER = resolve(import.meta.dirname, '../../patterns');

/** The shipped pattern files, by name without ending, as text. */
export const SHELF_FILES: readonly { readonly name: string; readonly text: string }[] = readdirSync(
  FOLDER,
)
  .filter((file) => file.endsWith('.json'))
  .toSorted()
  .map((file) => ({
    name: file.replace('.json', ''),
    text: readFileSync(join(FOLDER, file), 'utf8'),
  }));

/** Every shipped pattern. */
export function shelf(): ShelfPattern[] {
  return SHELF_FILES.map(({ text }) => valueOf(decodeShelfPattern(text)));
}
