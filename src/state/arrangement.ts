import type { Semitones } from '../core/harmony/pitch.ts';
import { intervalBySemitones, transposeSong } from '../core/harmony/transpose.ts';
import type { Project } from '../core/project.ts';
import type { Level } from '../core/rhythm/levels.ts';
import { thinnedPattern } from '../core/rhythm/thinnedPattern.ts';
import { tempoBeatTicks } from '../core/time/meter.ts';
import { type Selector, selector } from './selectors.ts';

/**
 * How the song is played this time, while it stays written as it is: so many semitones higher
 * (lower, where negative), and of each pattern what a level leaves; all of it without.
 */
export type Arrangement = { readonly semitones: Semitones; readonly level?: Level };

/** The song as it is written. */
export const AS_WRITTEN: Arrangement = { semitones: 0 };

/** How far up and down a song can be played, in semitones: every key there is, and an octave. */
export const PLAYED_SEMITONES = { lowest: -12, highest: 12 } as const;

/** Makes the arranged project anew only where its part of the project or the arrangement has changed. */
function arrangedBy({ semitones, level }: Arrangement): Selector<Project> {
  const song = selector(
    (project) => [project.song],
    ({ song: written }) =>
      semitones === 0
        ? written
        : transposeSong(written, intervalBySemitones(written.key, semitones)),
  );
  // At the song's own tempo, so that a part does not change under the hands with the speed.
  const patterns = selector(
    (project) => [project.patterns, project.song.tempo],
    ({ patterns: written, song: { tempo } }) =>
      level === undefined
        ? written
        : written.map((pattern) =>
            thinnedPattern(
              pattern,
              level,
              (tempo.bpm * tempo.beatTicks) / tempoBeatTicks(pattern.meter),
            ),
          ),
  );
  return selector(
    (project) => [project],
    (project) => ({ ...project, song: song(project), patterns: patterns(project) }),
  );
}

let latest: { readonly name: string; readonly arrange: Selector<Project> } | undefined;

/**
 * The project with its song in another key and its patterns at a level, hands that are fixed moved
 * along. As it is written it is the project itself; else the very same object until the project or
 * the arrangement changes.
 */
export function arrangedProject(project: Project, arrangement: Arrangement): Project {
  const { semitones, level } = arrangement;
  if (semitones === 0 && level === undefined) return project;
  const name = `${semitones} ${level}`;
  if (latest?.name !== name) latest = { name, arrange: arrangedBy(arrangement) };
  return latest.arrange(project);
}
