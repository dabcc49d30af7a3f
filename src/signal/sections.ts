import { chordTones } from '../core/harmony/chord.ts';
import { chromaOf } from '../core/harmony/pitch.ts';
import { type RepeatedPart, repeatedParts } from '../core/song/repeatedParts.ts';
import type { Seconds } from '../core/time/ticks.ts';
import { findBeats } from './beats.ts';
import type { ChordSlice } from './chordSlices.ts';
import { findHarmony, type Harmony } from './chords.ts';
import type {
  MonoRecording,
  RecordedBeat,
  RecordedChord,
  RecordedSection,
} from './heardRecording.ts';

/** Parts of a bar whose notes are compared in order. */
const BAR_PARTS = 4;

/** What the notes of the bass count beside those of the chords. */
const BASS_WEIGHT = 0.5;

/** What the chords that were heard count beside the notes: a singer sings other notes over the same chords. */
const CHORDS_SHARE = 0.5;

/**
 * How much of what sets bars apart counts, so that parts that agree by 0.64 on average have the 0.8 from which on
 * `repeatedParts` takes them for the same. Bars that come again agree by 0.9 and more, half of those with
 * a singer over them by 0.85; other bars in nine cases of ten by less than 0.5 (measured on made songs).
 */
const CONTRAST = 0.55;

/** Parts that never return are told apart only where the loudness changes by this factor (4 dB). */
const LEVEL_CHANGE = 1.6;

/** Fewer bars than this have no form. */
const LEAST_BARS = 4;

/** A bar as it sounds: the shares of notes in its parts, each less the mean, and its loudness. */
type HeardBar = {
  readonly fromSec: Seconds;
  readonly toSec: Seconds;
  readonly notes: Float64Array;
  /** The chord in the middle of each part, by sound; undefined where there is none. */
  readonly chords: readonly (string | undefined)[];
  readonly level: number;
};

/**
 * The parts of a recording, in bars, by what comes again: parts with the same label (A, B, … by first
 * coming) are the same music. What never returns is one part, unless its loudness changes clearly. Between the first downbeat and the end
 * of the last bar they lie end to end; with fewer than four bars, or without beats (those of `findBeats` if left out), there are none.
 */
export function findSections(
  recording: MonoRecording,
  beats: readonly RecordedBeat[] = findBeats(recording).beats,
): readonly RecordedSection[] {
  return sectionsOf(findHarmony(recording, beats), beats);
}

/** `findSections` from harmony that is known already. */
export function sectionsOf(
  harmony: Pick<Harmony, 'slices' | 'chords'>,
  beats: readonly RecordedBeat[],
): readonly RecordedSection[] {
  const bars = heardBars(harmony, beats);
  if (bars.length < LEAST_BARS) return [];
  const likeness = (a: number, b: number) =>
    Math.max(0, 1 - CONTRAST * (1 - agreement(bars[a]!, bars[b]!)));
  const parts = onceJoined(repeatedParts(bars.length, likeness), bars);
  const labels = [...new Set(parts.map(({ label }) => label))];
  return parts.map(({ firstBar, bars: count, label }) => ({
    fromSec: bars[firstBar]!.fromSec,
    toSec: bars[firstBar + count - 1]!.toSec,
    label: letterOf(labels.indexOf(label)),
  }));
}

/** A to Z, then A2, B2 and so on. */
function letterOf(place: number): string {
  const round = Math.floor(place / 26);
  return String.fromCharCode(65 + (place % 26)) + (round === 0 ? '' : round + 1);
}

function heardBars(
  harmony: Pick<Harmony, 'slices' | 'chords'>,
  beats: readonly RecordedBeat[],
): HeardBar[] {
  const downbeats = beats.filter(({ positionInBar }) => positionInBar === 0).map(({ sec }) => sec);
  const lastBeat = beats.at(-1);
  if (!lastBeat || lastBeat.positionInBar === 0 || downbeats.length === 0) {
    return downbeats.slice(1).map((toSec, i) => heardBar(harmony, downbeats[i]!, toSec));
  }
  const beatSec = lastBeat.sec - (beats.at(-2)?.sec ?? lastBeat.sec);
  const ends = [...downbeats.slice(1), lastBeat.sec + beatSec];
  return downbeats.map((fromSec, i) => heardBar(harmony, fromSec, ends[i]!));
}

function heardBar(
  { slices, chords }: Pick<Harmony, 'slices' | 'chords'>,
  fromSec: Seconds,
  toSec: Seconds,
): HeardBar {
  const notes = new Float64Array(BAR_PARTS * 24);
  const partSec = (toSec - fromSec) / BAR_PARTS;
  let level = 0;
  for (const slice of slicesWithin(slices, fromSec, toSec))
    for (let part = 0; part < BAR_PARTS; part++) {
      const from = fromSec + part * partSec;
      const within = Math.min(slice.toSec, from + partSec) - Math.max(slice.fromSec, from);
      if (within <= 0) continue;
      const share = within / partSec;
      level += (share * slice.level) / BAR_PARTS;
      for (let i = 0; i < 12; i++) {
        notes[part * 24 + i]! += share * (slice.chroma[i]! - 1 / 12);
        notes[part * 24 + 12 + i]! += BASS_WEIGHT * share * (slice.bass[i]! - 1 / 12);
      }
    }
  const heard = Array.from({ length: BAR_PARTS }, (_, part) =>
    triadAt(chords, fromSec + (part + 0.5) * partSec),
  );
  return { fromSec, toSec, notes, chords: heard, level };
}

function slicesWithin(
  slices: readonly ChordSlice[],
  fromSec: Seconds,
  toSec: Seconds,
): readonly ChordSlice[] {
  const first = slices.findIndex((slice) => slice.toSec > fromSec);
  const end = slices.findIndex((slice) => slice.fromSec >= toSec);
  return first < 0 ? [] : slices.slice(first, end < 0 ? undefined : end);
}

/** Root and third of the chord at a time, by sound. */
function triadAt(chords: readonly RecordedChord[], sec: Seconds): string | undefined {
  const found = chords.find(({ fromSec, toSec }) => fromSec <= sec && sec < toSec)?.chord;
  if (!found || found === 'no-chord') return undefined;
  const third = chordTones(found).find(({ degree }) => degree === 3)?.semitones;
  return `${chromaOf(found.root)} ${third ?? ''}`;
}

/** How much two bars have in common, by chords and notes: 1 all, 0 nothing. */
function agreement(a: HeardBar, b: HeardBar): number {
  const alike = a.chords.filter((chord, i) => chord === b.chords[i]).length / BAR_PARTS;
  return CHORDS_SHARE * alike + (1 - CHORDS_SHARE) * cosine(a.notes, b.notes);
}

/** The cosine of the angle between two bars' notes: 1 the same, 0 nothing in common; two bars of nothing are the same. */
function cosine(a: Float64Array, b: Float64Array): number {
  let both = 0;
  let [lengthA, lengthB] = [0, 0];
  for (let i = 0; i < a.length; i++) {
    both += a[i]! * b[i]!;
    lengthA += a[i]! ** 2;
    lengthB += b[i]! ** 2;
  }
  if (lengthA === 0 && lengthB === 0) return 1;
  return lengthA === 0 || lengthB === 0 ? 0 : both / Math.sqrt(lengthA * lengthB);
}

/** The parts with neighbours that never return made one, where they are about as loud or one of them is a single bar. */
function onceJoined(parts: readonly RepeatedPart[], bars: readonly HeardBar[]): RepeatedPart[] {
  const isOnce = ({ label }: RepeatedPart) =>
    parts.filter((part) => part.label === label).length === 1;
  const joined: RepeatedPart[] = [];
  for (const part of parts) {
    const last = joined.at(-1);
    const isOne = last && isOnce(part) && isOnce(last) && isAsLoud(last, part, bars);
    if (last && (isOne || (isOnce(part) && part.bars === 1)))
      joined[joined.length - 1] = { ...last, bars: last.bars + part.bars };
    else joined.push(part);
  }
  return joined;
}

function isAsLoud(a: RepeatedPart, b: RepeatedPart, bars: readonly HeardBar[]): boolean {
  const levelOf = ({ firstBar, bars: count }: RepeatedPart) =>
    bars.slice(firstBar, firstBar + count).reduce((sum, { level }) => sum + level / count, 0);
  const [louder, softer] = [levelOf(a), levelOf(b)].toSorted((x, y) => y - x);
  return louder! <= LEVEL_CHANGE * softer!;
}
