import type { FormEntryId, PatternId, SectionId } from '../core/ids.ts';
import type { Project } from '../core/project.ts';

/** `prefix-n` with the smallest n from 1 that is not among `taken`. */
export function newId(prefix: string, taken: Iterable<string>): string {
  const ids = new Set(taken);
  let n = 1;
  while (ids.has(`${prefix}-${n}`)) n++;
  return `${prefix}-${n}`;
}

/** An identity that no section of the project has. */
export function newSectionId({ song }: Pick<Project, 'song'>): SectionId {
  return newId(
    'section',
    song.sections.map((section) => section.id),
  );
}

/** An identity that no form entry of the project has. */
export function newFormEntryId({ song }: Pick<Project, 'song'>): FormEntryId {
  return newId(
    'entry',
    song.form.map((entry) => entry.id),
  );
}

/** An identity that no pattern of the project has. */
export function newPatternId({ patterns }: Pick<Project, 'patterns'>): PatternId {
  return newId(
    'pattern',
    patterns.map((pattern) => pattern.id),
  );
}

/** `name`, or `name 2`, `name 3` … : the first that is not among `taken`. */
export function freeName(name: string, taken: Iterable<string>): string {
  const names = new Set(taken);
  let n = 1;
  const numbered = () => (n === 1 ? name : `${name} ${n}`);
  while (names.has(numbered())) n++;
  return numbered();
}
