import type { KeyNumber } from '../harmony/pitch.ts';
import { unreachable } from '../result.ts';
import { barTicks, beatStarts } from '../time/meter.ts';
import type { Ticks } from '../time/ticks.ts';
import { type Attack, attacksOf, CHORD_GAP_TICKS } from './attacks.ts';
import type { Band, BandBar, BandNote, BandTrack, TrackRole } from './band.ts';
import { bassDegrees } from './bassDegrees.ts';
import { type DrumPart, drumPartOf } from './drumVoices.ts';
import type { HeardStroke } from './foldPlacing.ts';
import { groupBy } from './groupBy.ts';
import { likelyRoots, type RootSpan } from './likelyRoots.ts';
import type { SourcePart, StrokeTone } from './sources.ts';
import { VOICE_TONES, type VoiceTone } from './tones.ts';

/** A source of the band by identity, with what it is; `id` is what its strokes name. */
export type BandSource = { readonly id: string; readonly name: string; readonly part: SourcePart };

/** Bars of a band by index, both included. */
export type BandBars = { readonly firstBar: number; readonly lastBar: number };

/** What a band plays in some bars, ready for `foldStrokes`: strokes and beats in ticks of the band. */
export type BandStrokes = {
  readonly sources: readonly BandSource[];
  readonly strokes: readonly HeardStroke[];
  readonly beats: readonly Ticks[];
};

type SourceStrokes = { readonly source: BandSource; readonly strokes: readonly HeardStroke[] };

const LOUDEST = 127;

/** From this share of strokes in common on, a track doubles another of its role. */
const DOUBLE_SHARE = 0.9;

/** So much before its first bar a range begins to listen: a sixteenth, and as early as players are at fast tempos. */
const EARLY_TICKS: Ticks = 180;

/** Between these keys the hands of an accompaniment part: G2 and G4. */
const LOWEST_SPLIT: KeyNumber = 43;
const HIGHEST_SPLIT: KeyNumber = 67;

/** From this many notes at once on, an attack is a strum. */
const STRUM_NOTES = 3;

/** How much the notes of a role tell of the root; drums tell nothing. */
const ROOT_WEIGHT: Readonly<Record<TrackRole, number>> = {
  bass: 4,
  picking: 1,
  strumming: 1,
  sung: 0.3,
  accompaniment: 1,
  other: 1,
  drums: 0,
};

const DRUM_NAMES: Readonly<Record<DrumPart, string>> = {
  kick: 'Kick',
  snare: 'Snare',
  'hi-hat': 'Hi-hat',
  tom: 'Toms',
  cymbal: 'Cymbals',
  percussion: 'Percussion',
};

function strokeOf(attack: Attack, source: string, what: readonly StrokeTone[]): HeardStroke {
  return {
    at: Math.min(...attack.map((note) => note.startTick)),
    length: Math.max(...attack.map((note) => note.durationTicks)),
    strength: Math.max(...attack.map((note) => note.velocity)) / LOUDEST,
    what,
    source,
  };
}

/** One source for every drum that the kit's notes feed, whatever track they are on. */
function drumSources(notes: readonly BandNote[]): SourceStrokes[] {
  const byPart = groupBy(notes, (note) => drumPartOf(note.keyNumber));
  return [...byPart].map(([part, own]) => ({
    source: { id: part, name: DRUM_NAMES[part], part },
    strokes: attacksOf(own).map((attack) => strokeOf(attack, part, ['unpitched'])),
  }));
}

/** The lowest note of each attack, by its degree. */
function bassStrokes(
  notes: readonly BandNote[],
  id: string,
  { bars, roots }: Context,
): HeardStroke[] {
  const lowest = attacksOf(notes).map((attack) =>
    attack.reduce((low, note) => (note.keyNumber < low.keyNumber ? note : low)),
  );
  const degrees = bassDegrees(lowest, roots, bars);
  return lowest.map((note, i) => strokeOf([note], id, [degrees[i]!]));
}

const VOICES = VOICE_TONES.filter((tone) => tone.startsWith('voice-'));

/** Voice by height among the bar's keys: the lowest is voice 1; more keys than voices share them evenly. */
function voiceOf(key: number, keys: readonly number[]): VoiceTone {
  const rank = keys.indexOf(key);
  const scaled = keys.length <= VOICES.length ? rank : (rank * VOICES.length) / keys.length;
  return VOICES[Math.floor(scaled)]!;
}

/** Index of the bar that an attack belongs to: one just before a bar line to the bar it opens. */
function barOf(bars: readonly BandBar[], tick: Ticks): number {
  return Math.max(
    0,
    bars.findLastIndex((bar) => bar.startTick <= tick + CHORD_GAP_TICKS),
  );
}

/** Single notes by their height among the notes of the bar, three and more together as a chord. */
function pickedStrokes(
  notes: readonly BandNote[],
  id: string,
  bars: readonly BandBar[],
): HeardStroke[] {
  const byBar = groupBy(attacksOf(notes), (attack) => barOf(bars, attack[0]!.startTick));
  return [...byBar.values()].flatMap((attacks) => {
    const picked = attacks.filter((attack) => attack.length < STRUM_NOTES).flat();
    const keys = [...new Set(picked.map((n) => n.keyNumber))].toSorted((a, b) => a - b);
    const voicesOf = (attack: Attack) => [
      ...new Set(attack.map((note) => voiceOf(note.keyNumber, keys))),
    ];
    return attacks.map((attack) =>
      strokeOf(attack, id, attack.length < STRUM_NOTES ? voicesOf(attack) : ['all']),
    );
  });
}

/** What the pitched tracks are read against. */
type Context = { readonly bars: readonly BandBar[]; readonly roots: readonly RootSpan[] };

function pitchedStrokes(
  notes: readonly BandNote[],
  role: Exclude<TrackRole, 'drums' | 'other' | 'accompaniment'>,
  id: string,
  { bars, roots }: Context,
): HeardStroke[] {
  switch (role) {
    case 'bass':
      return bassStrokes(notes, id, { bars, roots });
    case 'picking':
      return pickedStrokes(notes, id, bars);
    case 'strumming':
      return attacksOf(notes).map((attack) => strokeOf(attack, id, ['all']));
    case 'sung':
      return attacksOf(notes).map((attack) => strokeOf(attack, id, ['top']));
    default:
      return unreachable(role);
  }
}

/**
 * Where the hands of an accompaniment part: its notes below that key are the left hand's, the others the right's. The
 * key under which and from which on the notes differ least among themselves (Otsu 1979), looked for
 * around middle C; a part that lies all on one side stays together.
 */
function handSplit(notes: readonly BandNote[]): KeyNumber {
  const keys = notes.map(({ keyNumber }) => keyNumber);
  const splits = Array.from(
    { length: HIGHEST_SPLIT - LOWEST_SPLIT + 1 },
    (_, i) => LOWEST_SPLIT + i,
  );
  const spread = (own: readonly number[]) => {
    const mean = own.reduce((sum, key) => sum + key, 0) / Math.max(1, own.length);
    return own.reduce((sum, key) => sum + (key - mean) ** 2, 0);
  };
  const costs = splits.map(
    (split) =>
      spread(keys.filter((key) => key < split)) + spread(keys.filter((key) => key >= split)),
  );
  return splits[costs.indexOf(Math.min(...costs))]!;
}

/** A piano's or organ's part: its low part as a bass line, unless a bass plays one, and the rest as chords and single notes. */
function accompanimentSources(
  { name }: Pick<BandTrack, 'name'>,
  notes: readonly BandNote[],
  index: number,
  context: Context,
  hasBass: boolean,
): SourceStrokes[] {
  const split = handSplit(notes);
  const low = notes.filter(({ keyNumber }) => keyNumber < split);
  const high = notes.filter(({ keyNumber }) => keyNumber >= split);
  const isStruck = attacksOf(high).some((attack) => attack.length >= STRUM_NOTES);
  const part = isStruck ? 'strumming' : 'picking';
  const [bassId, id] = [`bass-${index}`, `${part}-${index}`];
  const all: SourceStrokes[] = [
    {
      source: { id: bassId, name, part: 'bass' },
      strokes: bassStrokes(low, bassId, context),
    },
    { source: { id, name, part }, strokes: pickedStrokes(high, id, context.bars) },
  ];
  return all.filter(
    ({ source, strokes }) => strokes.length > 0 && !(source.part === 'bass' && hasBass),
  );
}

/** Whether nearly every stroke has one of the other track's beside it. */
function isDouble(strokes: readonly HeardStroke[], other: readonly HeardStroke[]): boolean {
  const times = new Set(other.map((stroke) => Math.round(stroke.at / CHORD_GAP_TICKS)));
  const shared = strokes.filter((stroke) => {
    const at = Math.round(stroke.at / CHORD_GAP_TICKS);
    return times.has(at - 1) || times.has(at) || times.has(at + 1);
  });
  return shared.length >= DOUBLE_SHARE * strokes.length;
}

function withoutDoubles(sources: readonly SourceStrokes[]): SourceStrokes[] {
  const kept: SourceStrokes[] = [];
  for (const source of sources) {
    const isNew = kept.every(
      (k) => k.source.part !== source.source.part || !isDouble(source.strokes, k.strokes),
    );
    if (isNew) kept.push(source);
  }
  return kept;
}

/** First tick of a bar, or the tick at which the music ends after the last. */
function barStart(band: Band, bar: number): Ticks {
  const last = band.bars.at(-1);
  if (!last) throw new Error('a band has bars');
  return band.bars[bar]?.startTick ?? last.startTick + barTicks(last.meter);
}

/** Where the felt beats of the bars start, and the end of the last bar. */
function beatsOf(band: Band, { firstBar, lastBar }: BandBars): Ticks[] {
  const beats = band.bars
    .slice(firstBar, lastBar + 1)
    .flatMap((bar) => beatStarts(bar.meter).map((at) => bar.startTick + at));
  return [...beats, barStart(band, lastBar + 1)];
}

/**
 * What the band plays in a range of bars of one meter, as strokes to fold: every drum a source of its
 * own; bass notes by their degree against `roots` (where left out, against the most likely root of
 * each half bar); picked notes by their height in the bar; strums and three notes at once as the
 * whole chord; an accompaniment's low part as a bass line, unless the band has one, and the rest of it
 * as strums or picking; the sung line as the top voice. `roles` has one entry for each track; a track in the
 * role `other` feeds no source, and neither does one that doubles another of its role. Strokes that
 * come a sixteenth before the range still belong to its first downbeat.
 */
export function bandStrokes(
  band: Band,
  roles: readonly TrackRole[],
  range: BandBars,
  roots?: readonly RootSpan[],
): BandStrokes {
  const from = barStart(band, range.firstBar);
  const to = barStart(band, range.lastBar + 1);
  const tracks = band.tracks.map((track, index) => ({
    track,
    index,
    role: roles[index] ?? 'other',
    notes: track.notes.filter((n) => n.startTick >= from - EARLY_TICKS && n.startTick < to),
  }));
  const bars = band.bars.slice(range.firstBar, range.lastBar + 1);
  const weighed = tracks
    .filter(({ role }) => ROOT_WEIGHT[role] > 0)
    .flatMap(({ role, notes }) => notes.map((n) => ({ ...n, weight: ROOT_WEIGHT[role] })));
  const context = { bars, roots: roots ?? likelyRoots(weighed, bars, to) };
  const hasBass = tracks.some(({ role, notes }) => role === 'bass' && notes.length > 0);
  const pitched = tracks.flatMap(({ track, index, role, notes }): SourceStrokes[] => {
    if (role === 'drums' || role === 'other' || notes.length === 0) return [];
    if (role === 'accompaniment')
      return accompanimentSources(track, notes, index, context, hasBass);
    const id = `${role}-${index}`;
    const source = { id, name: track.name, part: role };
    return [{ source, strokes: pitchedStrokes(notes, role, id, context) }];
  });
  const drums = drumSources(
    tracks
      .filter(({ role }) => role === 'drums')
      .flatMap(({ notes }) => notes)
      .toSorted((a, b) => a.startTick - b.startTick),
  );
  const all = [...withoutDoubles(pitched), ...drums];
  return {
    sources: all.map(({ source }) => source),
    strokes: all.flatMap(({ strokes }) => strokes),
    beats: beatsOf(band, range),
  };
}
