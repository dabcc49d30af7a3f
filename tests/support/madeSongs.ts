import type { Key } from '../../src/core/harmony/key.ts';
import type { Note, TimedNote } from '../../src/core/rhythm/note.ts';
import type { Pattern } from '../../src/core/rhythm/pattern.ts';
import { patternForBar } from '../../src/core/rhythm/patternAt.ts';
import { perform } from '../../src/core/rhythm/perform.ts';
import { realise } from '../../src/core/rhythm/realise.ts';
import { realiseBand } from '../../src/core/rhythm/realiseBand.ts';
import type { ShelfPattern } from '../../src/core/rhythm/shelf.ts';
import { parseChart } from '../../src/core/song/chart.ts';
import type { Section } from '../../src/core/song/song.ts';
import { type Timeline, timelineOf } from '../../src/core/song/timeline.ts';
import {
  beatStarts,
  hasGroupedBeats,
  sameMeter,
  tempoBeatTicks,
} from '../../src/core/time/meter.ts';
import { secondsAt, type TempoMap } from '../../src/core/time/tempoMap.ts';
import type { Seconds, Ticks } from '../../src/core/time/ticks.ts';
import { voiceTimeline } from '../../src/core/voicing/voiceTimeline.ts';
import { DEFAULT_VOICING } from '../../src/core/voicing/voicing.ts';
import { type RoomOptions, renderInNode, type SungNote } from './madeSound.ts';
import { keyName, keyNamed, section, song, valueOf } from './music.ts';
import { type Random, seededRandom } from './random.ts';
import { shelf } from './shelf.ts';
import { sungLine } from './sungLine.ts';

/** What kinds of recordings are made: who plays, and through what it is heard. */
export const MADE_KINDS = [
  'piano',
  'piano and band',
  'band',
  'piano, band and song',
  'out of tune',
  'by phone',
] as const;

export type MadeKind = (typeof MADE_KINDS)[number];

/** What is to be heard in a made song, exactly. */
export type MadeTruth = {
  readonly key: Key;
  readonly bpm: number;
  readonly chords: readonly {
    readonly fromSec: Seconds;
    readonly toSec: Seconds;
    readonly chord: Timeline['chords'][number]['chord'];
  }[];
  readonly sections: readonly {
    readonly fromSec: Seconds;
    readonly toSec: Seconds;
    readonly label: string;
  }[];
  readonly beats: readonly { readonly sec: Seconds; readonly positionInBar: number }[];
  readonly durationSec: Seconds;
};

export type MadeSong = {
  readonly kind: MadeKind;
  readonly title: string;
  readonly truth: MadeTruth;
  readonly notes: readonly TimedNote[];
  readonly sung: readonly SungNote[];
  readonly room: RoomOptions;
};

const MAJOR_TONICS = ['C', 'D♭', 'D', 'E♭', 'E', 'F', 'F♯', 'G', 'A♭', 'A', 'B♭', 'B'];
const MINOR_TONICS = ['C', 'C♯', 'D', 'E♭', 'E', 'F', 'F♯', 'G', 'G♯', 'A', 'B♭', 'B'];

/** Four bars each (common practice); a bar of two chords is written with a comma. */
const PHRASES: Readonly<Record<Key['mode'], readonly string[]>> = {
  major: [
    'I V vi IV',
    'vi IV I V',
    'I vi IV V',
    'I IV V I',
    'I I IV V',
    'IV V I vi',
    'I iii IV V7',
    'ii7 V7 Imaj7 Imaj7',
    'ii7 V7 Imaj7 vi7',
    'Imaj7 vi7 ii7 V7',
    'I7 IV7 I7 V7',
    'I V7/vi vi IV',
    'I I7 IV iv',
    'IV I ii V',
    'I ♭VII IV I',
    'vi V IV V',
    'Imaj7 IVmaj7 iii7 vi7',
    'ii V vi IV',
    'I,V vi,iii IV,I ii,V7',
    'I,IV I,V vi,IV I,V',
    'IV,V iii,vi ii,V I',
    'V7sus4 V7 I I',
    'I vi ii7 V7',
    'I V IV IV',
  ],
  minor: [
    'i VI III VII',
    'i iv V7 i',
    'i VII VI V7',
    'i VI iv V',
    'i i iv i',
    'iv i V7 i',
    'i7 iv7 VII7 IIImaj7',
    'iiø7 V7 i i',
    'i v VI VII',
    'VI VII i i',
    'i III VII iv',
    'i,VII VI,V7 i,iv V7',
    'i VII iv i',
    'i VI VII i',
  ],
};

/** Form and bars of each part. */
const FORMS = [
  ['A B A B', 8],
  ['A A B A', 8],
  ['A B A C', 8],
  ['A B A B', 4],
  ['A B C A B', 4],
] as const;

/** Patterns in which the hands play and a band with bass and drums or strings does. */
const SHELF = shelf();

function playable(): ShelfPattern[] {
  return SHELF.filter(
    ({ pattern }) =>
      pattern.right.length > 0 && pattern.sources.some(({ part }) => part === 'bass'),
  );
}

function pick<T>(random: Random, from: readonly T[]): T {
  return from[random.index(from.length)]!;
}

/** A bar's chords share its beats where it has an even number of them; elsewhere the first holds. */
function chartOf(phrases: readonly string[], canHalve: boolean): string {
  const bars = phrases
    .flatMap((phrase) => phrase.split(' '))
    .map((bar) => (canHalve ? bar.replace(',', ' ') : bar.replace(/,.*/, '')));
  return `| ${bars.join(' | ')} |`;
}

/** Players are never quite together. */
const UNEVEN_SEC: Seconds = 0.004;

/** The tempo wanders by about `share` from bar to bar and comes back, as without a click. */
function wanderingTempo(
  bpm: number,
  bars: Timeline['bars'],
  share: number,
  random: Random,
): TempoMap {
  let off = 0;
  return bars.map(({ startTick, meter }) => {
    off = 0.9 * off + share * random.normal();
    return { tick: startTick, tempo: { bpm: bpm * (1 + off), beatTicks: tempoBeatTicks(meter) } };
  });
}

function roomOf(kind: MadeKind, random: Random): RoomOptions {
  const detuneCents = Math.round(80 * random.uniform() - 40);
  if (kind === 'out of tune') return { detuneCents, seed: 1 };
  if (kind === 'by phone')
    return { detuneCents: detuneCents / 4, phone: true, noiseDb: -38, seed: 1 };
  return { seed: 1 };
}

/** Silence before the first beat; recordings do not begin with it. */
const LEAD_SEC: Seconds = 0.6;

type Written = {
  readonly key: Key;
  readonly bpm: number;
  readonly shelved: ShelfPattern;
  readonly form: string;
  readonly sections: readonly { readonly pattern: Pattern; readonly section: Section }[];
};

/** Patterns in the same meter that are played at this tempo. */
function alike({ pattern: { meter } }: ShelfPattern, bpm: number): ShelfPattern[] {
  return playable().filter(
    ({ pattern, tempoRange: [slowest, fastest] }) =>
      sameMeter(pattern.meter, meter) && slowest <= bpm && bpm <= fastest,
  );
}

function phrasesOf(random: Random, mode: Key['mode'], count: number, isFirst: boolean): string[] {
  const phrases = Array.from({ length: count }, () => pick(random, PHRASES[mode]));
  // A song begins at home more often than not.
  if (!isFirst || random.uniform() < 0.5) return phrases;
  const home = PHRASES[mode].filter((phrase) => /^i[^iv]/i.test(phrase));
  return [pick(random, home), ...phrases.slice(1)];
}

function writeSong(random: Random): Written {
  const mode = random.uniform() < 0.6 ? 'major' : 'minor';
  const key = keyNamed(
    mode === 'major' ? pick(random, MAJOR_TONICS) : `${pick(random, MINOR_TONICS)} minor`,
  );
  const shelved = pick(random, playable());
  const { meter } = shelved.pattern;
  const [slowest, fastest] = shelved.tempoRange;
  const usual = Math.round(slowest + (fastest - slowest) * random.uniform());
  const bpm = Math.min(200, Math.max(60, usual));
  const [form, bars] = pick(random, FORMS);
  const beats = beatStarts(meter).length;
  const canHalve = !hasGroupedBeats(meter) && beats % 2 === 0;
  const sections = [...new Set(form.split(' '))].map((letter, i) => {
    const chart = chartOf(phrasesOf(random, mode, bars / 4, i === 0), canHalve);
    const { pattern } = i === 0 ? shelved : pick(random, [shelved, ...alike(shelved, bpm)]);
    const slots = valueOf(parseChart(chart, meter, key));
    return { pattern, section: section(letter, { meter, slots, patternId: pattern.id }) };
  });
  return { key, bpm, shelved, form, sections };
}

/** Who plays: `band` has a guitar where the band of the pattern has none, with what the right hand would play. */
function playedBy(kind: MadeKind, hands: readonly Note[], band: readonly Note[]): readonly Note[] {
  if (kind === 'piano') return hands;
  if (kind !== 'band') return [...hands, ...band];
  const hasStrings = band.some(({ part }) => part === 'strumming' || part === 'picking');
  const guitar = hands
    .filter(({ part }) => part === 'right')
    .map((note) => ({ ...note, part: 'strumming' as const }));
  return hasStrings ? band : [...band, ...guitar];
}

function truthOf(
  { key, bpm }: Written,
  timeline: Timeline,
  atSec: (tick: Ticks) => Seconds,
): MadeTruth {
  const within = ({ startTick, endTick }: { startTick: Ticks; endTick: Ticks }) => ({
    fromSec: atSec(startTick),
    toSec: atSec(endTick),
  });
  return {
    key,
    bpm,
    chords: timeline.chords.map((span) => ({ ...within(span), chord: span.chord })),
    sections: timeline.sections.map((span) => ({ ...within(span), label: span.sectionId })),
    beats: timeline.bars.flatMap((bar) =>
      beatStarts(bar.meter).map((start, positionInBar) => ({
        sec: atSec(bar.startTick + start),
        positionInBar,
      })),
    ),
    durationSec: atSec(timeline.lengthTicks) + 1,
  };
}

/**
 * A song made with the tool's own voicings, patterns and band, whose chords, key, sections and beats are
 * known exactly: another for each seed, the kinds by turns, in all keys, from 60 to 200 beats a minute, half of
 * them wandering in tempo by about a per cent.
 */
export function madeSong(
  seed: number,
  kind: MadeKind = MADE_KINDS[seed % MADE_KINDS.length]!,
): MadeSong {
  const random = seededRandom(7919 * seed + 13);
  const written = writeSong(random);
  const { key, bpm, shelved, form, sections } = written;
  const timeline = timelineOf(
    song(
      sections.map((each) => each.section),
      form,
      { key },
    ),
  );
  const patternAt = patternForBar(
    sections.map(({ pattern }) => pattern),
    timeline,
  );
  const voicings = valueOf(voiceTimeline(timeline, DEFAULT_VOICING));
  const hands = valueOf(realise(timeline, voicings, patternAt));
  const band = realiseBand(timeline, voicings, patternAt);
  const tempo = wanderingTempo(bpm, timeline.bars, random.uniform() < 0.5 ? 0 : 0.006, random);
  const atSec = (tick: Ticks) => LEAD_SEC + secondsAt(tempo, tick);
  const notes = perform(playedBy(kind, hands, band), tempo)
    .map((note) => ({
      ...note,
      startSec: note.startSec + LEAD_SEC + UNEVEN_SEC * random.normal(),
    }))
    .toSorted((a, b) => a.startSec - b.startSec);
  const hasVoice =
    kind === 'piano, band and song' || (kind === 'by phone' && random.uniform() < 0.5);
  const sung = hasVoice
    ? sungLine(timeline, key, random).map(({ startTick, endTick, keyNumber }) => ({
        keyNumber,
        startSec: atSec(startTick),
        durationSec: atSec(endTick) - atSec(startTick),
      }))
    : [];
  return {
    kind,
    title: `${seed} ${kind}: ${keyName(key)}, ${bpm}, ${shelved.pattern.name}`,
    notes,
    sung,
    room: roomOf(kind, random),
    truth: truthOf(written, timeline, atSec),
  };
}

/** The song as it sounds, mono at 22 050 Hz. */
export function soundOf({ notes, sung, room, truth }: MadeSong): Float32Array {
  return renderInNode(notes, sung, truth.durationSec, room);
}
