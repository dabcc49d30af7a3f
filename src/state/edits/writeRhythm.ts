import type { PatternId } from '../../core/ids.ts';
import {
  DIVISIONS,
  type Division,
  type Hit,
  type Pattern,
  patternBeats,
  patternTicks,
  type Touch,
} from '../../core/rhythm/pattern.ts';
import {
  PLAYED_PRESENCE,
  type SourcePart,
  type Stroke,
  USUAL_TONE,
} from '../../core/rhythm/sources.ts';
import { barTicks } from '../../core/time/meter.ts';
import { TICKS_PER_QUARTER, type Ticks } from '../../core/time/ticks.ts';
import type { HandName } from '../../core/voicing/voicing.ts';
import { newId } from '../newIds.ts';
import type { Edit } from './edit.ts';
import { withBars, withDivision } from './patternGrid.ts';
import { reworkPattern } from './variations.ts';

/** Where a rhythm is written: into a hand, into a source that is there, or into a new one. */
export type RhythmTarget =
  | { readonly kind: 'hand'; readonly hand: HandName }
  | { readonly kind: 'source'; readonly id: string }
  | { readonly kind: 'new-source'; readonly part: SourcePart; readonly name: string };

/** A rhythm of one or more bars in the pattern's meter, as it was said or tapped. */
export type WrittenRhythm = Pick<Pattern, 'bars' | 'divisions'> & {
  readonly strokes: readonly Stroke[];
};

/** Whether a rhythm takes the place of what the target plays, or comes to it. */
export type WritingManner = 'replace' | 'add';

/** A hit lasts to the next one, but no longer than this. */
const LONGEST_HIT: Ticks = TICKS_PER_QUARTER;

/** Strengths at which a stroke becomes an accent or a ghost. */
const ACCENT_FROM = 0.9;
const GHOST_BELOW = 0.4;

/**
 * Writes a rhythm into a hand or a source of a pattern. A rhythm shorter than the pattern is repeated;
 * for a longer one the pattern is. Beats are divided as finely as the rhythm asks for; where a beat
 * holds hits of another division it is divided so that both fit, or stays as it is if nothing fits
 * both. A hand plays roots (left) or whole chords (right), but where it had a hit at the same tick
 * that one's tones and manner stay.
 */
export function writeRhythm(
  patternId: PatternId,
  target: RhythmTarget,
  rhythm: WrittenRhythm,
  manner: WritingManner = 'replace',
): Edit {
  return reworkPattern(patternId, (pattern) => {
    const bars = commonBars(pattern.bars, rhythm.bars);
    const long = bars === pattern.bars ? pattern : withBars(pattern, bars);
    const divided = withDivisionsFor(long, rhythm);
    const strokes = repeatedStrokes(divided, rhythm);
    return target.kind === 'hand'
      ? withHand(divided, target.hand, strokes, manner)
      : withSource(divided, target, strokes, manner);
  });
}

/** The smallest number of bars that both fill. */
function commonBars(a: number, b: number): number {
  let bars = Math.max(a, b);
  while (bars % a !== 0 || bars % b !== 0) bars++;
  return bars;
}

function repeatedStrokes(pattern: Pattern, { bars, strokes }: WrittenRhythm): Stroke[] {
  const length = bars * barTicks(pattern.meter);
  const rounds = patternTicks(pattern) / length;
  return Array.from({ length: rounds }, (_, round) =>
    strokes.map((stroke) => ({ ...stroke, at: stroke.at + round * length })),
  ).flat();
}

function withDivisionsFor(pattern: Pattern, rhythm: WrittenRhythm): Pattern {
  return patternBeats(pattern).reduce((changed, { division, start, length }, beat) => {
    const asked = rhythm.divisions[beat % rhythm.divisions.length] ?? 1;
    const isInside = ({ at }: Hit) => at > start && at < start + length;
    const isUsed = [...pattern.left, ...pattern.right].some(isInside);
    return withDivision(changed, beat, dividedFor(division, asked, isUsed));
  }, pattern);
}

/** The division of a beat for what is written there; `isUsed` where hits stand between its steps' first and last. */
function dividedFor(division: Division, asked: Division, isUsed: boolean): Division {
  if (division % asked === 0) return division;
  if (!isUsed) return asked;
  return DIVISIONS.find((d) => d % division === 0 && d % asked === 0) ?? division;
}

/** Strokes that are played; the others are ornaments. */
function played(strokes: readonly Stroke[]): Stroke[] {
  return strokes.filter((stroke) => stroke.presence >= PLAYED_PRESENCE);
}

function touchOf({ strength }: Stroke): Touch {
  if (strength >= ACCENT_FROM) return 'accent';
  return strength < GHOST_BELOW ? 'ghost' : 'plain';
}

function withHand(
  pattern: Pattern,
  hand: HandName,
  strokes: readonly Stroke[],
  manner: WritingManner,
): Pattern {
  const before: readonly Hit[] = pattern[hand];
  const play = hand === 'left' ? (['root'] as const) : (['all'] as const);
  const written = played(strokes).map(
    (stroke): Hit =>
      before.find((hit) => hit.at === stroke.at) ?? {
        at: stroke.at,
        length: Math.min(stroke.length, LONGEST_HIT),
        play,
        touch: touchOf(stroke),
        held: true,
      },
  );
  const kept = manner === 'replace' ? [] : before;
  const others = kept.filter((hit) => written.every(({ at }) => at !== hit.at));
  return { ...pattern, [hand]: [...others, ...written] };
}

function withSource(
  pattern: Pattern,
  target: Exclude<RhythmTarget, { readonly kind: 'hand' }>,
  strokes: readonly Stroke[],
  manner: WritingManner,
): Pattern {
  const { sources } = pattern;
  if (target.kind === 'new-source') {
    const { part, name } = target;
    const ids = sources.map((source) => source.id);
    const id = ids.includes(part) ? newId(part, ids) : part;
    return { ...pattern, sources: [...sources, { id, name, part, strokes }] };
  }
  const rewritten = sources.map((source) => {
    if (source.id !== target.id) return source;
    const kept = manner === 'replace' ? [] : source.strokes;
    return { ...source, strokes: [...kept, ...strokes] };
  });
  return { ...pattern, sources: rewritten };
}

/** How strong a stroke is that was only said. */
const SAID_STRENGTH = 0.7;

/** Counts that sound (ascending) as strokes of a part, or of a hand where none is said; each lasts to the next, round and round. */
export function saidStrokes(
  at: readonly Ticks[],
  grid: Pick<Pattern, 'meter' | 'bars'>,
  part: SourcePart | undefined,
): Stroke[] {
  const what = [part ? USUAL_TONE[part] : ('unpitched' as const)];
  const end = patternTicks(grid);
  return at.map((tick, i) => ({
    at: tick,
    length: (at[i + 1] ?? end + at[0]!) - tick,
    strength: SAID_STRENGTH,
    presence: 1,
    what,
  }));
}
