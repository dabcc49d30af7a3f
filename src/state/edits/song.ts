import type { Key } from '../../core/harmony/key.ts';
import type { Song } from '../../core/song/song.ts';
import { tempoBeatTicks } from '../../core/time/meter.ts';
import { BPM_RANGE, type Bpm } from '../../core/time/tempoMap.ts';
import { brought, type Edit, inSong, withParts } from './edit.ts';

export function setTitle(title: string): Edit {
  return inSong((song) => withParts(song, { title }));
}

/** Names another key; the chords stay as they are. */
export function setKey(key: Key): Edit {
  return inSong((song) => withParts(song, { key }));
}

/** The song's tempo in felt beats a minute, brought into `BPM_RANGE`. */
export function setTempo(bpm: Bpm): Edit {
  return inSong((song) =>
    withParts(song, { tempo: { ...song.tempo, bpm: brought(bpm, BPM_RANGE, song.tempo.bpm) } }),
  );
}

/** The player's own remarks on the song. */
export function setNotes(notes: string): Edit {
  return inSong((song) => withParts(song, { notes }));
}

/**
 * The song with its tempo counted in the felt beat of the meter it starts in: after a change of the
 * form or of a meter the note values sound as fast as before, so a quarter at 120 becomes a dotted
 * quarter at 80. The tempo is kept within `BPM_RANGE`. A song that plays nothing keeps its beat.
 */
export function countedInFirstMeter(song: Song): Song {
  const first = song.sections.find((section) => section.id === song.form[0]?.sectionId);
  if (!first) return song;
  const meter = first.barMeters.find((other) => other.bar === 0)?.meter ?? first.meter;
  const beatTicks = tempoBeatTicks(meter);
  const { tempo } = song;
  if (tempo.beatTicks === beatTicks) return song;
  const bpm = brought((tempo.bpm * tempo.beatTicks) / beatTicks, BPM_RANGE, tempo.bpm);
  return withParts(song, { tempo: { bpm, beatTicks } });
}
