import type { LiveHit } from '../../../app/liveHits.ts';
import type { Grade } from '../../../core/practice/tolerance.ts';
import { type Pattern, patternTicks } from '../../../core/rhythm/pattern.ts';
import type { Seconds } from '../../../core/time/ticks.ts';
import type { HandName } from '../../../core/voicing/voicing.ts';
import { straightTick } from '../grid/straightTick.ts';
import { type Pixels, type System, tickX } from '../grid/systemLayout.ts';

/** What a mark says: in time or not, the same with a wrong key, left out, one too many. */
export type MarkKind = LiveHit['kind'] | 'wrong-key';

/**
 * A hit on the spine, at the rule of its hand: `x` where it was meant (where it was, if extra), `to`
 * how far it came from there. `old` marks are of the round before.
 */
export type HitMark = {
  readonly kind: MarkKind;
  readonly hand: HandName;
  readonly isHandKnown: boolean;
  readonly x: Pixels;
  readonly to: Pixels;
  readonly isOld: boolean;
  /** How well a hit that was played is in time; the mark shows it by itself, wherever it stands. */
  readonly grade?: Grade;
};

/** So much time is one pixel of lateness, until the mark would reach its neighbour. */
const SEC_TO_PIXEL: Seconds = 0.004;
const FARTHEST: Pixels = 18;

/** Strokes of the picture begin so far after their step's line. */
const STROKE_INSET: Pixels = 4;

/** How far right (left, where early) of its place a hit is marked: 4 ms to a pixel, at most 18 pixels. */
export function latenessPixels(deviationSec: Seconds): Pixels {
  return Math.max(-FARTHEST, Math.min(FARTHEST, deviationSec / SEC_TO_PIXEL));
}

/** The round of the pattern that a hit lies in, from 0, and where in the grid it stands. */
function placeOf(hit: LiveHit, pattern: Pattern): { readonly round: number; readonly at: number } {
  const length = patternTicks(pattern);
  // In a song the rounds begin with the section. Swing lets a hit come later than its step, never earlier.
  if (hit.kind !== 'extra' && hit.patternTick !== undefined)
    return { round: Math.floor((hit.tick - hit.patternTick + 1) / length), at: hit.patternTick };
  const round = Math.floor(hit.tick / length);
  return { round, at: straightTick(hit.tick - round * length, pattern.meter, pattern.swing) };
}

function kindOf(hit: LiveHit): MarkKind {
  return hit.kind === 'played' && hit.wrongKeys > 0 ? 'wrong-key' : hit.kind;
}

/** Hits of other patterns, in a song, stand elsewhere; an extra one belongs to what is looked at. */
function isOf(hit: LiveHit, { id }: Pattern): boolean {
  return hit.kind === 'extra' || hit.patternId === undefined || hit.patternId === id;
}

function handsOf(hand: LiveHit['hand']): readonly HandName[] {
  if (hand === 'both') return ['right', 'left'];
  return [hand ?? 'right'];
}

/**
 * The marks of a pass's hits on one system of its pattern, right hand's first where a hit is of both.
 * Only the latest round that was played and the one before are marked.
 */
export function hitMarks(hits: readonly LiveHit[], pattern: Pattern, system: System): HitMark[] {
  const placed = hits
    .filter((hit) => isOf(hit, pattern))
    .map((hit) => ({ hit, ...placeOf(hit, pattern) }));
  const latest = Math.max(...placed.map(({ round }) => round));
  return placed
    .filter(({ round, at }) => round >= latest - 1 && at >= system.fromTick && at < system.toTick)
    .flatMap(({ hit, round, at }) => {
      const x = tickX(system, at) + (hit.kind === 'extra' ? 0 : STROKE_INSET);
      const to = x + (hit.kind === 'played' ? latenessPixels(hit.deviationSec) : 0);
      return handsOf(hit.hand).map((hand) => ({
        kind: kindOf(hit),
        hand,
        isHandKnown: hit.hand !== undefined && hit.hand !== 'both',
        x,
        to,
        isOld: round < latest,
        ...(hit.kind === 'played' && { grade: hit.grade }),
      }));
    });
}

/** Half the height of a tick, by how well its hit is in time; CSS draws the better ones heavier as well. */
const REACHES: Readonly<Record<Grade, Pixels>> = { 'very-good': 10, good: 8, fair: 6, off: 8 };

/** Half of what is left out in the middle of a tick that is off. */
const GAP: Pixels = 4;

const CROSS: Pixels = 5.5;
const RING: Pixels = 5.5;
const LOZENGE: Pixels = 6.5;

/** A tick at `x`: taller the better it is in time, broken in the middle where it is off. */
function tickPath(x: Pixels, y: Pixels, grade: Grade): string {
  const reach = REACHES[grade];
  return grade === 'off'
    ? `M${x} ${y - reach}V${y - GAP}M${x} ${y + GAP}V${y + reach}`
    : `M${x} ${y - reach}V${y + reach}`;
}

/**
 * The outline of a mark around height `y`, as SVG path data: a tick that leans on its place and says how good
 * it is (good without a `grade`), a lozenge on a tick for a wrong key, a ring or a cross.
 */
export function markPath(
  { kind, x, to, grade = 'good' }: Pick<HitMark, 'kind' | 'x' | 'to' | 'grade'>,
  y: Pixels,
): string {
  const tick = `M${x} ${y}H${to}${tickPath(to, y, grade)}`;
  switch (kind) {
    case 'played':
      return tick;
    case 'wrong-key':
      return `${tick}M${to} ${y - LOZENGE}l${LOZENGE} ${LOZENGE}l${-LOZENGE} ${LOZENGE}l${-LOZENGE} ${-LOZENGE}z`;
    case 'missed':
      return `M${x - RING} ${y}a${RING} ${RING} 0 1 0 ${2 * RING} 0a${RING} ${RING} 0 1 0 ${-2 * RING} 0`;
    default:
      return `M${x - CROSS} ${y - CROSS}l${2 * CROSS} ${2 * CROSS}M${x - CROSS} ${y + CROSS}l${2 * CROSS} ${-2 * CROSS}`;
  }
}
