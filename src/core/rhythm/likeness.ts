import { sameMeter } from '../time/meter.ts';
import type { Ticks } from '../time/ticks.ts';
import { commonDivisor } from './commonDivisor.ts';
import { type Hit, type Pattern, patternTicks, type Touch } from './pattern.ts';
import type { ShelfPattern } from './shelf.ts';
import type { Source, SourcePart } from './sources.ts';

/** A groove to be compared: what the band plays in so many bars of a meter. */
export type ComparedGroove = Pick<Pattern, 'meter' | 'bars' | 'sources'>;

/** Which parts of the band make the low and the high voice of a groove; hi-hat and cymbals only keep time. */
const VOICE_OF: Readonly<Record<SourcePart, 'low' | 'high' | 'time'>> = {
  bass: 'low',
  kick: 'low',
  tom: 'low',
  snare: 'high',
  picking: 'high',
  strumming: 'high',
  sung: 'high',
  percussion: 'high',
  'hi-hat': 'time',
  cymbal: 'time',
};

const TOUCH_WEIGHT: Readonly<Record<Touch, number>> = { ghost: 0.35, plain: 0.7, accent: 1 };

/** How strongly each tick of a groove is struck. */
type Profile = ReadonlyMap<Ticks, number>;

type Struck = { readonly at: Ticks; readonly weight: number };

/**
 * How like a groove a pattern's hands are, 0 to 1: the likeness of the groove's low parts (bass,
 * kick, toms) to the left hand and of its high parts (snare, picking, strumming, sung line,
 * percussion) to the right hand, each the cosine of the weights struck at every tick, averaged over
 * the voices that the groove has. Patterns of different lengths are compared over as many bars as
 * both fill. 0 in another meter or for a groove without strokes.
 */
export function likeness(groove: ComparedGroove, pattern: Pattern): number {
  if (!sameMeter(groove.meter, pattern.meter)) return 0;
  const span = (patternTicks(groove) * pattern.bars) / commonDivisor(groove.bars, pattern.bars);
  const pairs = [
    [bandVoice(groove.sources, 'low'), handVoice(pattern.left)],
    [bandVoice(groove.sources, 'high'), handVoice(pattern.right)],
  ] as const;
  const compared = pairs.filter(([band]) => band.length > 0);
  const likenesses = compared.map(([band, hand]) =>
    cosine(
      profileOver(span, band, patternTicks(groove)),
      profileOver(span, hand, patternTicks(pattern)),
    ),
  );
  return likenesses.reduce((sum, like) => sum + like, 0) / Math.max(1, likenesses.length);
}

/** The shelf's patterns in the groove's meter, the likest first; equally like ones keep their order. */
export function likestPatterns(
  groove: ComparedGroove,
  shelf: readonly ShelfPattern[],
): ShelfPattern[] {
  return shelf
    .filter(({ pattern }) => sameMeter(groove.meter, pattern.meter))
    .map((entry) => ({ entry, like: likeness(groove, entry.pattern) }))
    .toSorted((a, b) => b.like - a.like)
    .map(({ entry }) => entry);
}

function bandVoice(sources: readonly Source[], voice: 'low' | 'high'): Struck[] {
  return sources
    .filter((source) => VOICE_OF[source.part] === voice)
    .flatMap((source) => source.strokes)
    .map(({ at, strength, presence }) => ({ at, weight: strength * presence }));
}

function handVoice(hits: readonly Hit[]): Struck[] {
  return hits.map(({ at, touch }) => ({ at, weight: TOUCH_WEIGHT[touch] }));
}

/** The strongest weight at every tick of a span, which what is struck fills round and round. */
function profileOver(span: Ticks, struck: readonly Struck[], length: Ticks): Profile {
  const profile = new Map<Ticks, number>();
  for (let start = 0; start < span; start += length)
    for (const { at, weight } of struck)
      profile.set(start + at, Math.max(weight, profile.get(start + at) ?? 0));
  return profile;
}

function cosine(a: Profile, b: Profile): number {
  const size = (p: Profile) => Math.hypot(...p.values());
  const product = [...a].reduce((sum, [tick, weight]) => sum + weight * (b.get(tick) ?? 0), 0);
  const sizes = size(a) * size(b);
  return sizes > 0 ? Math.min(1, product / sizes) : 0;
}
