import { type OpenedBand, openBand, patternName } from '../../../app/bandImport.ts';
import { type OpenedRecording, type RecordingError } from '../../../app/recordings.ts';
import { err, type Result } from '../../../core/result.ts';
import type { BandFileError } from './bandMessages.ts';

/**
 * What came of a file: a band and what is made of it will be called, why there is none, or that a recording is
 * being listened to, and how far.
 */
export type BandFile =
  | { readonly kind: 'opened'; readonly opened: OpenedBand; readonly name: string }
  | {
      readonly kind: 'refused';
      readonly error: BandFileError | RecordingError;
      readonly fileName: string;
    }
  | {
      readonly kind: 'listening';
      readonly fileName: string;
      readonly share: number;
      readonly giveUp: () => void;
    };

async function bandIn(file: File): Promise<Result<OpenedBand, BandFileError>> {
  const bytes = await file.arrayBuffer().catch(() => undefined);
  return bytes ? openBand(new Uint8Array(bytes)) : err({ kind: 'unreadable' });
}

/** What was read of a file of that name. */
export function readAs(
  { name }: Pick<File, 'name'>,
  opened: Result<OpenedBand | OpenedRecording, BandFileError | RecordingError>,
): BandFile {
  return opened.ok
    ? { kind: 'opened', opened: opened.value, name: patternName(name) }
    : { kind: 'refused', error: opened.error, fileName: name };
}

/** Reads a MIDI file that the user gave as a band. */
export async function readBandFile(file: File): Promise<BandFile> {
  return readAs(file, await bandIn(file));
}
