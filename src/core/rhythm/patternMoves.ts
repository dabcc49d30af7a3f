import { barTicks } from '../time/meter.ts';
import type { Ticks } from '../time/ticks.ts';
import type { HandName } from '../voicing/voicing.ts';
import {
  type Division,
  type Hands,
  type Hit,
  type LeftHit,
  type Pattern,
  patternBeats,
  patternSteps,
  patternTicks,
  type RightHit,
  type Touch,
} from './pattern.ts';
import { STRAIGHT } from './swing.ts';
import type { BassTone, VoiceTone } from './tones.ts';

/** Which hands a move is made with. Moves leave the sources and the ending as they are unless they say so. */
export type WhichHands = HandName | 'both';

/** The same change to the hits of the hands that are meant. */
export function inHands(
  pattern: Pattern,
  which: WhichHands,
  change: <H extends Hit>(hits: readonly H[]) => readonly H[],
): Pattern {
  return {
    ...pattern,
    left: which === 'right' ? pattern.left : change(pattern.left),
    right: which === 'left' ? pattern.right : change(pattern.right),
  };
}

function inOrder<H extends Hit>(hits: readonly H[]): H[] {
  return hits.toSorted((a, b) => a.at - b.at);
}

/** The pattern for where no section ends, as in a one-chord drill. */
export function withoutEnding(pattern: Pattern): Pattern {
  const { ending: _ending, ...rest } = pattern;
  return rest;
}

/** The pattern as it is written: straight, for notation, where swing is a word over the staff. */
export function withoutSwing(pattern: Pattern): Pattern {
  return { ...pattern, swing: STRAIGHT };
}

/**
 * Shifts hits by so many ticks (negative: earlier) round the pattern: what leaves it at one end
 * comes in at the other. Lengths stay. Shifting back gives the same pattern.
 */
export function shiftHits(pattern: Pattern, which: WhichHands, by: Ticks): Pattern {
  const end = patternTicks(pattern);
  return inHands(pattern, which, (hits) =>
    inOrder(hits.map((hit) => ({ ...hit, at: (((hit.at + by) % end) + end) % end }))),
  );
}

/** Removes the hits that start in `from` (included) to `until` (excluded). */
export function clearHits(pattern: Pattern, which: WhichHands, from: Ticks, until: Ticks): Pattern {
  return inHands(pattern, which, (hits) => hits.filter(({ at }) => at < from || at >= until));
}

/**
 * Replaces the hits of one span by those of another of the pattern's spans, at the same distances
 * from its start; what would start beyond the span's length is left out.
 */
function copySpan(
  pattern: Pattern,
  which: WhichHands,
  from: Ticks,
  to: Ticks,
  length: Ticks,
): Pattern {
  return inHands(pattern, which, (hits) => {
    const copies = hits.filter(({ at }) => at >= from && at < from + length);
    const others = hits.filter(({ at }) => at < to || at >= to + length);
    return inOrder([...others, ...copies.map((hit) => ({ ...hit, at: hit.at - from + to }))]);
  });
}

/**
 * Copies the hits of one felt beat (0-based over all bars) onto another, with its division. Of a
 * longer beat as much is copied as the other holds. Beats that are not there change nothing.
 */
export function copyBeat(pattern: Pattern, which: WhichHands, from: number, to: number): Pattern {
  const beats = patternBeats(pattern);
  const [source, target] = [beats[from], beats[to]];
  if (!source || !target) return pattern;
  const cleared = clearHits(pattern, which, target.start, target.start + target.length);
  const length = Math.min(source.length, target.length);
  const divisions = pattern.divisions.with(to, source.division);
  return { ...copySpan(cleared, which, source.start, target.start, length), divisions };
}

/** Copies the hits and the divisions of one bar (0-based) onto another. Bars that are not there change nothing. */
export function copyBar(pattern: Pattern, which: WhichHands, from: number, to: number): Pattern {
  if (![from, to].every((bar) => Number.isInteger(bar) && bar >= 0 && bar < pattern.bars))
    return pattern;
  const length = barTicks(pattern.meter);
  const beats = pattern.divisions.length / pattern.bars;
  const copied = pattern.divisions.slice(from * beats, (from + 1) * beats);
  const divisions: Division[] = pattern.divisions.toSpliced(to * beats, beats, ...copied);
  return { ...copySpan(pattern, which, from * length, to * length, length), divisions };
}

/** What each hand plays in the other hand's rhythm when the hands change over, tone for tone. */
const COUNTERPARTS: readonly (readonly [bass: readonly BassTone[], voice: VoiceTone])[] = [
  [['root'], 'all'],
  [['third'], 'voice-2'],
  [['fifth'], 'voice-3'],
  [['seventh'], 'voice-4'],
  [['sixth'], 'voice-5'],
  [['octave'], 'top'],
  [['tenth'], 'upper'],
  [['fifth-below'], 'bottom'],
  [['approach'], 'middle'],
  [['root', 'octave'], 'voice-1'],
  [['root', 'tenth'], 'voice-6'],
];

function voicesFor(tones: readonly BassTone[]): VoiceTone[] {
  const whole = COUNTERPARTS.find(
    ([bass]) => bass.length === tones.length && bass.every((tone, i) => tone === tones[i]),
  );
  return whole
    ? [whole[1]]
    : tones.flatMap((tone) => COUNTERPARTS.find(([bass]) => bass[0] === tone)?.[1] ?? []);
}

function bassFor(tones: readonly VoiceTone[]): BassTone[] {
  const played = tones.flatMap(
    (tone) => COUNTERPARTS.find(([, voice]) => voice === tone)?.[0] ?? [],
  );
  return [...new Set(played)];
}

function mirrored({ left, right }: Hands): Hands {
  return {
    left: right.map((hit) => ({ ...hit, play: bassFor(hit.play) })),
    right: left.map((hit) => ({ ...hit, play: voicesFor(hit.play) })),
  };
}

/**
 * The hands change over, in the ending too: each plays the other's rhythm with its lengths and
 * touches. Tones become their counterparts in the other hand (the root the whole chord, the octave
 * the top voice …). Mirroring twice gives the same pattern, unless a hit names a tone twice over
 * (`all` together with `top`).
 */
export function mirrorHands(pattern: Pattern): Pattern {
  const { ending } = pattern;
  return {
    ...pattern,
    ...mirrored(pattern),
    ...(ending ? { ending: { ...ending, ...mirrored(ending) } } : {}),
  };
}

/** One hand takes over the rhythm, lengths and touches of the other, playing roots (left) or whole chords (right). */
export function copyRhythm(pattern: Pattern, from: HandName): Pattern {
  return from === 'left'
    ? { ...pattern, right: pattern.left.map((hit): RightHit => ({ ...hit, play: ['all'] })) }
    : { ...pattern, left: pattern.right.map((hit): LeftHit => ({ ...hit, play: ['root'] })) };
}

/**
 * Fills the empty steps of one hand between its hits with ghosted hits, one step long, that play
 * what the hit before plays; that hit lasts until the first of them. Steps before the first hit
 * and within `from` … `until` only, if these are given, stay empty.
 */
export function fillBetween(
  pattern: Pattern,
  which: WhichHands,
  from: Ticks = 0,
  until: Ticks = patternTicks(pattern),
): Pattern {
  const steps = patternSteps(pattern).filter((step) => step.at >= from && step.at < until);
  return inHands(pattern, which, <H extends Hit>(hits: readonly H[]) => {
    const added = steps.flatMap((step): H[] => {
      const before = hits.findLast((hit) => hit.at <= step.at);
      if (!before || hits.some((hit) => hit.at === step.at)) return [];
      const { anticipates: _anticipates, ...fill } = before;
      return [{ ...fill, at: step.at, length: step.length, touch: 'ghost' } as Hit as H];
    });
    return inOrder([...hits, ...added]).map((hit, i, all) => {
      const next = all[i + 1]?.at ?? hit.at + hit.length;
      return added.some((fill) => fill.at === next)
        ? { ...hit, length: Math.min(hit.length, next - hit.at) }
        : hit;
    });
  });
}

/**
 * Accents every nth hit of a hand, beginning with its hit `first` (0-based); its other accents
 * become plain, ghosts stay. `every` is at least 1.
 */
export function accentEvery(
  pattern: Pattern,
  which: WhichHands,
  every: number,
  first = 0,
): Pattern {
  const touchOf = (touch: Touch, i: number): Touch => {
    if (i >= first && (i - first) % every === 0) return 'accent';
    return touch === 'accent' ? 'plain' : touch;
  };
  return inHands(pattern, which, (hits) =>
    hits.map((hit, i) => ({ ...hit, touch: touchOf(hit.touch, i) })),
  );
}
