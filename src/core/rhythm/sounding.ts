import type { KeyNumber } from '../harmony/pitch.ts';
import type { Ticks } from '../time/ticks.ts';
import type { ChordLine } from './chordLine.ts';
import type { Note, Part } from './note.ts';
import type { PatternEvent, PlacedEvent } from './placedEvents.ts';

/** How one part plays its events along the chords. Places are those of a `ChordLine`. */
export type PartPlaying<E> = {
  readonly part: Part;
  /**
   * The keys an event plays with the chord at a place. `nextPlace` is the chord of the part's next
   * event, undefined after the last. Empty where it is silent (N.C.).
   */
  readonly keysOf: (event: E, place: number, nextPlace: number | undefined) => readonly KeyNumber[];
  /** Whether an event takes the chord that starts `ticksToChange` (> 0) after it, at or before its written end. */
  readonly anticipates: (event: E, ticksToChange: Ticks, beatTicks: Ticks) => boolean;
  /** How long an event sounds of the ticks until it is let go. */
  readonly soundingTicks: (event: E, ticks: Ticks) => Ticks;
  readonly velocityOf: (event: E) => number;
};

/**
 * The notes of one part, unswung, from its placed events (ascending) along the chords.
 * An event sounds with the chord at its start, or, where it anticipates, with the chord it leads
 * into. When the chord changes while it sounds and its keys change with it, it is struck again with
 * the new chord for what is left, if that is at least the felt beat it falls in; a shorter rest of
 * it is dropped, and so is what would have to be struck after the end of a timeline. An event that
 * anticipates into N.C. keeps its own chord.
 */
export function soundingNotes<E extends PatternEvent>(
  events: readonly PlacedEvent<E>[],
  line: ChordLine,
  playing: PartPlaying<E>,
): Note[] {
  const places = events.map((event) => firstPlace(event, line, playing));
  const again = places[0] === undefined ? undefined : places[0] + line.count;
  const loops = line.spanAt(line.count) !== undefined;
  return events.flatMap((event, i) => {
    const next = places[i + 1] ?? (loops ? again : undefined);
    return places[i]! < 0 ? [] : notesOfEvent(event, places[i]!, next, line, playing);
  });
}

function firstPlace<E extends PatternEvent>(
  { event, startTick }: PlacedEvent<E>,
  line: ChordLine,
  { anticipates }: PartPlaying<E>,
): number {
  const place = line.placeAt(startTick);
  const change = place < 0 ? undefined : line.startOf(place + 1);
  if (change === undefined || change > startTick + event.length) return place;
  const leadsInto = line.spanAt(place + 1)?.chord;
  const takesIt = anticipates(event, change - startTick, line.beatTicksAt(startTick));
  return takesIt && leadsInto !== 'no-chord' ? place + 1 : place;
}

function notesOfEvent<E extends PatternEvent>(
  placed: PlacedEvent<E>,
  firstPlaceOfEvent: number,
  nextPlace: number | undefined,
  line: ChordLine,
  playing: PartPlaying<E>,
): Note[] {
  const { event, startTick, patternTick } = placed;
  const written = placed.endTick - startTick;
  const sounding = playing.soundingTicks(event, written);
  const note = {
    part: playing.part,
    velocity: playing.velocityOf(event),
    patternTick,
    ...(sounding < written ? { writtenTicks: written } : {}),
  };
  return strikes(startTick, startTick + sounding, firstPlaceOfEvent, line, (place) =>
    playing.keysOf(event, place, nextPlace),
  ).flatMap((strike) =>
    strike.keys.map((keyNumber) => ({
      ...note,
      keyNumber,
      startTick: strike.startTick,
      durationTicks: strike.endTick - strike.startTick,
    })),
  );
}

type Strike = {
  readonly startTick: Ticks;
  readonly endTick: Ticks;
  readonly keys: readonly KeyNumber[];
};

function strikes(
  startTick: Ticks,
  endTick: Ticks,
  firstPlaceOfEvent: number,
  line: ChordLine,
  keysAt: (place: number) => readonly KeyNumber[],
): Strike[] {
  const struck: Strike[] = [];
  let from = startTick;
  let keys = keysAt(firstPlaceOfEvent);
  for (let place = firstPlaceOfEvent + 1; ; place++) {
    const change = line.startOf(place);
    if (change === undefined || change >= endTick) break;
    const after = keysAt(place);
    if (sameKeys(keys, after)) continue;
    struck.push({ startTick: from, endTick: change, keys });
    if (place >= line.count || endTick - change < line.beatTicksAt(change)) return struck;
    from = change;
    keys = after;
  }
  return [...struck, { startTick: from, endTick, keys }];
}

function sameKeys(a: readonly KeyNumber[], b: readonly KeyNumber[]): boolean {
  return a.length === b.length && a.every((key, i) => key === b[i]);
}
