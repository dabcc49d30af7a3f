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
  RAISED_USE,
  SPARSE_HITS,
} from './handRules.ts';
import type { Hands } from './pattern.ts';
import { PLAYED_PRESENCE, type Source, type Stroke } from './sources.ts';
import { withTheOne } from './theOne.ts';

const COMMON_TIME: Meter = { beats: 4, unit: 4, groups: [2, 2] };

/** 4/4, as many bars as the strokes need. */
function frameOf(sources: readonly Source[]): HandFrame {
  const last = Math.max(0, ...sources.flatMap(({ strokes }) => strokes.map((s) => s.at)));
  return { meter: COMMON_TIME, bars: Math.floor(last / barTicks(COMMON_TIME)) + 1 };
}

/** A feed of a hand whose part the band has, and what that plays. */
type Fed = { readonly feed: HandFeed; readonly strokes: readonly Stroke[] };

/** The feeds that have something for a hand, in the order of the table. */
function feedsOf(hand: HandName, sources: readonly Source[], feeds: readonly HandFeed[]): Fed[] {
  return feeds
    .filter((feed) => feed.hand === hand)
    .map((feed) => ({ feed, strokes: strokesOf(sources, feed.part) }))
    .filter(({ strokes }) => strokes.length > 0);
}

/** The first of a hand's feeds where all of them would only add accents, to hits that nobody gives. */
function onlyAccents(fed: readonly Fed[]): HandFeed | undefined {
  return fed.every(({ feed }) => feed.use === 'accents') ? fed[0]?.feed : undefined;
}

/** What a hand plays by the feeds alone: hits first, then the accents on them. */
function fedHand(hand: HandName, fed: readonly Fed[]): Draft[] {
  const raised = onlyAccents(fed);
  const useOf = (feed: HandFeed) => (feed === raised ? RAISED_USE : feed.use);
  const hits = fed.reduce<Draft[]>((drafts, { feed, strokes }) => {
    if (useOf(feed) === 'accents') return drafts;
    const all = draftsOf(hand, strokes, feed);
    return merged(drafts, useOf(feed) === 'every-stroke' ? all : standingOut(all));
  }, []);
  return fed.reduce(
    (drafts, { feed, strokes }) => (useOf(feed) === 'accents' ? accented(drafts, strokes) : drafts),
    hits,
  );
}

/**
 * Parts of the band that would leave a hand empty, since they only add accents there and nobody gives it
 * hits: their strong strokes are played instead (`RAISED_USE`). At most one for each hand.
 */
export function raisedFeeds(
  sources: readonly Source[],
  rules: HandRules = HAND_RULES,
): readonly HandFeed[] {
  return (['left', 'right'] as const).flatMap(
    (hand) => onlyAccents(feedsOf(hand, sources, rules.feeds)) ?? [],
  );
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

/**
 * A hand with the help it needs. Whether it needs any is told by all that its feeds have for it, so that who
 * chooses fewer of their strokes gets fewer hits and no others.
 */
function withFallbacks(
  hand: HandName,
  fed: readonly Fed[],
  sources: readonly Source[],
  rules: HandRules,
  frame: HandFrame,
): readonly Draft[] {
  const everyStroke = fed.map(({ feed, strokes }) => ({
    feed: { ...feed, use: 'every-stroke' as const },
    strokes,
  }));
  let given = fedHand(hand, everyStroke);
  return rules.fallbacks
    .filter((fallback) => fallback.hand === hand)
    .reduce(
      (drafts, fallback) => {
        const isNeeded = fallback.when === 'empty' ? given.length === 0 : isSparse(given, frame);
        if (!isNeeded) return drafts;
        const helping = draftsOf(hand, fallbackStrokes(fallback, sources, frame), fallback);
        const light = helping.map((draft) => ({ ...draft, touch: 'ghost' as const }));
        const help = fallback.touch === 'light' ? light : helping;
        given = merged(given, help);
        return merged(drafts, help);
      },
      fedHand(hand, fed),
    );
}

/**
 * Both hands out of what the band plays, by a table of rules: which source feeds which hand, what its
 * strokes become there, and what helps a hand that would have nothing to do. Only strokes that are
 * played in half of the bars or more count; of several sources of one part the busiest is taken. A part
 * that adds only accents where nobody gives hits is played by its strong strokes (`raisedFeeds`), so no
 * hand is empty for which the band has something. The left hand has a root on the one of every bar
 * where the band strikes, too (`withTheOne`).
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
  const draftsOfHand = (hand: HandName) =>
    withFallbacks(hand, feedsOf(hand, sources, rules.feeds), sources, rules, frame);
  return {
    left: settled(withTheOne(draftsOfHand('left'), sources, frame), frame) as Hands['left'],
    right: settled(draftsOfHand('right'), frame) as Hands['right'],
  };
}
