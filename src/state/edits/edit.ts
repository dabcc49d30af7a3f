import type { PatternId, SectionId } from '../../core/ids.ts';
import type { Project } from '../../core/project.ts';
import type { Pattern } from '../../core/rhythm/pattern.ts';
import type { Section, Song } from '../../core/song/song.ts';
import { MOST_BARS, playedBars } from '../../core/song/songLength.ts';
import { sameData } from '../sameData.ts';

/**
 * A change of the project. It cannot fail: where it does not apply, or would change nothing, it
 * returns the very project it was given.
 */
export type Edit = (project: Project) => Project;

/** New values for some properties; undefined takes an optional property away. */
export type ProjectParts<T> = {
  readonly [K in keyof T]?: object extends Pick<T, K> ? T[K] | undefined : T[K];
};

/**
 * `whole` with other `parts`. A part that says the same as before stays the very object it was;
 * where all do, `whole` itself is returned.
 */
export function withParts<T extends object>(whole: T, parts: ProjectParts<T>): T {
  const names = (Object.keys(parts) as (keyof T & string)[]).filter(
    (name) => !sameData(whole[name], parts[name]),
  );
  if (names.length === 0) return whole;
  const changed: Partial<T> = { ...whole };
  for (const name of names) {
    const part = parts[name];
    if (part === undefined) delete changed[name];
    else changed[name] = part;
  }
  return changed as T;
}

/** `list` with `change` made to every item (`i` is its place); the very same list where no item changes. */
export function mapped<T>(list: readonly T[], change: (item: T, i: number) => T): readonly T[] {
  const next = list.map((item, i) => change(item, i));
  return next.every((item, i) => item === list[i]) ? list : next;
}

/** A number brought between two bounds; `before` where it is none at all (NaN or infinite). */
export function brought(
  value: number,
  bounds: { readonly lowest: number; readonly highest: number },
  before: number,
): number {
  if (!Number.isFinite(value)) return before;
  return Math.min(Math.max(value, bounds.lowest), bounds.highest);
}

/** A change of the song as an edit of the project; nothing where it would make more bars than a song can have. */
export function inSong(change: (song: Song) => Song): Edit {
  return (project) => {
    const song = withParts(project.song, change(project.song));
    const isLonger = song.form !== project.song.form || song.sections !== project.song.sections;
    return isLonger && playedBars(song) > MOST_BARS ? project : withParts(project, { song });
  };
}

/** A change of one section as an edit; nothing where the song has no such section. */
export function inSection(sectionId: SectionId, change: (section: Section) => Section): Edit {
  return inSong((song) =>
    withParts(song, {
      sections: mapped(song.sections, (section) =>
        section.id === sectionId ? change(section) : section,
      ),
    }),
  );
}

/** A change of one pattern as an edit; nothing where the project has no such pattern. */
export function inPattern(patternId: PatternId, change: (pattern: Pattern) => Pattern): Edit {
  return (project) =>
    withParts(project, {
      patterns: mapped(project.patterns, (pattern) =>
        pattern.id === patternId ? change(pattern) : pattern,
      ),
    });
}
