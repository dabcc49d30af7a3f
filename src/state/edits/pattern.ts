import type { PatternId } from '../../core/ids.ts';
import type { Project } from '../../core/project.ts';
import {
  type Division,
  type Ending,
  type Hands,
  lastBarHands,
  type Pattern,
  type Pedal,
  patternTicks,
} from '../../core/rhythm/pattern.ts';
import type { Source } from '../../core/rhythm/sources.ts';
import { SWING_RATIOS, type Swing } from '../../core/rhythm/swing.ts';
import { patternCourse } from '../../core/song/patternCourse.ts';
import type { PatternChoice } from '../../core/song/song.ts';
import { type Meter, sameMeter } from '../../core/time/meter.ts';
import { freeName } from '../newIds.ts';
import { brought, type Edit, inPattern, inSong, mapped, withParts } from './edit.ts';
import type { Scope } from './hits.ts';
import { withCourse } from './movedBars.ts';
import { withBars, withDivision, withEndingDivision, withPatternMeter } from './patternGrid.ts';
import { settledEnding, settledHands, settledPattern, settledSources } from './settle.ts';
import { familyWithout, renamedFamily } from './variations.ts';

/** Lengths a pattern can be given, in bars. */
export const PATTERN_BARS = [1, 2, 4] as const;

function patternNames(project: Project): string[] {
  return project.patterns.map((pattern) => pattern.name);
}

/** Adds a pattern at the end, settled (`settledPattern`); nothing where the project has one of its id. */
export function addPattern(pattern: Pattern): Edit {
  return (project) =>
    project.patterns.some(({ id }) => id === pattern.id)
      ? project
      : withParts(project, { patterns: [...project.patterns, settledPattern(pattern)] });
}

/** Adds a copy behind a pattern, under a numbered name; nothing where there is none or `newId` is taken. */
export function duplicatePattern(id: PatternId, newId: PatternId): Edit {
  return (project) => {
    const place = project.patterns.findIndex((pattern) => pattern.id === id);
    const original = project.patterns[place];
    if (!original || project.patterns.some((pattern) => pattern.id === newId)) return project;
    const name = freeName(original.name.replace(/ \d+$/, ''), patternNames(project));
    const copy = { ...original, id: newId, name };
    return withParts(project, { patterns: project.patterns.toSpliced(place + 1, 0, copy) });
  };
}

/** What chooses a pattern, without the one that is gone: no changes to it are left. */
function withoutPattern<T extends PatternChoice>(chooser: T, id: PatternId): T {
  const { patternId, patternChanges } = chooser;
  return withParts<PatternChoice>(chooser, {
    patternId: patternId === id ? undefined : patternId,
    patternChanges: patternChanges?.filter((change) => change.patternId !== id),
  }) as T;
}

/**
 * Removes a pattern; where it was chosen nothing is chosen any more, and where a section changed to it
 * what was played before goes on. Its variations stay. The last pattern stays.
 */
export function removePattern(id: PatternId): Edit {
  const unchosen = <T extends PatternChoice>(chooser: T): T => withoutPattern(chooser, id);
  return (project) => {
    const patterns = familyWithout(project.patterns, id);
    if (patterns.length === 0 || patterns.length === project.patterns.length) return project;
    const { practice } = project;
    const unchooseInSong = inSong((song) =>
      withParts(song, {
        sections: mapped(song.sections, (section) => {
          const left = unchosen(section);
          return left === section ? section : withCourse(left, patternCourse(left));
        }),
        form: mapped(song.form, unchosen),
      }),
    );
    return withParts(unchooseInSong(project), {
      patterns,
      practice: withParts(practice, { drill: unchosen(practice.drill) }),
    });
  };
}

/** Calls a pattern by another name, and with it the variations that are called after it. */
export function renamePattern(id: PatternId, name: string): Edit {
  return (project) => withParts(project, { patterns: renamedFamily(project.patterns, id, name) });
}

/** Sets the swing; a ratio outside 1 to 3 is brought into it. */
export function setSwing(id: PatternId, { level, ratio }: Swing): Edit {
  return inPattern(id, (pattern) =>
    withParts(pattern, {
      swing: { level, ratio: brought(ratio, SWING_RATIOS, pattern.swing.ratio) },
    }),
  );
}

/** Plays the pattern with the pedal, or without any. */
export function setPedal(id: PatternId, pedal: Pedal | undefined): Edit {
  return inPattern(id, (pattern) => withParts(pattern, { pedal }));
}

/** Divides a felt beat (0-based over all bars of the scope) into so many steps: see `withDivision`, `withEndingDivision`. */
export function setDivision(
  id: PatternId,
  beatIndex: number,
  division: Division,
  scope: Scope = 'main',
): Edit {
  const divided = scope === 'main' ? withDivision : withEndingDivision;
  return inPattern(id, (pattern) => withParts(pattern, divided(pattern, beatIndex, division)));
}

/** Makes the pattern longer by repeating its bars or shorter by cutting them off. */
export function setPatternBars(id: PatternId, bars: (typeof PATTERN_BARS)[number]): Edit {
  return inPattern(id, (pattern) =>
    pattern.bars === bars ? pattern : withParts(pattern, withBars(pattern, bars)),
  );
}

/** Brings the pattern into another meter: see `withPatternMeter`. */
export function setPatternMeter(id: PatternId, meter: Meter): Edit {
  return inPattern(id, (pattern) =>
    sameMeter(pattern.meter, meter)
      ? pattern
      : withParts(pattern, withPatternMeter(pattern, meter)),
  );
}

/** Replaces both hands, settled to the pattern's length: see `settledHands`. */
export function replaceHands(id: PatternId, hands: Hands): Edit {
  return inPattern(id, (pattern) =>
    withParts<Pattern>(pattern, settledHands(hands, patternTicks(pattern))),
  );
}

/** Replaces what the band plays; strokes beyond the pattern's end are cut off. */
export function replaceSources(id: PatternId, sources: readonly Source[]): Edit {
  return inPattern(id, (pattern) =>
    withParts(pattern, { sources: settledSources(sources, patternTicks(pattern)) }),
  );
}

/** Gives the pattern an ending that begins as its last bar; nothing where it has one. */
export function addEnding(id: PatternId): Edit {
  return inPattern(id, (pattern) =>
    pattern.ending
      ? pattern
      : withParts(pattern, { ending: settledEnding(lastBarHands(pattern), pattern.meter) }),
  );
}

/** Gives the pattern an ending, settled, in place of the one it has. */
export function setEnding(id: PatternId, ending: Ending): Edit {
  return inPattern(id, (pattern) =>
    withParts(pattern, { ending: settledEnding(ending, pattern.meter) }),
  );
}

export function removeEnding(id: PatternId): Edit {
  return inPattern(id, (pattern) => withParts(pattern, { ending: undefined }));
}
