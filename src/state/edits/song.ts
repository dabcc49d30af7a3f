import { type Chord, writableChord } from '../../core/harmony/chord.ts';
import type { Key } from '../../core/harmony/key.ts';
import { type IntervalName, intervalBetween } from '../../core/harmony/pitch.ts';
import { transposeChord, transposeSong } from '../../core/harmony/transpose.ts';
import type { DrillSettings } from '../../core/practice/practiceSettings.ts';
import type { Passage } from '../../core/practice/stage.ts';
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

/** A passage of a drill with its chords moved; one that goes through the song has none of its own. */
function movedPassage(passage: Passage, interval: IntervalName): Passage {
  if (passage.kind !== 'two-chords') return passage;
  const moved = (chord: Chord) => writableChord(transposeChord(chord, interval));
  return { ...passage, first: moved(passage.first), second: moved(passage.second) };
}

/** The drill with every chord that it names moved along with its song. */
function movedDrill(drill: DrillSettings, interval: IntervalName): DrillSettings {
  const { chord, stages } = drill;
  return {
    ...drill,
    chord: writableChord(transposeChord(chord, interval)),
    ...(stages && {
      stages: stages.map((stage) => ({ ...stage, passage: movedPassage(stage.passage, interval) })),
    }),
  };
}

/**
 * Moves the whole song by an interval or into the key on another tonic: key, chords, other endings,
 * pinned hands, and the chords that the drill holds. See `transposeSong`.
 */
export function transposeTo(to: IntervalName | Key): Edit {
  return (project) => {
    const song = withParts(project.song, transposeSong(project.song, to));
    if (song === project.song) return project;
    const interval = intervalBetween(project.song.key.tonic, song.key.tonic);
    const { practice } = project;
    return {
      ...project,
      song,
      practice: { ...practice, drill: movedDrill(practice.drill, interval) },
    };
  };
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
