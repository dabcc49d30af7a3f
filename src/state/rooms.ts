import type { DBSchema } from 'idb';
import { err, ok, type Result } from '../core/result.ts';
import type { ProjectRow } from './lastWords.ts';

export const OPEN_PROJECT = 'open project';

/**
 * The rooms of the database: projects as the text of a project file; takes as rows (`encodeTake`) under
 * the project's id and their own; recordings as they were brought in; which project lies open.
 */
export interface Rooms extends DBSchema {
  projects: { key: string; value: ProjectRow };
  takes: { key: [projectId: string, takeId: string]; value: unknown };
  recordings: { key: string; value: Blob };
  desk: { key: typeof OPEN_PROJECT; value: string };
}

/**
 * Why the browser does not keep something; `reason` is its own word for it.
 * - `unavailable`: it offers no storage here (a private window, storage switched off)
 * - `newer-version`: a later release has used this storage, and this one cannot read it
 * - `full`: no room is left
 * - `failed`: anything else
 */
export type StorageError = {
  readonly kind: 'unavailable' | 'newer-version' | 'full' | 'failed';
  readonly reason: string;
};

export type Kept<T> = Promise<Result<T, StorageError>>;

const ERROR_KINDS: Readonly<Record<string, StorageError['kind']>> = {
  QuotaExceededError: 'full',
  VersionError: 'newer-version',
  SecurityError: 'unavailable',
};

/** What a thrown error of the database means; of one that it does not name, `otherwise`. */
export function storageError(error: unknown, otherwise: StorageError['kind']): StorageError {
  if (!(error instanceof Error)) return { kind: otherwise, reason: String(error) };
  return { kind: ERROR_KINDS[error.name] ?? otherwise, reason: `${error.name}: ${error.message}` };
}

/** What `act` gives, its exceptions as errors. */
export async function kept<T>(act: () => Promise<T>): Kept<T> {
  try {
    return ok(await act());
  } catch (error) {
    return err(storageError(error, 'failed'));
  }
}
