import type { Levels } from '../audio/mix.ts';
import { type RenderOptions, renderStretches } from '../audio/renderOffline.ts';
import type { AudioData } from '../core/audioData.ts';
import { formatChordSymbol } from '../core/harmony/chordSymbol.ts';
import { formatPitchClass } from '../core/harmony/pitch.ts';
import type { PracticeSettings } from '../core/practice/practiceSettings.ts';
import type { SoundingHands } from '../core/practice/soundingHands.ts';
import type { Project } from '../core/project.ts';
import { err, ok, type Result } from '../core/result.ts';
import { barTicks, tempoBeatTicks } from '../core/time/meter.ts';
import type { Bpm } from '../core/time/tempoMap.ts';
import type { Seconds } from '../core/time/ticks.ts';
import { encodeMidi } from '../formats/midi.ts';
import { encodeProject } from '../formats/projectFile.ts';
import { wavFrames, wavHeader } from '../formats/wav.ts';
import { type Arrangement, AS_WRITTEN, arrangedProject } from '../state/arrangement.ts';
import { restedScore } from './clickRest.ts';
import { fileNameOf } from './fileName.ts';
import {
  drillPattern,
  isWanted,
  oneChordScore,
  type Score,
  type ScoreProblem,
  songScore,
  timedScore,
} from './score.ts';

/**
 * What is handed on, and the tempo of it in felt beats a minute: the whole song, its first beat at
 * `bpm`, in a key and at a level of its own where it has an arrangement, or the one-chord drill for at least so many bars, up to the end of its pattern.
 */
export type TrackPassage =
  | { readonly kind: 'song'; readonly bpm: Bpm; readonly arrangement?: Arrangement }
  | { readonly kind: 'drill'; readonly bpm: Bpm; readonly bars: number };

/** A passage as a MIDI file: both hands, and the band and the click where they are wanted. */
export type MidiRequest = {
  readonly passage: TrackPassage;
  readonly band: boolean;
  readonly click: boolean;
};

/** A passage as sound to practise with. The count-in clicks even without `click`. */
export type TrackRequest = MidiRequest & {
  readonly hands: SoundingHands;
  readonly countInBars: PracticeSettings['click']['countInBars'];
};

/** How loud the parts are beside each other (all fully up if left out), and what goes on meanwhile. */
export type TrackOptions = Pick<RenderOptions, 'onProgress' | 'signal'> & {
  readonly levels?: Levels;
};

export type TrackProblem =
  | ScoreProblem
  | { readonly kind: 'given-up' }
  | { readonly kind: 'not-rendered'; readonly reason: string };

/** Samples a second of a practice track, as on a compact disc: every player takes it. */
const TRACK_RATE = 44_100;

/** Bits a sample of a practice track, and its channels: see `TRACK_RATE`. */
const TRACK_FORM = { bits: 16, channels: 2 } as const;

/** How long a track goes on after its last bar, for the sound to die away. */
const TAIL_SEC: Seconds = 2;

/** The project as a passage plays it. */
function handedOn(project: Project, passage: TrackPassage): Project {
  return passage.kind === 'song' && passage.arrangement
    ? arrangedProject(project, passage.arrangement)
    : project;
}

function passageScore(project: Project, passage: TrackPassage): Result<Score, ScoreProblem> {
  const score = fullScore(project, passage);
  return score.ok ? ok(restedScore(score.value, project.practice.click)) : score;
}

/** The passage with a click that never rests. */
function fullScore(project: Project, passage: TrackPassage): Result<Score, ScoreProblem> {
  if (passage.kind === 'song')
    return songScore(
      handedOn(project, passage),
      undefined,
      (100 * passage.bpm) / project.song.tempo.bpm,
    );
  const pattern = drillPattern(project);
  return pattern
    ? oneChordScore(project, pattern, passage.bars, passage.bpm)
    : err({ kind: 'nothing-to-play' });
}

/** The project's practice settings with the parts that a request wants. */
function wantedParts(
  { practice }: Project,
  { hands, band, click }: Pick<TrackRequest, 'hands' | 'band' | 'click'>,
): PracticeSettings {
  return { ...practice, hands, band, click: { ...practice.click, on: click } };
}

/** How many bars last at least so many minutes at a tempo, in whole rounds of the drill's pattern; 1 without a pattern. */
export function drillBars(project: Project, minutes: number, bpm: Bpm): number {
  const pattern = drillPattern(project);
  if (!pattern) return 1;
  const { meter, bars } = pattern;
  const beats = minutes * bpm;
  const rounds = Math.ceil((beats * tempoBeatTicks(meter)) / (bars * barTicks(meter)));
  return Math.max(1, rounds) * bars;
}

/**
 * The passage as a Standard MIDI File of one track for each part, without a count-in: see
 * `encodeMidi`. Only a song has a key signature, as the chord of a drill may lie in any key.
 */
export function exportMidi(
  project: Project,
  request: MidiRequest,
): Result<Uint8Array<ArrayBuffer>, ScoreProblem> {
  const score = passageScore(project, request.passage);
  if (!score.ok) return score;
  const { notes, timeline, tempoMap, pedals } = score.value;
  const practice = wantedParts(project, { ...request, hands: 'both' });
  const wanted = notes.filter((note) => isWanted(note.part, practice));
  const { song } = handedOn(project, request.passage);
  const key = request.passage.kind === 'song' ? song.key : undefined;
  return ok(encodeMidi(wanted, timeline, tempoMap, key, pedals));
}

/** The notes of a track, and from when to how long it lasts: count-in and dying away included. */
function timedTrack(project: Project, request: TrackRequest) {
  const score = passageScore(project, request.passage);
  if (!score.ok) return score;
  const practice = wantedParts(project, request);
  const { notes, leadInSec, lengthSec } = timedScore(score.value, practice, request.countInBars);
  const startSec = notes.reduce((first, note) => Math.min(first, note.startSec), -leadInSec);
  return ok({ notes, startSec, durationSec: lengthSec + TAIL_SEC - startSec });
}

/** How long a track lasts, from the count-in's first sound to silence; undefined where it cannot be played. */
export function trackSec(project: Project, request: TrackRequest): Seconds | undefined {
  const track = timedTrack(project, request);
  return track.ok ? track.value.durationSec : undefined;
}

/**
 * The passage as a stereo WAV file of 16 bits at 44,100 samples a second: the count-in from its
 * first sample (a first word from its beginning), the music, and two seconds to die away. It is rendered and put away in pieces, so
 * that even a track of hours takes little memory; one of more than six hours is no WAV file any
 * more. `onProgress` is told the share that is done, where the browser can say so; `signal` gives
 * it up.
 */
export async function exportWav(
  project: Project,
  request: TrackRequest,
  { levels, onProgress, signal }: TrackOptions = {},
): Promise<Result<Blob, TrackProblem>> {
  const track = timedTrack(project, request);
  if (!track.ok) return track;
  const { notes, startSec, durationSec } = track.value;
  try {
    const frames = Math.ceil(durationSec * TRACK_RATE);
    const pieces: Blob[] = [
      new Blob([wavHeader({ ...TRACK_FORM, frames, sampleRate: TRACK_RATE })]),
    ];
    // A blob may lie on disk, where an array would stay in memory.
    const put = ({ channels }: AudioData) => {
      pieces.push(new Blob([wavFrames(channels, TRACK_FORM.bits)]));
    };
    await renderStretches(notes, put, {
      sampleRate: TRACK_RATE,
      startSec,
      durationSec,
      ...(levels && { levels }),
      ...(onProgress && { onProgress }),
      ...(signal && { signal }),
    });
    signal?.throwIfAborted();
    return ok(new Blob(pieces, { type: 'audio/wav' }));
  } catch (error) {
    if (signal?.aborted) return err({ kind: 'given-up' });
    return err({
      kind: 'not-rendered',
      reason: error instanceof Error ? error.message : String(error),
    });
  }
}

/** The whole song with its patterns and settings, as the text of a file that this tool opens again. */
export function exportSong(project: Project): string {
  return encodeProject(project);
}

/** Name of the song's file. */
export function songFileName({ song }: Project): string {
  return fileNameOf([song.title], 'json');
}

/** What of the song a passage is, where that is not the song as it is written. */
function passageWords(project: Project, passage: TrackPassage): string[] {
  if (passage.kind === 'drill')
    return [`drill on ${formatChordSymbol(project.practice.drill.chord)}`];
  const { semitones, level } = passage.arrangement ?? AS_WRITTEN;
  const { tonic, mode } = handedOn(project, passage).song.key;
  return [
    ...(semitones === 0 ? [] : [`in ${formatPitchClass(tonic)} ${mode}`]),
    ...(level === undefined ? [] : [`level ${level}`]),
  ];
}

/** Name of a file with a passage of the song, which tells what and, for a track, how fast. */
function passageFileName(project: Project, passage: TrackPassage, ending: 'mid' | 'wav'): string {
  const parts = [
    project.song.title,
    ...passageWords(project, passage),
    ...(ending === 'wav' ? [`${Math.round(passage.bpm)} bpm`] : []),
  ];
  return fileNameOf(parts, ending);
}

/** Name of the MIDI file of a passage. */
export function midiFileName(project: Project, passage: TrackPassage): string {
  return passageFileName(project, passage, 'mid');
}

/** Name of the practice track of a passage, with its tempo. */
export function trackFileName(project: Project, passage: TrackPassage): string {
  return passageFileName(project, passage, 'wav');
}
