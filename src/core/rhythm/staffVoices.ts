import type { Chord } from '../harmony/chord.ts';
import type { KeyNumber, Pitch } from '../harmony/pitch.ts';
import { chordAt, type Timeline } from '../song/timeline.ts';
import type { Ticks } from '../time/ticks.ts';
import type { HandName } from '../voicing/voicing.ts';
import type { Note } from './note.ts';
import { TOUCH_VELOCITY } from './realise.ts';
import type { Articulation } from './sheet.ts';
import { isOwnNote, spelledPitch } from './spelling.ts';

/** The notes of a hand that are struck together, low to high, as one stem carries them. */
export type Stem = {
  readonly startTick: Ticks;
  readonly endTick: Ticks;
  readonly keys: readonly KeyNumber[];
  readonly pitches: readonly Pitch[];
  readonly articulations: readonly Articulation[];
};

/** The stems of one hand in order of time; each as long as its longest note is written. */
export function stemsOf(notes: readonly Note[], hand: HandName, timeline: Timeline): Stem[] {
  const starts = new Map<Ticks, Note[]>();
  for (const note of notes)
    if (note.part === hand)
      starts.set(note.startTick, [...(starts.get(note.startTick) ?? []), note]);
  const stems: Stem[] = [];
  // From the last to the first, since a leading note is spelled by what it leads into.
  for (const [startTick, struck] of [...starts].toSorted(([a], [b]) => b - a)) {
    const endTick = startTick + Math.max(...struck.map((n) => n.writtenTicks ?? n.durationTicks));
    const keys = struck.map((note) => note.keyNumber).toSorted((a, b) => a - b);
    const chord = chordOfKeys(keys, startTick, endTick, timeline);
    const next = stems[0]?.pitches;
    const leadsInto = next?.length === 1 ? next[0] : undefined;
    const pitches = keys.map((key) => spelledPitch(key, chord, leadsInto));
    stems.unshift({
      startTick,
      endTick,
      keys,
      pitches,
      articulations: articulationsOf(struck, hand),
    });
  }
  return stems;
}

/** The chord that keys belong to: the one at their start, or where they anticipate the one they lead into. */
function chordOfKeys(
  keys: readonly KeyNumber[],
  startTick: Ticks,
  endTick: Ticks,
  timeline: Timeline,
): Chord | undefined {
  const chords = [startTick, endTick].flatMap((tick) => {
    const chord = chordAt(timeline, tick)?.chord;
    return chord && chord !== 'no-chord' ? [chord] : [];
  });
  const foreign = (chord: Chord) => keys.filter((key) => !isOwnNote(key, chord)).length;
  return chords.toSorted((a, b) => foreign(a) - foreign(b))[0];
}

/** Short notes are staccato; as loud as an accent is an accent, as soft as a ghost a ghost. */
function articulationsOf(struck: readonly Note[], hand: HandName): Articulation[] {
  const { ghost, accent } = TOUCH_VELOCITY[hand];
  const loudest = Math.max(...struck.map((note) => note.velocity));
  return [
    ...(struck.some((note) => note.writtenTicks !== undefined) ? (['staccato'] as const) : []),
    ...(loudest >= accent ? (['accent'] as const) : []),
    ...(loudest <= ghost ? (['ghost'] as const) : []),
  ];
}

/**
 * The stems of one staff as one or two voices without overlaps. A stem that is held to the end of
 * the next one or longer goes on under it, in a voice of its own; any other ends where the next
 * begins. The second voice is empty where one is enough.
 */
export function staffVoices(stems: readonly Stem[]): readonly [Stem[], Stem[]] {
  const voices: readonly [Stem[], Stem[]] = [[], []];
  for (const stem of stems) {
    const [main, other] = voices;
    const isHeldUnder = (voice: Stem[]) => (voice.at(-1)?.endTick ?? 0) >= stem.endTick;
    const isFree = (voice: Stem[]) => (voice.at(-1)?.endTick ?? 0) <= stem.startTick;
    const voice = !isFree(main) && isHeldUnder(main) ? other : main;
    shorten(voice, stem.startTick);
    if (voice === main && !isHeldUnder(other)) shorten(other, stem.startTick);
    voice.push(stem);
  }
  return voices;
}

/** Ends a voice's last stem where the next one begins. */
function shorten(voice: Stem[], at: Ticks): void {
  const last = voice.at(-1);
  if (last && last.endTick > at) voice[voice.length - 1] = { ...last, endTick: at };
}
