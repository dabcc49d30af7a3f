import type { Key } from '../core/harmony/key.ts';
import type { PatternId } from '../core/ids.ts';
import type { PracticeSettings } from '../core/practice/practiceSettings.ts';
import type { Project } from '../core/project.ts';
import type { Hit, Pattern } from '../core/rhythm/pattern.ts';
import { STRAIGHT } from '../core/rhythm/swing.ts';
import type { BassTone, VoiceTone } from '../core/rhythm/tones.ts';
import { parseChartBars } from '../core/song/chart.ts';
import type { FormEntry, Section, SectionKind, Song } from '../core/song/song.ts';
import type { Meter } from '../core/time/meter.ts';
import { TICKS_PER_QUARTER, TICKS_PER_WHOLE, type Ticks } from '../core/time/ticks.ts';
import { DEFAULT_VOICING } from '../core/voicing/voicing.ts';
import { NEW_SECTIONS } from './edits/form.ts';
import { settledPattern } from './edits/settle.ts';

const KEY: Key = { tonic: { letter: 'D', alteration: 0 }, mode: 'major' };
const METER: Meter = { beats: 4, unit: 4, groups: [2, 2] };
const SONG_BPM = 84;

/** What a section of the song is played with, by the shelf's name for it; the first that the shelf has. */
const MOODS = {
  calm: ['root-and-quarters'],
  flowing: ['ballad-eighths'],
  moving: ['soul-backbeat', 'rock-eighths'],
  driving: ['rock-eighths', 'soul-backbeat'],
} as const satisfies Readonly<Record<string, readonly string[]>>;

type Mood = keyof typeof MOODS;

const CHARTS: readonly (readonly [kind: SectionKind, mood: Mood, chart: string])[] = [
  ['intro', 'calm', '| D | Gmaj7 | D/F♯ | A7sus4 |'],
  [
    'verse',
    'flowing',
    '| D | Bm7 | Gmaj7 | Em7 / A / | D | F♯m7 | Gmaj7 / Gm6 / | A7sus4 / A7 / |',
  ],
  ['pre-chorus', 'flowing', '| Em7 | F♯m7 | G | A7sus4 |'],
  ['chorus', 'moving', '| D | G/D | Bm7 | A | G | D/F♯ | Em7 / A7 / | D |'],
  ['bridge', 'calm', '| Bm7 | E7 | G | D/F♯ | B♭maj7 | C | A7sus4 | A7 |'],
  ['outro', 'calm', '| G | Gm6 | D | % |'],
];

/** The order of playing; the last chorus drives harder than the others. */
const FORM: readonly (readonly [kind: SectionKind, mood?: Mood])[] = [
  ['intro'],
  ['verse'],
  ['pre-chorus'],
  ['chorus'],
  ['verse'],
  ['pre-chorus'],
  ['chorus'],
  ['bridge'],
  ['chorus', 'driving'],
  ['outro'],
];

function plainHit<Tone extends BassTone | VoiceTone>(
  at: Ticks,
  length: Ticks,
  tone: Tone,
): Hit<Tone> {
  return { at, length, play: [tone], touch: 'plain', held: true };
}

/** The plainest there is, for a shelf that has nothing to offer: the root, and the chord on every beat. */
const PLAIN_PATTERN: Pattern = {
  id: 'root-and-quarters',
  name: 'Root and quarters',
  meter: METER,
  bars: 1,
  divisions: [2, 2, 2, 2],
  swing: STRAIGHT,
  sources: [],
  left: [plainHit(0, TICKS_PER_WHOLE, 'root')],
  right: [0, 1, 2, 3].map((beat) => plainHit(beat * TICKS_PER_QUARTER, TICKS_PER_QUARTER, 'all')),
};

function patternOf(mood: Mood, shelf: readonly Pattern[]): Pattern {
  const found = MOODS[mood]
    .map((id) => shelf.find((pattern) => pattern.id === id))
    .find((pattern) => pattern !== undefined);
  return found ?? PLAIN_PATTERN;
}

function sectionOf(kind: SectionKind, chart: string, patternId: PatternId): Section {
  const read = parseChartBars(chart, METER);
  if (!read.ok) throw new Error(`the ${kind} cannot be read: ${JSON.stringify(read.error)}`);
  return { id: kind, ...NEW_SECTIONS[kind], kind, meter: METER, ...read.value, patternId };
}

function practiceOf(song: Song, patternId: PatternId): PracticeSettings {
  return {
    click: { on: true, beats: 'all', level: 0.5, countInBars: 1 },
    hands: 'both',
    band: true,
    drill: {
      chord: { root: KEY.tonic, quality: 'major', tensions: [] },
      patternId,
      ladder: {
        startBpm: 60,
        goalBpm: song.tempo.bpm,
        step: { kind: 'bpm', bpm: 4 },
        passesPerRung: 2,
        climb: 'always',
      },
      barsPerPass: 4,
      countInAt: 'start',
    },
  };
}

/**
 * The song that lies open at the first start, our own: in D, 64 bars of 4/4 at 84, about three
 * minutes, with other patterns in verse, chorus, bridge and last chorus. They are taken from
 * `shelf` by their ids; where it has none of those wanted, a plain one stands in.
 */
export function firstProject(shelf: readonly Pattern[]): Project {
  const idOf = (mood: Mood) => patternOf(mood, shelf).id;
  const moods = Object.keys(MOODS) as Mood[];
  const song: Song = {
    title: 'Lamps Along the Quay',
    key: KEY,
    tempo: { bpm: SONG_BPM, beatTicks: TICKS_PER_QUARTER },
    sections: CHARTS.map(([kind, mood, chart]) => sectionOf(kind, chart, idOf(mood))),
    form: FORM.map(
      ([kind, mood], i): FormEntry => ({
        id: `entry-${i + 1}`,
        sectionId: kind,
        ...(mood ? { patternId: idOf(mood) } : {}),
      }),
    ),
    notes: 'Keep the verses low; the last chorus may drive.',
  };
  return {
    id: 'song-1',
    song,
    patterns: [...new Set(moods.map((mood) => patternOf(mood, shelf)))].map(settledPattern),
    voicing: DEFAULT_VOICING,
    practice: practiceOf(song, idOf('moving')),
  };
}
