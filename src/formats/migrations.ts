/** Brings the data of a project file of version n into the form of version n + 1. */
export type Migration = (project: unknown) => unknown;

/** The steps from version 1 on: the first leads to version 2. */
export const MIGRATIONS: readonly Migration[] = [];

/** The version that is written: one more than there are steps. */
export const PROJECT_VERSION = MIGRATIONS.length + 1;

/** Data of a `version` from 1 to the last, brought into the last version by every step after it. */
export function migrated(
  project: unknown,
  version: number,
  migrations: readonly Migration[] = MIGRATIONS,
): unknown {
  return migrations.slice(version - 1).reduce((data, step) => step(data), project);
}
