import * as v from 'valibot';
import type { Project } from '../core/project.ts';
import { err, ok, type Result } from '../core/result.ts';
import { migrated, PROJECT_VERSION } from './migrations.ts';
import type { ProjectFault } from './projectFault.ts';
import { projectFaults } from './projectFaults.ts';
import { projectSchema } from './projectSchema.ts';
import { schemaIssue } from './schemaIssue.ts';

/** What a project file says it is. */
export const PROJECT_FORMAT = 'vampwright-project';

/**
 * Why a text is no project.
 * - `not-json`: it cannot be read at all; `reason` is the reader's own, with the place where it has one
 * - `not-a-project`: it is JSON, but does not say that it is a project
 * - `no-version`: its version is no whole number from 1 on; `found` is empty where there is none
 * - `newer-version`: a later release wrote it; `known` is the last version that is understood here
 * - `wrong-value`: at `path` (`song.tempo.bpm`) stands what the schema does not allow
 * - `broken`: every value is allowed, but they do not fit together: see `ProjectFault`
 */
export type ProjectFileError =
  | { readonly kind: 'not-json'; readonly reason: string }
  | { readonly kind: 'not-a-project' }
  | { readonly kind: 'no-version'; readonly found: string }
  | { readonly kind: 'newer-version'; readonly version: number; readonly known: number }
  | {
      readonly kind: 'wrong-value';
      readonly path: string;
      readonly expected: string;
      readonly found: string;
    }
  | { readonly kind: 'broken'; readonly faults: readonly ProjectFault[] };

const envelopeSchema = v.object({
  format: v.literal(PROJECT_FORMAT),
  version: v.exactOptional(v.unknown()),
  project: v.exactOptional(v.unknown()),
});

/** The whole project as text (JSON); `decodeProject` gives an equal project back. */
export function encodeProject(project: Project): string {
  return JSON.stringify({ format: PROJECT_FORMAT, version: PROJECT_VERSION, project }, null, 1);
}

function parsedJson(text: string): Result<unknown, ProjectFileError> {
  try {
    return ok(JSON.parse(text));
  } catch (error) {
    return err({
      kind: 'not-json',
      reason: error instanceof Error ? error.message : String(error),
    });
  }
}

function checkedProject(data: unknown): Result<Project, ProjectFileError> {
  const read = v.safeParse(projectSchema, data);
  if (!read.success) return err({ kind: 'wrong-value', ...schemaIssue(read.issues[0]) });
  const faults = projectFaults(read.output);
  return faults.length === 0 ? ok(read.output) : err({ kind: 'broken', faults });
}

/**
 * Reads a project file of this or any earlier version: brought into the present form, every value
 * checked, then whether all of them fit together. Nothing is dropped or mended on the way: a
 * property that no version knows is an error too.
 */
export function decodeProject(text: string): Result<Project, ProjectFileError> {
  const json = parsedJson(text);
  if (!json.ok) return json;
  const envelope = v.safeParse(envelopeSchema, json.value);
  if (!envelope.success) return err({ kind: 'not-a-project' });
  const { version, project } = envelope.output;
  if (typeof version !== 'number' || !Number.isSafeInteger(version) || version < 1)
    return err({ kind: 'no-version', found: version === undefined ? '' : JSON.stringify(version) });
  if (version > PROJECT_VERSION)
    return err({ kind: 'newer-version', version, known: PROJECT_VERSION });
  return checkedProject(migrated(project, version));
}
