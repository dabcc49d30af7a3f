import type { PatternId } from '../../core/ids.ts';
import type { Pattern } from '../../core/rhythm/pattern.ts';
import { freeName } from '../newIds.ts';
import { type Edit, inPattern, withParts } from './edit.ts';
import { handsOf, type Scope } from './hits.ts';
import { replaceHands } from './pattern.ts';
import { settledPattern } from './settle.ts';

/**
 * Changes a pattern by a rule, settled (`settledPattern`); it keeps its identity and its name. In the
 * ending the rule is given the ending as a pattern of one bar, and only its hands count.
 */
export function reworkPattern(
  id: PatternId,
  rework: (pattern: Pattern) => Pattern,
  scope: Scope = 'main',
): Edit {
  if (scope === 'ending') return reworkEnding(id, rework);
  return inPattern(id, (pattern) => {
    const { id: _id, name: _name, ...parts } = settledPattern(rework(pattern));
    return withParts<Pattern>(pattern, { ending: undefined, ...parts });
  });
}

function reworkEnding(id: PatternId, rework: (pattern: Pattern) => Pattern): Edit {
  return (project) => {
    const pattern = project.patterns.find((each) => each.id === id);
    const hands = pattern && handsOf(pattern, 'ending');
    if (!pattern || !hands) return project;
    const { ending: _ending, ...main } = pattern;
    const beats = pattern.divisions.length / pattern.bars;
    const lastBar = pattern.divisions.slice(-beats);
    const { left, right } = rework({ ...main, ...hands, bars: 1, divisions: lastBar, sources: [] });
    return replaceHands(id, { left, right }, 'ending')(project);
  };
}

/** In what a variation differs from its original: how much of it is played, or the meter it is brought into. */
export type Manner = `level ${number}` | `in ${string}`;

const MANNER_IN_NAME = / \((?:level \d|in [\d+/]+(?:\(\d+\))?)\)(?: \d+)?$/;

/** What the variations of a pattern have in common: its name without the manner in brackets at its end. */
export function familyName(name: string): string {
  return name.replace(MANNER_IN_NAME, '');
}

/**
 * Adds a variation of a pattern behind the last pattern of its family, settled, as `newId`: it is
 * called by the family's name with `manner` in brackets, numbered where that is taken. Nothing where
 * there is no such pattern or `newId` is taken.
 */
export function addVariation(
  originalId: PatternId,
  newId: PatternId,
  manner: Manner,
  variation: Pattern,
): Edit {
  return (project) => {
    const { patterns } = project;
    const original = patterns.find(({ id }) => id === originalId);
    if (!original || patterns.some(({ id }) => id === newId)) return project;
    const family = familyName(original.name);
    const last = patterns.findLastIndex(({ name }) => familyName(name) === family);
    const names = patterns.map(({ name }) => name);
    const name = freeName(`${family} (${manner})`, names);
    const added = { ...settledPattern(variation), id: newId, name };
    return withParts(project, { patterns: patterns.toSpliced(last + 1, 0, added) });
  };
}
