import { type OpenedBand, openBand, patternName } from '../../app/bandImport.ts';
import type { BandFileError } from './bandMessages.ts';

/** What came of a file: a band and what its pattern will be called, or why there is none. */
export type BandFile =
  | { readonly kind: 'opened'; readonly opened: OpenedBand; readonly name: string }
  | { readonly kind: 'refused'; readonly error: BandFileError; readonly fileName: string };

/** Reads a file that the user gave; rejects only where the browser can't read it at all. */
export async function readBandFile(file: File): Promise<BandFile> {
  const opened = openBand(new Uint8Array(await file.arrayBuffer()));
  return opened.ok
    ? { kind: 'opened', opened: opened.value, name: patternName(file.name) }
    : { kind: 'refused', error: opened.error, fileName: file.name };
}
