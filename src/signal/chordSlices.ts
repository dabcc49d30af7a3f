import type { HeardSlice, SliceStart } from '../core/harmony/chordPresence.ts';
import type { Seconds } from '../core/time/ticks.ts';
import { type ChromaSpan, chromaSpans } from './chroma.ts';
import type { MonoRecording, RecordedBeat } from './heardRecording.ts';
import { type PitchSpectrum, pitchSpectrum } from './pitchSpectrum.ts';
import { LISTENING_RATE_HZ, resample } from './resample.ts';

/** Where a slice of music begins in which one chord sounds at most. */
type Edge = { readonly sec: Seconds; readonly starts: SliceStart };

/** Beats are divided into parts of about this length, since the beats that were found may be half of the real ones. */
const PART_SEC: Seconds = 0.4;

/** Without beats, chords are looked for in parts of this length. */
const LOOSE_SEC: Seconds = 0.25;

/** What is this much softer than the loud places of a recording is silence (−50 dB). */
const SILENT_SHARE = 0.003;

/** What has a mean magnitude under this is silence whatever comes before and after (about −100 dB). */
const SILENT_LEVEL = 1e-7;

/** A slice of the recording, as it is heard; see `HeardSlice`. */
export type ChordSlice = HeardSlice & {
  readonly fromSec: Seconds;
  readonly toSec: Seconds;
  /** Mean magnitude over all pitches. */
  readonly level: number;
};

function startOf({ positionInBar }: RecordedBeat, beatsPerBar: number): SliceStart {
  if (positionInBar === 0) return 'bar';
  return 2 * positionInBar === beatsPerBar ? 'middle' : 'beat';
}

/** Places between two times, as far apart as `PART_SEC` at the most or a little more; neither end is among them. */
function between(fromSec: Seconds, toSec: Seconds, starts: SliceStart): Edge[] {
  const parts = Math.max(1, Math.round((toSec - fromSec) / PART_SEC));
  return Array.from({ length: parts - 1 }, (_, i) => ({
    sec: fromSec + ((toSec - fromSec) * (i + 1)) / parts,
    starts,
  }));
}

function loose(fromSec: Seconds, toSec: Seconds): Edge[] {
  const parts = Math.max(1, Math.round((toSec - fromSec) / LOOSE_SEC));
  return Array.from({ length: parts }, (_, i) => ({
    sec: fromSec + ((toSec - fromSec) * i) / parts,
    starts: 'beat',
  }));
}

/** Where slices begin: from 0 on, ascending; the last one ends at `endSec`. */
function edgesOf(beats: readonly RecordedBeat[], endSec: Seconds): Edge[] {
  const heard = beats.filter(({ sec }) => sec > 0 && sec < endSec);
  const first = heard[0];
  const last = heard.at(-1);
  if (!first || !last) return loose(0, endSec);
  const beatsPerBar = 1 + heard.reduce((most, beat) => Math.max(most, beat.positionInBar), 0);
  const onBeats = heard.flatMap((beat, i) => {
    const next = heard[i + 1];
    const own: Edge = { sec: beat.sec, starts: startOf(beat, beatsPerBar) };
    return next ? [own, ...between(beat.sec, next.sec, 'between')] : [own];
  });
  return [
    { sec: 0, starts: 'beat' },
    ...between(0, first.sec, 'beat'),
    ...onBeats,
    ...between(last.sec, endSec, 'beat'),
  ];
}

function sharesOf(chroma: Float32Array): Float32Array {
  const sum = chroma.reduce((total, x) => total + x, 0);
  return chroma.map((x) => (sum === 0 ? 1 / 12 : x / sum));
}

/** The level that a tenth of the slices exceed. */
function loudLevel(spans: readonly ChromaSpan[]): number {
  return (
    spans.map(({ level }) => level).toSorted((a, b) => b - a)[Math.floor(spans.length / 10)] ?? 0
  );
}

/**
 * A recording in slices from its beginning to `endSec`: on beats and between them where beats were found,
 * otherwise every quarter of a second; each with the shares of the notes that sound in it.
 */
export function chordSlices(
  spectrum: PitchSpectrum,
  beats: readonly RecordedBeat[],
  endSec: Seconds,
): ChordSlice[] {
  if (spectrum.frameCount === 0) return [];
  const edges = edgesOf(beats, endSec);
  const spans = chromaSpans(spectrum, [...edges.map(({ sec }) => sec), endSec]);
  const loud = loudLevel(spans);
  return spans.map(({ fromSec, toSec, chroma, bass, level }, i) => ({
    fromSec,
    toSec,
    durationSec: toSec - fromSec,
    level,
    starts: edges[i]!.starts,
    isSilent: level <= Math.max(SILENT_LEVEL, SILENT_SHARE * loud),
    chroma: sharesOf(chroma),
    bass: sharesOf(bass),
  }));
}

/** A recording of any rate in slices, and how many cents A lies over 440 Hz in it; see `chordSlices`. */
export function slicesOf(
  recording: MonoRecording,
  beats: readonly RecordedBeat[],
): { readonly slices: readonly ChordSlice[]; readonly tuningCents: number } {
  const samples = resample(recording);
  const spectrum = pitchSpectrum({ samples, sampleRateHz: LISTENING_RATE_HZ });
  const endSec = samples.length / LISTENING_RATE_HZ;
  return { slices: chordSlices(spectrum, beats, endSec), tuningCents: spectrum.tuningCents };
}
