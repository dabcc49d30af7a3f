import type { Project } from '../core/project.ts';

/** Patterns and sections by their ids. */
function things({ patterns, song }: Project): Map<string, unknown> {
  return new Map([...patterns, ...song.sections].map((thing) => [thing.id, thing]));
}

/**
 * Watches one project as it is edited. Each call tells which ids of patterns and sections have come since
 * the last one that are not what had them before: an id that was freed is given again to something new.
 * What undo brings back is the very thing that was there, and so is not among them.
 */
export function rebornIds(first: Project): (project: Project) => string[] {
  let before = things(first);
  const seen = new Map(before);
  return (project) => {
    const now = things(project);
    const reborn = [...now.keys()].filter((id) => !before.has(id) && seen.get(id) !== now.get(id));
    for (const [id, thing] of now) seen.set(id, thing);
    before = now;
    return reborn;
  };
}
