import { barTicks } from '../time/meter.ts';
import { TICKS_PER_QUARTER, type Ticks } from '../time/ticks.ts';
import type { Fold, FoldedSource, FoldedStep } from './fold.ts';
import type { Pattern } from './pattern.ts';
import {
  PLAYED_PRESENCE,
  SOURCE_PARTS,
  type Source,
  type SourcePart,
  type Stroke,
} from './sources.ts';
import type { BandSource } from './strokes.ts';

/** A stroke whose length nobody knows lasts to the next of its source, but no longer than this. */
const UNKNOWN_LENGTH: Ticks = TICKS_PER_QUARTER;

function strokeOf(step: FoldedStep, gap: Ticks): Stroke {
  return {
    at: step.at,
    length: Math.min(gap, step.length ?? UNKNOWN_LENGTH),
    strength: Math.min(1, Math.max(0, step.strength)),
    presence: step.presence,
    what: step.what.length > 0 ? step.what : ['unpitched'],
  };
}

function strokesOf({ steps }: FoldedSource, leastPresence: number, end: Ticks): Stroke[] {
  const played = steps.filter((step) => step.presence >= leastPresence);
  const roundAgain = end + (played[0]?.at ?? 0);
  return played.map((step, i) => strokeOf(step, (played[i + 1]?.at ?? roundAgain) - step.at));
}

function partNamed(id: string): SourcePart {
  return SOURCE_PARTS.find((part) => part === id) ?? 'percussion';
}

/**
 * The sources of a fold as a pattern keeps them, one bar or more long: every step that is played in at
 * least `leastPresence` of the bars (0 to 1; half of them where left out). `named` says what each
 * source is; one that is not there is named by its id, and is percussion unless its id is a part.
 * Lengths reach to the source's next stroke at most, round the end to its first.
 */
export function foldSources(
  fold: Fold,
  named: readonly BandSource[] = [],
  leastPresence: number = PLAYED_PRESENCE,
): Source[] {
  const end = fold.bars * barTicks(fold.meter);
  return fold.sources.flatMap((source) => {
    const { name, part } = named.find(({ id }) => id === source.id) ?? {
      name: source.id,
      part: partNamed(source.id),
    };
    const strokes = strokesOf(source, leastPresence, end);
    return strokes.length === 0 ? [] : [{ id: source.id, name, part, strokes }];
  });
}

/** Everything of a pattern but its identity and its hands. */
export type Groove = Pick<Pattern, 'meter' | 'bars' | 'divisions' | 'swing' | 'sources'>;

/** The least that a band's strongest stroke is worth: forte, MIDI velocity 96 (common practice). */
const FORTE = 96 / 127;

/**
 * A band that was played or recorded softly as strong as one that was not, so that it is heard beside
 * the hands: all strokes grow alike until the strongest is forte. A loud one stays as it is.
 */
function raised(sources: readonly Source[]): readonly Source[] {
  const strongest = Math.max(...sources.flatMap(({ strokes }) => strokes.map((s) => s.strength)));
  if (!(strongest > 0 && strongest < FORTE)) return sources;
  const louder = (stroke: Stroke) => ({
    ...stroke,
    strength: stroke.strength * (FORTE / strongest),
  });
  return sources.map((source) => ({ ...source, strokes: source.strokes.map(louder) }));
}

/**
 * What a fold has found, as the beginning of a pattern; `foldSources` says which strokes it keeps. The
 * strongest stroke is at least forte.
 */
export function grooveOf(fold: Fold, named: readonly BandSource[] = []): Groove {
  const { meter, bars, divisions, swing } = fold;
  return { meter, bars, divisions, swing, sources: raised(foldSources(fold, named)) };
}
