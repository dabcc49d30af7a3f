import type { Project } from '../../core/project.ts';
import type { KeptProject } from '../../state/storage.ts';

/** One song of the list: when it was last open (milliseconds since 1970), or that it lies open now. */
export type SongRow = {
  readonly id: Project['id'];
  readonly title: string;
  readonly lastOpen: 'now' | number;
};

/** The songs of this device, the open one first under its present title, then the others as `kept` has them. */
export function songRows(
  kept: readonly KeptProject[],
  { id, song }: Pick<Project, 'id' | 'song'>,
): SongRow[] {
  const others = kept.filter((one) => one.id !== id);
  return [
    { id, title: song.title, lastOpen: 'now' },
    ...others.map((one) => ({ id: one.id, title: one.title, lastOpen: one.savedAtMs })),
  ];
}

const DAY_AND_TIME = new Intl.DateTimeFormat('en-GB', { dateStyle: 'medium', timeStyle: 'short' });

/** When a song was last open, as a line of the list says it: “open now”, “last open 3 Mar 2026, 14:05”. */
export function lastOpenText(lastOpen: SongRow['lastOpen']): string {
  return lastOpen === 'now' ? 'open now' : `last open ${DAY_AND_TIME.format(lastOpen)}`;
}

/** A title to speak of a song by; one without a title has no letters to show. */
export function shownTitle(title: string): string {
  return title.trim() === '' ? 'Untitled' : title;
}
