import type { Ticks } from '../time/ticks.ts';
import type { Note, Part } from './note.ts';

function endOf(note: Note): Ticks {
  return note.startTick + note.durationTicks;
}

/** Notes in the order in which they are played: by start, then from low to high. */
export function sortNotes(notes: readonly Note[]): Note[] {
  return notes.toSorted((a, b) => a.startTick - b.startTick || a.keyNumber - b.keyNumber);
}

/**
 * The notes with no part striking a key that it still holds: the earlier note ends where the later
 * one starts. Of two notes of one part that strike a key at once one is left, as long as the longer
 * and as loud as the louder. Sorted by start, then key number.
 */
export function cutOverlaps(notes: readonly Note[]): Note[] {
  const last = new Map<`${Part} ${number}`, number>();
  const kept: Note[] = [];
  for (const note of sortNotes(notes)) {
    const key = `${note.part} ${note.keyNumber}` as const;
    const index = last.get(key);
    const before = index === undefined ? undefined : kept[index]!;
    if (before?.startTick === note.startTick) {
      kept[index!] = merged(before, note);
      continue;
    }
    if (before && endOf(before) > note.startTick)
      kept[index!] = { ...before, durationTicks: note.startTick - before.startTick };
    last.set(key, kept.push(note) - 1);
  }
  return kept;
}

function merged(a: Note, b: Note): Note {
  return {
    ...a,
    durationTicks: Math.max(a.durationTicks, b.durationTicks),
    velocity: Math.max(a.velocity, b.velocity),
  };
}

/** The notes with both their ends moved (swung), each at least one tick long, in playing order. */
export function moveNotes(notes: readonly Note[], moved: (tick: Ticks) => Ticks): Note[] {
  return sortNotes(
    notes.map((note) => {
      const startTick = moved(note.startTick);
      const ticksTo = (end: Ticks) => Math.max(1, moved(end) - startTick);
      return {
        ...note,
        startTick,
        durationTicks: ticksTo(endOf(note)),
        ...(note.writtenTicks === undefined
          ? {}
          : { writtenTicks: ticksTo(note.startTick + note.writtenTicks) }),
      };
    }),
  );
}
