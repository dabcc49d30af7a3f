import type * as v from 'valibot';

/** What a schema found wrong: where, what belongs there and what stands there. */
export type SchemaIssue = {
  readonly path: string;
  readonly expected: string;
  readonly found: string;
};

/** Where in the data an issue stands: `song.sections[2].slots[0].durationTicks`; empty for the whole. */
function pathOf(issue: v.BaseIssue<unknown>): string {
  return (issue.path ?? []).reduce((path, { key }) => {
    if (typeof key === 'number') return `${path}[${key}]`;
    return path === '' ? String(key) : `${path}.${String(key)}`;
  }, '');
}

/**
 * The facts of an issue for an error of ours. A check of our own says in its message what it expects;
 * valibot's say it apart, in a writing of their own: `string`, `>=1`, `!0`, `("a" | "b")`.
 */
export function schemaIssue(issue: v.BaseIssue<unknown>): SchemaIssue {
  return {
    path: pathOf(issue),
    expected: issue.expected ?? issue.message,
    found: issue.received,
  };
}
