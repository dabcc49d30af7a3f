import type { KeyNumber } from '../../src/core/harmony/pitch.ts';
import type { ChordToVoice } from '../../src/core/voicing/candidateLayers.ts';
import { heldKeys, type Voicing } from '../../src/core/voicing/voicing.ts';
import { chord } from './music.ts';

/** The keys of a voicing as `left | right`: `36 48 | 64 67 72`; `|` alone for N.C. */
export function handsText(voicing: Voicing): string {
  const { left, right } = heldKeys(voicing);
  return `${left.join(' ')} | ${right.join(' ')}`.trim();
}

/** The right hand of a voicing as text: `64 67 72`. */
export function rightText(voicing: Voicing): string {
  return heldKeys(voicing).right.join(' ');
}

/** Chords by symbol, `N.C.` among them: `chordsToVoice('C F N.C. G7')`. */
export function chordsToVoice(symbols: string): ChordToVoice[] {
  return symbols
    .split(' ')
    .map((symbol) => ({ chord: symbol === 'N.C.' ? 'no-chord' : chord(symbol) }));
}

/** The chord with just these keys for its hands. */
export function pinned(
  { chord: name }: ChordToVoice,
  left: readonly KeyNumber[],
  right: readonly KeyNumber[],
): ChordToVoice {
  return { chord: name, fixedKeys: { left, right } };
}

/** Every way to take one item of each list, in lexicographic order of their places. */
export function waysThrough<T>(layers: readonly (readonly T[])[]): T[][] {
  return layers.reduce<T[][]>(
    (ways, layer) => ways.flatMap((way) => layer.map((item) => [...way, item])),
    [[]],
  );
}

/** The ways that cost least, in order, and what they cost: a search through them all. */
export function cheapestWays<T>(
  layers: readonly (readonly T[])[],
  costOf: (way: readonly T[]) => number,
): { readonly ways: readonly (readonly T[])[]; readonly cost: number } {
  let cost = Infinity;
  let ways: T[][] = [];
  for (const way of waysThrough(layers)) {
    const total = costOf(way);
    if (total < cost) ways = [];
    if (total <= cost) ways.push(way);
    cost = Math.min(cost, total);
  }
  return { ways, cost };
}
