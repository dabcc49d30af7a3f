import type { ChordQuality } from '../harmony/chord.ts';
import { QUALITY_INTERVALS } from '../harmony/chord.ts';
import { type Semitones, semitonesOf } from '../harmony/pitch.ts';
import type { SoundingChord } from '../harmony/soundingChord.ts';
import { beatLengths, beatStarts, groupStarts } from '../time/meter.ts';
import type { Ticks } from '../time/ticks.ts';
import type { Band, TrackRole } from './band.ts';

/**
 * A chord and how long it is heard, in ticks of the band; `undefined` where nothing with a pitch sounds.
 * `alternatives`: what it could be as well, likeliest first.
 */
export type BandChord = {
  readonly startTick: Ticks;
  readonly endTick: Ticks;
  readonly chord: SoundingChord | undefined;
  readonly alternatives: readonly SoundingChord[];
};

/** How much a note of each role tells of the chord; the sung line passes through it, drums say nothing. */
const ROLE_WEIGHT: Readonly<Record<TrackRole, number>> = {
  bass: 2,
  picking: 1,
  strumming: 1,
  accompaniment: 1,
  sung: 0.4,
  other: 1,
  drums: 0,
};

/** Qualities that are told apart, and what the rarer cost beside a triad, as a share of a beat's sound. */
const QUALITIES: readonly { readonly quality: ChordQuality; readonly cost: number }[] = [
  { quality: 'major', cost: 0 },
  { quality: 'minor', cost: 0 },
  { quality: 'dominant-seventh', cost: 0.05 },
  { quality: 'minor-seventh', cost: 0.05 },
  { quality: 'major-seventh', cost: 0.06 },
  { quality: 'suspended-fourth', cost: 0.1 },
  { quality: 'diminished', cost: 0.12 },
  { quality: 'half-diminished-seventh', cost: 0.12 },
  { quality: 'diminished-seventh', cost: 0.14 },
  { quality: 'augmented', cost: 0.15 },
  { quality: 'suspended-second', cost: 0.15 },
  { quality: 'dominant-seventh-suspended-fourth', cost: 0.15 },
  { quality: 'major-sixth', cost: 0.15 },
  { quality: 'minor-sixth', cost: 0.15 },
  { quality: 'minor-major-seventh', cost: 0.2 },
  { quality: 'power', cost: 0.1 },
];

/** What a change of chord costs at a bar line, at a stress group, on any other beat, in beats of sound. */
const CHANGE_COST = { bar: 0.35, group: 0.6, beat: 1 } as const;

/** What speaks for a root that lies in the bass, and against a chord one of whose notes is not heard, as shares of a beat's sound. */
const BASS_IS_ROOT = 0.25;
const MISSING_NOTE = 0.15;

/** Under this share of its beat a note of a chord counts as not heard. */
const HEARD_SHARE = 0.04;

/** Alternatives that are told for each chord. */
const ALTERNATIVES = 3;

type Candidate = {
  readonly root: Semitones;
  readonly quality: ChordQuality;
  readonly notes: readonly Semitones[];
  readonly cost: number;
};

const CANDIDATES: readonly Candidate[] = Array.from({ length: 12 }, (_, root) =>
  QUALITIES.map(({ quality, cost }) => ({
    root,
    quality,
    cost,
    notes: QUALITY_INTERVALS[quality].map((name) => (root + semitonesOf(name)) % 12),
  })),
).flat();

type Beat = {
  readonly startTick: Ticks;
  readonly endTick: Ticks;
  readonly opens: keyof typeof CHANGE_COST;
  /** Sound on each pitch class, adding up to 1; all 0 in silence. */
  readonly sound: readonly number[];
  /** Pitch class of the lowest sound, weighed by how long it is the lowest. */
  readonly bass: Semitones | undefined;
};

type SoundedNote = {
  readonly startTick: Ticks;
  readonly endTick: Ticks;
  readonly keyNumber: number;
  readonly weight: number;
};

function soundedNotes(band: Band, roles: readonly TrackRole[]): SoundedNote[] {
  return band.tracks
    .flatMap((track, index) => {
      const role = track.isDrums ? 'drums' : (roles[index] ?? 'other');
      const weight = ROLE_WEIGHT[role];
      return weight === 0
        ? []
        : track.notes.map(({ startTick, durationTicks, keyNumber, velocity }) => ({
            startTick,
            endTick: startTick + durationTicks,
            keyNumber,
            weight: (weight * velocity) / 127,
          }));
    })
    .toSorted((a, b) => a.startTick - b.startTick);
}

function beatsOf(band: Band, roles: readonly TrackRole[]): Beat[] {
  const notes = soundedNotes(band, roles);
  const frames = band.bars.flatMap(({ startTick, meter }) => {
    const groups = groupStarts(meter);
    const lengths = beatLengths(meter);
    return beatStarts(meter).map((start, i) => ({
      startTick: startTick + start,
      endTick: startTick + start + lengths[i]!,
      opens:
        start === 0
          ? ('bar' as const)
          : groups.includes(start)
            ? ('group' as const)
            : ('beat' as const),
    }));
  });
  let first = 0;
  const longest = notes.reduce(
    (most, { startTick, endTick }) => Math.max(most, endTick - startTick),
    0,
  );
  return frames.map((frame) => {
    while (notes[first] && notes[first]!.startTick + longest <= frame.startTick) first++;
    const sums = Array.from({ length: 12 }, () => 0);
    let lowest: { key: number; bass: Semitones; ticks: number } | undefined;
    for (let i = first; i < notes.length && notes[i]!.startTick < frame.endTick; i++) {
      const { startTick, endTick, keyNumber, weight } = notes[i]!;
      const ticks = Math.min(endTick, frame.endTick) - Math.max(startTick, frame.startTick);
      if (ticks <= 0) continue;
      sums[keyNumber % 12]! += weight * ticks;
      const isHeld = ticks * 4 >= frame.endTick - frame.startTick;
      if (isHeld && (!lowest || keyNumber < lowest.key))
        lowest = { key: keyNumber, bass: keyNumber % 12, ticks };
    }
    const total = sums.reduce((sum, s) => sum + s, 0);
    return { ...frame, sound: sums.map((s) => (total === 0 ? 0 : s / total)), bass: lowest?.bass };
  });
}

/**
 * How well a chord tells a beat's sound: the share on its notes less the share beside them and what of it is missing
 * (template matching after Pardo & Birmingham 2002), with a preference for roots in the bass.
 */
function fitOf({ sound, bass }: Beat, { root, notes, cost }: Candidate): number {
  const on = notes.reduce((sum, note) => sum + sound[note]!, 0);
  const isSilent = sound.every((s) => s === 0);
  if (isSilent) return 0;
  const missing = notes.filter((note) => sound[note]! < HEARD_SHARE).length;
  return on - (1 - on) - MISSING_NOTE * missing - cost + (bass === root ? BASS_IS_ROOT : 0);
}

/** The likeliest candidate of each beat, by index (Viterbi). */
function likeliest(beats: readonly Beat[], fits: readonly (readonly number[])[]): number[] {
  let scores = CANDIDATES.map(() => 0);
  const origins: number[][] = [];
  beats.forEach((beat, b) => {
    const best = scores.indexOf(Math.max(...scores));
    const changed = scores[best]! - CHANGE_COST[beat.opens];
    const from = scores.map((score, i) => (score >= changed ? i : best));
    scores = scores.map((score, i) => Math.max(score, changed) + fits[b]![i]!);
    origins.push(from);
  });
  const path: number[] = [];
  let state = scores.indexOf(Math.max(...scores));
  for (let b = beats.length - 1; b >= 0; b--) {
    path[b] = state;
    state = origins[b]![state]!;
  }
  return path;
}

/** The bass of a chord: what lies lowest when it comes, where that is one of its notes, else the root. */
function bassOf(beats: readonly Beat[], { root, notes }: Candidate): Semitones {
  const counts = new Map<Semitones, number>();
  for (const { bass } of beats)
    if (bass !== undefined) counts.set(bass, (counts.get(bass) ?? 0) + 1);
  const first = beats.find(({ bass }) => bass !== undefined)?.bass;
  if (first === undefined || !notes.includes(first) || counts.has(root)) return root;
  return (counts.get(first) ?? 0) * 2 > beats.length ? first : root;
}

function soundingChord(beats: readonly Beat[], candidate: Candidate): SoundingChord {
  return { root: candidate.root, quality: candidate.quality, bass: bassOf(beats, candidate) };
}

/**
 * The chords of a band beat by beat, from all its pitched tracks in their roles: for each beat the chord that tells most of
 * what sounds, a change costing more on weaker beats, found as the best path over the whole music.
 * Neighbours that are the same are joined; silence carries no chord.
 */
export function bandChords(band: Band, roles: readonly TrackRole[]): BandChord[] {
  const beats = beatsOf(band, roles);
  const fits = beats.map((beat) => CANDIDATES.map((candidate) => fitOf(beat, candidate)));
  const path = likeliest(beats, fits);
  const isSilent = (b: number) => beats[b]!.sound.every((s) => s === 0);
  const spans: { first: number; last: number; state: number; silent: boolean }[] = [];
  beats.forEach((_, b) => {
    const last = spans.at(-1);
    const silent =
      isSilent(b) && !(last && !last.silent && last.last === b - 1 && beats[b]!.opens !== 'bar');
    if (last && last.silent === silent && (silent || last.state === path[b])) last.last = b;
    else spans.push({ first: b, last: b, state: path[b]!, silent });
  });
  return spans.map(({ first, last, state, silent }) => {
    const own = beats.slice(first, last + 1);
    const sum = (i: number) =>
      fits.slice(first, last + 1).reduce((total, fit) => total + fit[i]!, 0);
    const others = CANDIDATES.map((_, i) => i)
      .filter((i) => i !== state)
      .toSorted((a, b) => sum(b) - sum(a))
      .slice(0, ALTERNATIVES);
    return {
      startTick: own[0]!.startTick,
      endTick: own.at(-1)!.endTick,
      chord: silent ? undefined : soundingChord(own, CANDIDATES[state]!),
      alternatives: silent ? [] : others.map((i) => soundingChord(own, CANDIDATES[i]!)),
    };
  });
}
