import { type OpenedBand, openBand, patternName } from '../../app/bandImport.ts';
import { err, type Result } from '../../core/result.ts';
import type { BandFileError } from './bandMessages.ts';

/** What came of a file: a band and what its pattern will be called, or why there is none. */
export type BandFile =
  | { readonly kind: 'opened'; readonly opened: OpenedBand; readonly name: string }
  | { readonly kind: 'refused'; readonly error: BandFileError; readonly fileName: string };

async function bandIn(file: File): Promise<Result<OpenedBand, BandFileError>> {
  const bytes = await file.arrayBuffer().catch(() => undefined);
  return bytes ? openBand(new Uint8Array(bytes)) : err({ kind: 'unreadable' });
}

/** Reads a file that the user gave as a band. */
export async function readBandFile(file: File): Promise<BandFile> {
  const opened = await bandIn(file);
  return opened.ok
    ? { kind: 'opened', opened: opened.value, name: patternName(file.name) }
    : { kind: 'refused', error: opened.error, fileName: file.name };
}
