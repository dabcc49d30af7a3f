import {
  busyHand,
  type DensityClass,
  densityClass,
  type Feel,
  feelOf,
} from '../../../core/rhythm/character.ts';
import { type ComparedGroove, likeness, likestPatterns } from '../../../core/rhythm/likeness.ts';
import type { Hit, Pattern } from '../../../core/rhythm/pattern.ts';
import type { ShelfPattern } from '../../../core/rhythm/shelf.ts';
import type { Stroke } from '../../../core/rhythm/sources.ts';
import { formatMeter } from '../../../core/time/meter.ts';
import type { Bpm } from '../../../core/time/tempoMap.ts';
import type { HandName } from '../../../core/voicing/voicing.ts';

/** What is looked for on the shelf; what is left out does not matter. `bpm` is a usual tempo for it. */
export type ShelfWish = {
  readonly words: string;
  readonly meter?: string | undefined;
  readonly feel?: Feel | undefined;
  readonly density?: DensityClass | undefined;
  readonly busy?: HandName | 'both' | undefined;
  readonly bpm?: Bpm | undefined;
};

export const NO_WISH: ShelfWish = { words: '' };

/** A pattern of the shelf, and how like the groove it is (0 to 1) where it was compared with one. */
export type ShelfFind = { readonly entry: ShelfPattern; readonly like?: number };

/** A text as it is searched: lower case, without accents and signs. */
function plain(text: string): string {
  return text.normalize('NFD').replaceAll(/\p{M}/gu, '').toLowerCase().replaceAll('–', '-');
}

/** Everything that is written on an entry. */
function writtenOn({ pattern, use, origin, tags }: ShelfPattern): string {
  return plain([pattern.name, formatMeter(pattern.meter), use, origin, ...tags].join(' '));
}

/** Whether every word that is looked for is written somewhere on the entry, at the beginning of a word. */
function hasWords(entry: ShelfPattern, words: string): boolean {
  const written = ` ${writtenOn(entry).replaceAll(/[\s,;:.()-]+/g, ' ')}`;
  return plain(words)
    .split(/[\s,;:.()-]+/)
    .every((word) => word === '' || written.includes(` ${word}`));
}

/** What matters is as it was found; what was left out does not matter. */
function agrees<T>(wanted: T | undefined, found: T): boolean {
  return wanted === undefined || wanted === found;
}

function answers(entry: ShelfPattern, wish: ShelfWish): boolean {
  const { pattern, tempoRange } = entry;
  return (
    agrees(wish.meter, formatMeter(pattern.meter)) &&
    agrees(wish.feel, feelOf(pattern)) &&
    agrees(wish.density, densityClass(pattern)) &&
    agrees(wish.busy, busyHand(pattern)) &&
    (wish.bpm === undefined || (wish.bpm >= tempoRange[0] && wish.bpm <= tempoRange[1])) &&
    hasWords(entry, wish.words)
  );
}

/**
 * The entries of the shelf that answer a wish, in the shelf's order. With a groove only those in its
 * meter, the likest first; equally like ones keep their order.
 */
export function foundOnShelf(
  shelf: readonly ShelfPattern[],
  wish: ShelfWish,
  groove?: ComparedGroove,
): ShelfFind[] {
  const found = shelf.filter((entry) => answers(entry, wish));
  if (!groove) return found.map((entry) => ({ entry }));
  return likestPatterns(groove, found).map((entry) => ({
    entry,
    like: likeness(groove, entry.pattern),
  }));
}

/** The meters of the shelf as they are written: by their lower figure, then by the upper one. */
export function metersOf(shelf: readonly ShelfPattern[]): string[] {
  const meters = shelf
    .map(({ pattern }) => pattern.meter)
    .toSorted((a, b) => a.unit - b.unit || a.beats - b.beats);
  return [...new Set(meters.map(formatMeter))];
}

/** Strength of a hit of each touch when the hands are taken for a band. */
const TOUCH_STRENGTH = { ghost: 0.35, plain: 0.7, accent: 1 } as const;

function asStroke({ at, length, touch }: Hit): Stroke {
  return { at, length, strength: TOUCH_STRENGTH[touch], presence: 1, what: [] };
}

/**
 * The groove that a pattern is compared by: what its band plays, or where it has none, its left hand
 * as a bass and its right hand as a strummed guitar. Undefined where nothing is played at all.
 */
export function grooveOfPattern({
  meter,
  bars,
  sources,
  left,
  right,
}: Pattern): ComparedGroove | undefined {
  if (sources.some((source) => source.strokes.length > 0)) return { meter, bars, sources };
  if (left.length + right.length === 0) return undefined;
  return {
    meter,
    bars,
    sources: [
      { id: 'left', name: 'left', part: 'bass', strokes: left.map(asStroke) },
      { id: 'right', name: 'right', part: 'strumming', strokes: right.map(asStroke) },
    ],
  };
}

/** How like a groove something is, in words. */
export function likeWords(like: number): string {
  const percent = `${Math.round(like * 100)} % alike`;
  if (like >= 0.8) return `Very like it, ${percent}`;
  if (like >= 0.5) return `Akin, ${percent}`;
  return like > 0 ? `Distant, ${percent}` : 'Nothing in common';
}
