import type { TrackProblem } from '../../app/exports.ts';
import type { ProjectFault, ProjectFileError, SongsProblem } from '../../app/songs.ts';
import { unreachable } from '../../core/result.ts';
import { MOST_BARS } from '../../core/song/songLength.ts';
import type { StorageError } from '../../state/storage.ts';
import { expectedWords, foundWords } from '../parts/tool/fileWords.ts';
import { scoreSentence } from '../parts/tool/messages.ts';
import { shownTitle } from './songRows.ts';

/** What the lists in a song file hold, in musicians' words. */
const LISTS: Readonly<Record<string, string>> = {
  sections: 'section',
  slots: 'chord',
  barMeters: 'bar of another meter',
  patternChanges: 'change of pattern',
  form: 'place in the form',
  patterns: 'pattern',
  left: 'left-hand hit',
  right: 'right-hand hit',
  sources: 'part of the band',
  strokes: 'stroke',
};

/** A place in a song file in words, with the path for whoever repairs it: “section 3, chord 1 (song.sections[2].slots[0])”. */
export function filePlace(path: string): string {
  const words = [...path.matchAll(/(\w+)\[(\d+)\]/g)].flatMap(([, list = '', index]) => {
    const word = LISTS[list];
    return word ? [`${word} ${Number(index) + 1}`] : [];
  });
  if (words.length === 0) return path === '' ? 'its beginning' : path;
  return `${words.join(', ')} (${path})`;
}

const FAULTS: Readonly<Record<ProjectFault['kind'], string>> = {
  'nothing-left': 'nothing is there, and something must be',
  'same-id': 'this name inside the file is used twice',
  'not-there': 'what it names is not in the file',
  'bars-not-filled': 'the chords end inside a bar',
  'too-many-bars': `there are more bars than a song can have (${MOST_BARS.toLocaleString('en')})`,
  'out-of-order': 'the order is wrong',
  'too-long': 'something lasts into what follows it',
  outside: 'something begins behind the end of the pattern',
  'divisions-do-not-fit': 'the beats are not divided one by one',
};

/** Where a reader of JSON says that a text breaks; browsers differ in how they say it. */
function brokenPlace(reason: string): string | undefined {
  const line = /line (\d+) column (\d+)/.exec(reason);
  if (line) return `line ${line[1]}, column ${line[2]}`;
  const position = /position (\d+)/.exec(reason);
  return position ? `sign ${Number(position[1]) + 1}` : undefined;
}

function faultsText(faults: readonly ProjectFault[]): string {
  const [first, ...others] = faults;
  if (!first) return 'its parts do not fit together';
  const more = others.length === 0 ? '' : ` (and ${others.length} more like it)`;
  return `at ${filePlace(first.path)} ${FAULTS[first.kind]}${more}`;
}

/** What is wrong with a song file, with its place, as the end of a sentence. */
function fileFault(error: ProjectFileError): string {
  switch (error.kind) {
    case 'not-json': {
      const place = brokenPlace(error.reason);
      return place
        ? `its text breaks at ${place}; it is damaged or no song file`
        : 'it is no song file';
    }
    case 'not-a-project':
      return 'it is a file of another kind';
    case 'no-version':
      return error.found === ''
        ? 'it does not say its version'
        : `its version ${error.found} is none`;
    case 'newer-version':
      return `a newer Vampwright saved it (version ${error.version} of the file, this one reads up to ${error.known})`;
    case 'wrong-value':
      return `at ${filePlace(error.path)} stands ${foundWords(error.found, error.expected)}, where ${expectedWords(error.expected)} belongs`;
    case 'broken':
      return faultsText(error.faults);
    default:
      return unreachable(error);
  }
}

const STORAGE_FAULTS: Readonly<Record<StorageError['kind'], string>> = {
  unavailable: 'this browser keeps nothing here (a private window, or storage switched off)',
  'newer-version': 'a newer Vampwright in another tab has taken over the songs; reload this page',
  full: 'this device has no room left',
  failed: 'the browser refused',
};

function storageFault({ kind, reason }: StorageError): string {
  return kind === 'failed' ? `${STORAGE_FAULTS[kind]}: ${reason}` : STORAGE_FAULTS[kind];
}

/** What went wrong with the songs, where, and what to do. */
export function songsSentence(problem: SongsProblem): string {
  switch (problem.kind) {
    case 'not-listed':
      return `The songs on this device can't be listed: ${storageFault(problem.error)}.`;
    case 'not-opened':
      return `The song can't be opened: ${storageFault(problem.error)}.`;
    case 'not-deleted':
      return `The song could not be deleted: ${storageFault(problem.error)}.`;
    case 'open-song-not-kept':
      return `The song that lies open can't be kept: ${storageFault(problem.error)}. Save its song file first, or it is lost.`;
    case 'gone':
      return 'This song is no longer here; it was deleted in another tab.';
    case 'unreadable':
      return `“${shownTitle(problem.title)}” can't be read any more: ${fileFault(problem.error)}. It is still kept as it is; save its file to have it repaired.`;
    case 'file-not-read':
      return `The browser could not read “${problem.fileName}” (${problem.reason}). Choose it again.`;
    case 'no-song-file':
      return `“${problem.fileName}” can't be opened: ${fileFault(problem.error)}. Your song is untouched.`;
    default:
      return unreachable(problem);
  }
}

/** Why there is no practice track, and what to do. */
export function trackSentence(problem: TrackProblem): string {
  switch (problem.kind) {
    case 'given-up':
      return 'Given up; no track was made.';
    case 'not-rendered':
      return `The track could not be made (${problem.reason}). Try again; a shorter or faster one needs less memory.`;
    default:
      return scoreSentence(problem);
  }
}
