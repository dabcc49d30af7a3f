import type { Key } from '../../core/harmony/key.ts';
import type { IntervalName } from '../../core/harmony/pitch.ts';
import { transposeSong } from '../../core/harmony/transpose.ts';
import { playedChart } from '../../core/song/form.ts';
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

/**
 * Moves the whole song by an interval or into the key on another tonic: key, chords, other endings,
 * pinned hands. See `transposeSong`.
 */
export function transposeTo(to: IntervalName | Key): Edit {
  return inSong((song) => withParts(song, transposeSong(song, to)));
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
  const entry = song.form[0];
  const section = song.sections.find(({ id }) => id === entry?.sectionId);
  if (!section) return song;
  const first = playedChart(section, entry?.ending);
  const meter = first.barMeters.find((other) => other.bar === 0)?.meter ?? first.meter;
  const beatTicks = tempoBeatTicks(meter);
  const { tempo } = song;
  if (tempo.beatTicks === beatTicks) return song;
  const bpm = brought((tempo.bpm * tempo.beatTicks) / beatTicks, BPM_RANGE, tempo.bpm);
  return withParts(song, { tempo: { bpm, beatTicks } });
}

/** A change of form or meter, after which the tempo counts the beat of the meter the song starts in. */
export function inForm(change: (song: Song) => Song): Edit {
  return inSong((song) => {
    const changed = change(song);
    return changed === song ? song : countedInFirstMeter(changed);
  });
}
