import { barTicks, type Meter } from '../time/meter.ts';
import type { HandName } from '../voicing/voicing.ts';
import { accented, type Draft, draftsOf, merged, standingOut, strokesOf } from './handDrafts.ts';
import { SHORT_TICKS, settled } from './handHits.ts';
import { type HandFrame, placesIn } from './handPlaces.ts';
import {
  HAND_RULES,
  type HandFallback,
  type HandFeed,
  type HandRules,
  SPARSE_HITS,
} from './handRules.ts';
import type { Hands } from './pattern.ts';
import { PLAYED_PRESENCE, type Source, type Stroke } from './sources.ts';

const COMMON_TIME: Meter = { beats: 4, unit: 4, groups: [2, 2] };

/** 4/4, as many bars as the strokes need. */
function frameOf(sources: readonly Source[]): HandFrame {
  const last = Math.max(0, ...sources.flatMap(({ strokes }) => strokes.map((s) => s.at)));
  return { meter: COMMON_TIME, bars: Math.floor(last / barTicks(COMMON_TIME)) + 1 };
}

/** What a hand plays by the feeds alone. */
function fedHand(hand: HandName, sources: readonly Source[], feeds: readonly HandFeed[]): Draft[] {
  const fed = feeds
    .filter((feed) => feed.hand === hand)
    .map((feed) => ({ feed, strokes: strokesOf(sources, feed.part) }))
    .filter(({ strokes }) => strokes.length > 0);
  const isAlone = fed.length === 1;
  return fed.reduce<Draft[]>((drafts, { feed, strokes }, i) => {
    const use = isAlone || (i === 0 && feed.use === 'accents') ? 'every-stroke' : feed.use;
    if (use === 'accents') return accented(drafts, strokes);
    const all = draftsOf(hand, strokes, feed);
    return merged(drafts, use === 'every-stroke' ? all : standingOut(all));
  }, []);
}

function fallbackStrokes(
  { from, at, only }: HandFallback,
  sources: readonly Source[],
  frame: HandFrame,
): readonly Stroke[] {
  const places = at === 'all' ? undefined : placesIn(frame, at);
  if (from === 'meter')
    return (places ?? []).map((tick) => ({
      at: tick,
      length: SHORT_TICKS,
      strength: 1,
      presence: 1,
      what: [],
    }));
  return strokesOf(sources, from)
    .filter((stroke) => !places || places.includes(stroke.at))
    .filter((stroke) => only === undefined || stroke.what.includes(only));
}

/** Fewer hits than `SPARSE_HITS` for each beat, or just as many with none on a beat to hold on to. */
function isSparse(drafts: readonly Draft[], frame: HandFrame): boolean {
  const beats = placesIn(frame, 'beats');
  const few = SPARSE_HITS * beats.length;
  const isOffBeat = !drafts.some((draft) => beats.includes(draft.at));
  return drafts.length < few || (drafts.length === few && isOffBeat);
}

function withFallbacks(
  hand: HandName,
  fed: readonly Draft[],
  sources: readonly Source[],
  rules: HandRules,
  frame: HandFrame,
): readonly Draft[] {
  return rules.fallbacks
    .filter((fallback) => fallback.hand === hand)
    .reduce((drafts, fallback) => {
      const isNeeded = fallback.when === 'empty' ? drafts.length === 0 : isSparse(drafts, frame);
      if (!isNeeded) return drafts;
      const helping = draftsOf(hand, fallbackStrokes(fallback, sources, frame), fallback);
      const light = helping.map((draft) => ({ ...draft, touch: 'ghost' as const }));
      return merged(drafts, fallback.touch === 'light' ? light : helping);
    }, fed);
}

/**
 * Both hands out of what the band plays, by a table of rules: which source feeds which hand, what its
 * strokes become there, and what helps a hand that would have nothing to do. Only strokes that are
 * played in half of the bars or more count; of several sources of one part the busiest is taken.
 *
 * Each hand has at most one hit at a tick, and every hit ends by the hand's next, the last by the first
 * of the next time round, none after more than a bar. Strokes that stand out from their source are
 * accents, weak ones ghosts; short ones are played short. A held hit that starts between beats and goes
 * on over a bar line or into a stress group, but not beyond that group, `anticipates`. Without strokes both hands are empty.
 *
 * `frame`: the bars the strokes stand in; where left out, as many bars of 4/4 as they need.
 */
export function deriveHands(
  sources: readonly Source[],
  rules: HandRules = HAND_RULES,
  frame: HandFrame = frameOf(sources),
): Hands {
  if (sources.every(({ strokes }) => strokes.every((s) => s.presence < PLAYED_PRESENCE)))
    return { left: [], right: [] };
  const handOf = (hand: HandName) =>
    settled(withFallbacks(hand, fedHand(hand, sources, rules.feeds), sources, rules, frame), frame);
  return { left: handOf('left') as Hands['left'], right: handOf('right') as Hands['right'] };
}
