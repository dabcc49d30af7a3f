import type { PatternId } from '../../core/ids.ts';
import {
  type Ending,
  endingBar,
  type Pattern,
  withEndingGridOf,
} from '../../core/rhythm/pattern.ts';
import { freeName, newPatternId } from '../newIds.ts';
import { sameData } from '../sameData.ts';
import { type Edit, inPattern, mapped, withParts } from './edit.ts';
import type { Scope } from './hits.ts';
import { settledEnding, settledPattern } from './settle.ts';

/**
 * Changes a pattern by a rule, settled (`settledPattern`); it keeps its identity and its name. In the
 * ending the rule is given the ending as a pattern of one bar (`endingBar`), and only its hands and
 * divisions count.
 */
export function reworkPattern(
  id: PatternId,
  rework: (pattern: Pattern) => Pattern,
  scope: Scope = 'main',
): Edit {
  return inPattern(id, (pattern) => {
    if (scope === 'ending') return reworkedEnding(pattern, rework);
    const reworked = withEndingGridOf(pattern, rework(pattern));
    const { id: _id, name: _name, ...parts } = settledPattern(reworked);
    return withParts<Pattern>(pattern, { ending: undefined, ...parts });
  });
}

function reworkedEnding(pattern: Pattern, rework: (pattern: Pattern) => Pattern): Pattern {
  const bar = endingBar(pattern);
  if (!bar || !pattern.ending) return pattern;
  const { left, right, divisions } = rework(bar);
  const isDivided = pattern.ending.divisions ?? !sameData(divisions, bar.divisions);
  const ending = { left, right, ...(isDivided ? { divisions } : {}) };
  return withParts(pattern, {
    ending: withParts<Ending>(pattern.ending, settledEnding(ending, pattern.meter)),
  });
}

/** In what a variation differs from its original: how much of it is played, or the meter it is brought into. */
export type VariationManner = `level ${number}` | `in ${string}`;

const MANNER_IN_NAME = / \((?:level \d|in [\d+/]+(?:\(\d+\))?)\)(?: \d+)?$/;

/** What the variations of a pattern have in common: its name without the manner in brackets at its end. */
export function familyName(name: string): string {
  return name.replace(MANNER_IN_NAME, '');
}

/** Whether two patterns stand together: one is made of the other, or both of the same. Older songs tell it by the names. */
function areFamily(a: Pattern, b: Pattern): boolean {
  return originalOf(a) === originalOf(b) || familyName(a.name) === familyName(b.name);
}

function originalOf({ id, variationOf }: Pattern): PatternId {
  return variationOf ?? id;
}

/**
 * Adds a variation of a pattern behind the last pattern of its family, settled, as `newId`: it is
 * called by the family's name with `manner` in brackets, numbered where that is taken. Nothing where
 * there is no such pattern or `newId` is taken.
 */
export function addVariation(
  originalId: PatternId,
  newId: PatternId,
  manner: VariationManner,
  variation: Pattern,
): Edit {
  return (project) => {
    const { patterns } = project;
    const original = patterns.find(({ id }) => id === originalId);
    if (!original || patterns.some(({ id }) => id === newId)) return project;
    const last = patterns.findLastIndex((pattern) => areFamily(pattern, original));
    const names = patterns.map(({ name }) => name);
    const name = freeName(`${familyName(original.name)} (${manner})`, names);
    const variationOf = originalOf(original);
    const added = { ...settledPattern(variation), id: newId, name, variationOf };
    return withParts(project, { patterns: patterns.toSpliced(last + 1, 0, added) });
  };
}

/** A pattern with those that were made of the same, the original first where it is still there; empty where there is no such pattern. */
export function familyOf(patterns: readonly Pattern[], id: PatternId): readonly Pattern[] {
  const one = patterns.find((pattern) => pattern.id === id);
  if (!one) return [];
  const family = patterns.filter((pattern) => originalOf(pattern) === originalOf(one));
  return family.toSorted((a, b) => Number(!!a.variationOf) - Number(!!b.variationOf));
}

/**
 * Adds a pattern from elsewhere and its variations (those behind it), settled, at the end, under
 * identities of their own and names that are free; the variations are called after it.
 */
export function addFamily([original, ...variations]: readonly Pattern[]): Edit {
  return (project) => {
    if (!original) return project;
    const id = newPatternId(project);
    const name = freeName(
      original.name,
      project.patterns.map((pattern) => pattern.name),
    );
    const first = { ...settledPattern(original), id, name };
    const start = withParts(project, { patterns: [...project.patterns, first] });
    return variations.reduce((before, variation) => {
      const called = variation.name.startsWith(original.name)
        ? `${name}${variation.name.slice(original.name.length)}`
        : variation.name;
      const added = {
        ...settledPattern(variation),
        id: newPatternId(before),
        name: freeName(
          called,
          before.patterns.map((pattern) => pattern.name),
        ),
        variationOf: id,
      };
      return withParts(before, { patterns: [...before.patterns, added] });
    }, start);
  };
}

/** The patterns with one called by another name; its variations that were called after it are so still. */
export function renamedFamily(
  patterns: readonly Pattern[],
  id: PatternId,
  name: string,
): readonly Pattern[] {
  const before = patterns.find((pattern) => pattern.id === id)?.name;
  return mapped(patterns, (pattern) => {
    if (pattern.id === id) return withParts(pattern, { name });
    const isCalledAfter = pattern.variationOf === id && familyName(pattern.name) === before;
    return isCalledAfter
      ? withParts(pattern, { name: `${name}${pattern.name.slice(before.length)}` })
      : pattern;
  });
}

/** The patterns without one. Its variations stay, and stand together as those of the first of them. */
export function familyWithout(patterns: readonly Pattern[], id: PatternId): readonly Pattern[] {
  const others = patterns.filter((pattern) => pattern.id !== id);
  const heir = others.find(({ variationOf }) => variationOf === id)?.id;
  return mapped(others, (pattern) => {
    if (pattern.variationOf !== id) return pattern;
    return withParts<Pattern>(pattern, { variationOf: pattern.id === heir ? undefined : heir });
  });
}
