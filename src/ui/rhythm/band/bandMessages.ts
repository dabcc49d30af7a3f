import type { OpenedBand, openBand, ProposalError } from '../../../app/bandImport.ts';
import type { RecordingError } from '../../../app/recordings.ts';
import { type Result, unreachable } from '../../../core/result.ts';

type NoBand = ReturnType<typeof openBand> extends Result<OpenedBand, infer E> ? E : never;

/** Why a file is not opened as a band: what is wrong in it, or that the browser can't read it at all. */
export type BandFileError = NoBand | { readonly kind: 'unreadable' };

/** Where in a file something stands, counted from 1 as people do. */
function place(at: number, track?: number): string {
  const byte = `byte ${(at + 1).toLocaleString('en-GB')}`;
  return track === undefined ? byte : `track ${track + 1}, ${byte}`;
}

/** Why a file can't be brought in as a band, where it is wrong, and what to do. */
export function bandFileSentence(error: BandFileError): string {
  switch (error.kind) {
    case 'not-midi':
      return `This is no MIDI file: it does not begin as one (${place(error.at)}). Choose a file whose name ends in .mid.`;
    case 'bad-header':
      return `The head of this MIDI file is damaged (${place(error.at)}: ${error.text}). Save or copy it again.`;
    case 'smpte-division':
      return `This MIDI file counts time in film frames (${error.framesPerSecond} a second, ${place(error.at)}), not in beats. Save it with ticks to the quarter note.`;
    case 'independent-sequences':
      return `This MIDI file holds several pieces side by side (format 2, ${place(error.at)}). Save the one you want as a file of its own.`;
    case 'cut-off':
      return `This MIDI file breaks off too soon (${place(error.at, error.track)}). Part of it is missing; copy it again.`;
    case 'bad-event':
      return `This MIDI file has something in it that is no music (${place(error.at, error.track)}: ${error.text}). Save it again.`;
    case 'unreadable':
      return 'The browser can’t read this file. See whether it is still where it was.';
    case 'no-notes':
      return 'There are no notes in this MIDI file, so there is no band to hear.';
    case 'too-long':
      return `This MIDI file claims to last more than ${error.bars.toLocaleString('en-GB')} bars, which no band plays; a time in it must be damaged.`;
    default:
      return unreachable(error);
  }
}

/** Why a recording gives no band, and what to do. */
export function recordingSentence(error: RecordingError): string {
  switch (error.kind) {
    case 'not-decoded':
      return `The browser can’t read the sound in this file (${error.text}). Save it as WAV, MP3 or OGG and bring it in again.`;
    case 'silent-file':
      return 'There is no sound in this file.';
    case 'unreadable':
      return 'The browser can’t read this file. See whether it is still where it was.';
    case 'too-long':
      return `This recording lasts ${error.minutes} minutes; up to ${error.most} are listened to. Cut out the song you want.`;
    case 'nothing-heard':
      return 'No beat was heard in this recording. Nothing is made up: tap the rhythm or bring in a MIDI file instead.';
    case 'given-up':
      return 'Listening was given up.';
    default:
      return unreachable(error);
  }
}

/** Why a file that was given brings in no band. */
export function refusalSentence(error: BandFileError | RecordingError): string {
  return isOfRecording(error) ? recordingSentence(error) : bandFileSentence(error);
}

const OF_RECORDINGS: readonly string[] = [
  'not-decoded',
  'silent-file',
  'nothing-heard',
  'given-up',
];

function isOfRecording(error: BandFileError | RecordingError): error is RecordingError {
  return OF_RECORDINGS.includes(error.kind) || 'minutes' in error;
}

/** Why the chosen bars give no pattern, and which to choose instead. */
export function proposalSentence(error: ProposalError): string {
  switch (error.kind) {
    case 'no-such-bars':
      return `The band plays bars 1 to ${error.bars}. Choose bars among them, the first before the last.`;
    case 'meter-changes':
      return `In bar ${error.atBar + 1} the meter changes from ${error.from} to ${error.to}. Choose bars before it, or from it on.`;
    case 'nothing-played':
      return 'Nobody plays anything that comes again in these bars. Choose other bars, or say of more tracks what they are.';
    default:
      return unreachable(error);
  }
}
