import { unreachable } from '../result.ts';
import {
  barTicks,
  beatLengths,
  beatStarts,
  groupStarts,
  hasGroupedBeats,
  type Meter,
} from '../time/meter.ts';
import { TICKS_PER_QUARTER, type Ticks } from '../time/ticks.ts';
import type { HandName } from '../voicing/voicing.ts';
import {
  HAND_RULES,
  type HandFallback,
  type HandFeed,
  type HandPlaces,
  type HandRules,
  SPARSE_HITS,
  type StrokeLength,
  type StrokePlay,
} from './handRules.ts';
import type { Hands, Hit, Pattern, Touch } from './pattern.ts';
import { PLAYED_PRESENCE, type Source, type Stroke, type StrokeTone } from './sources.ts';
import { BASS_TONES, type BassTone, VOICE_TONES, type VoiceTone } from './tones.ts';

/** The bars that the strokes stand in. */
export type HandFrame = Pick<Pattern, 'meter' | 'bars'>;

type Tone = BassTone | VoiceTone;

/** A hit before its length is settled. */
type Draft = {
  readonly at: Ticks;
  readonly play: readonly Tone[];
  readonly touch: Touch;
  readonly length: StrokeLength;
  readonly ownLength: Ticks;
};

const COMMON_TIME: Meter = { beats: 4, unit: 4, groups: [2, 2] };

/** Strokes of at least this share of their source's strongest are accents, under that ghosts, … */
const ACCENT_SHARE = 0.87;
const GHOST_SHARE = 0.55;

/** … unless they all are about alike: then none stands out. */
const ALIKE_RANGE = 0.15;

/** Accents that more than this share of a hand's hits would get tell nothing and are left out. */
const ACCENTED_SHARE = 0.6;

/** A stroke that lasts this share of the way to the next hit is held, and this much is legato. */
const HELD_SHARE = 0.5;
const LEGATO_SHARE = 0.75;

const SHORT_TICKS: Ticks = TICKS_PER_QUARTER / 2;

/** 4/4, as many bars as the strokes need. */
function frameOf(sources: readonly Source[]): HandFrame {
  const last = Math.max(0, ...sources.flatMap(({ strokes }) => strokes.map((s) => s.at)));
  return { meter: COMMON_TIME, bars: Math.floor(last / barTicks(COMMON_TIME)) + 1 };
}

function weightOf(strokes: readonly Stroke[]): number {
  return strokes.reduce((sum, s) => sum + s.presence * s.strength, 0);
}

/** The strokes that are played in half of the bars or more, of the part's busiest source. */
function strokesOf(sources: readonly Source[], part: Source['part']): readonly Stroke[] {
  return sources
    .filter((source) => source.part === part)
    .map(({ strokes }) => strokes.filter((s) => s.presence >= PLAYED_PRESENCE))
    .reduce<readonly Stroke[]>((best, s) => (weightOf(s) > weightOf(best) ? s : best), []);
}

/** How each stroke is touched, beside the others of its source. */
function touchOf(stroke: Stroke, all: readonly Stroke[]): Touch {
  const strengths = all.map((s) => s.strength);
  const strongest = Math.max(...strengths);
  if (strongest - Math.min(...strengths) < ALIKE_RANGE) return 'plain';
  if (stroke.strength < GHOST_SHARE * strongest) return 'ghost';
  return stroke.strength >= ACCENT_SHARE * strongest ? 'accent' : 'plain';
}

/** Voices that lie under one hand without moving it: a triad and its octave. */
const VOICES_IN_REACH = 4;

/** Number of a single voice from the bottom; 0 for any other tone. */
function voiceNumber(tone: StrokeTone): number {
  return Number(/^voice-(\d)$/.exec(tone)?.[1] ?? 0);
}

/** Picked voices, drawn together where they use more than lie under one hand; other tones as they are. */
function inReach(strokes: readonly Stroke[]): Stroke[] {
  const highest = Math.max(...strokes.flatMap(({ what }) => what.map(voiceNumber)));
  if (highest <= VOICES_IN_REACH) return [...strokes];
  const drawn = (tone: StrokeTone): StrokeTone => {
    const voice = voiceNumber(tone);
    return voice === 0
      ? tone
      : (`voice-${Math.ceil((voice * VOICES_IN_REACH) / highest)}` as StrokeTone);
  };
  return strokes.map((stroke) => ({ ...stroke, what: [...new Set(stroke.what.map(drawn))] }));
}

/** The tones that a hand can play of those asked for; what it can't becomes its plainest tone. */
function tonesFor(hand: HandName, play: StrokePlay, stroke: Pick<Stroke, 'what'>): Tone[] {
  const asked: readonly string[] = play === 'own' ? stroke.what : play;
  const known: readonly Tone[] = hand === 'left' ? BASS_TONES : VOICE_TONES;
  const tones = known.filter((tone) => asked.includes(tone));
  return tones.length > 0 ? tones : [hand === 'left' ? 'root' : 'all'];
}

function draftsOf(
  hand: HandName,
  strokes: readonly Stroke[],
  { play, length }: { readonly play: StrokePlay; readonly length: StrokeLength },
): Draft[] {
  return inReach(strokes).map((stroke) => ({
    at: stroke.at,
    play: tonesFor(hand, play, stroke),
    touch: touchOf(stroke, strokes),
    length,
    ownLength: stroke.length,
  }));
}

/** Both lists as one, ascending; where they meet the first one's tones stay, and the heavier touch. */
function merged(first: readonly Draft[], second: readonly Draft[]): Draft[] {
  const weights: Readonly<Record<Touch, number>> = { ghost: 0, plain: 1, accent: 2 };
  const bySecond = new Map(second.map((draft) => [draft.at, draft]));
  const kept = first.map((draft) => {
    const other = bySecond.get(draft.at);
    return other && weights[other.touch] > weights[draft.touch]
      ? { ...draft, touch: other.touch }
      : draft;
  });
  const taken = new Set(first.map((draft) => draft.at));
  return [...kept, ...second.filter((draft) => !taken.has(draft.at))].toSorted(
    (a, b) => a.at - b.at,
  );
}

/** Accents where the other source strikes too, unless nearly every hit would get one. */
function accented(drafts: readonly Draft[], strokes: readonly Stroke[]): Draft[] {
  const struck = new Set(
    strokes.filter((s) => touchOf(s, strokes) !== 'ghost').map((stroke) => stroke.at),
  );
  const result = drafts.map((draft) =>
    struck.has(draft.at) && draft.touch === 'plain'
      ? { ...draft, touch: 'accent' as const }
      : draft,
  );
  const accents = result.filter((draft) => draft.touch === 'accent').length;
  return accents <= ACCENTED_SHARE * result.length ? result : [...drafts];
}

/** The accents; where there are none, all that is not a ghost. */
function standingOut(drafts: readonly Draft[]): Draft[] {
  const accents = drafts.filter((draft) => draft.touch === 'accent');
  return accents.length > 0 ? accents : drafts.filter((draft) => draft.touch !== 'ghost');
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

function halfBeatStarts(meter: Meter): Ticks[] {
  // A dotted beat divides in three, so its half beats are its eighths.
  const parts = hasGroupedBeats(meter) ? 3 : 2;
  const lengths = beatLengths(meter);
  return beatStarts(meter).flatMap((start, i) =>
    Array.from({ length: parts }, (_, part) => start + Math.round((part * lengths[i]!) / parts)),
  );
}

/** The beats between the stressed ones: 2 and 4, or 2 and 3 of three; in 6/8 the second beat. */
function weakBeatStarts(meter: Meter): Ticks[] {
  const stressed = hasGroupedBeats(meter) ? [0] : groupStarts(meter);
  const weak = beatStarts(meter).filter((start) => !stressed.includes(start));
  return weak.length > 0 ? weak : beatStarts(meter);
}

const PLACES: Readonly<Record<Exclude<HandPlaces, 'all'>, (meter: Meter) => readonly Ticks[]>> = {
  'half-beats': halfBeatStarts,
  beats: beatStarts,
  'weak-beats': weakBeatStarts,
  groups: groupStarts,
  downbeats: () => [0],
};

function placesIn(frame: HandFrame, at: Exclude<HandPlaces, 'all'>): Ticks[] {
  const bar = barTicks(frame.meter);
  return Array.from({ length: frame.bars }, (_, i) =>
    PLACES[at](frame.meter).map((start) => i * bar + start),
  ).flat();
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

function withFallbacks(
  hand: HandName,
  fed: readonly Draft[],
  sources: readonly Source[],
  rules: HandRules,
  frame: HandFrame,
): readonly Draft[] {
  const beats = frame.bars * beatStarts(frame.meter).length;
  return rules.fallbacks
    .filter((fallback) => fallback.hand === hand)
    .reduce((drafts, fallback) => {
      const isNeeded =
        fallback.when === 'empty' ? drafts.length === 0 : drafts.length < SPARSE_HITS * beats;
      if (!isNeeded) return drafts;
      const helping = draftsOf(hand, fallbackStrokes(fallback, sources, frame), fallback);
      const light = helping.map((draft) => ({ ...draft, touch: 'ghost' as const }));
      return merged(drafts, fallback.touch === 'light' ? light : helping);
    }, fed);
}

/** Rounded up to whole sixteenths, or to triplet sixteenths where the hit stands off the sixteenths. */
function onGrid(length: Ticks, at: Ticks): Ticks {
  const unit = at % (TICKS_PER_QUARTER / 4) === 0 ? TICKS_PER_QUARTER / 4 : TICKS_PER_QUARTER / 6;
  return Math.max(1, Math.round(length / unit)) * unit;
}

/** How long a hit stands and whether it sounds so long, with so many ticks to the hand's next hit. */
function lengthOf({ at, length, ownLength }: Draft, gap: Ticks): Pick<Hit, 'length' | 'held'> {
  switch (length) {
    case 'held':
      return { length: gap, held: true };
    case 'short':
      return { length: Math.min(gap, SHORT_TICKS), held: false };
    case 'own':
      if (ownLength >= LEGATO_SHARE * gap) return { length: gap, held: true };
      if (ownLength >= HELD_SHARE * gap || ownLength >= TICKS_PER_QUARTER)
        return { length: Math.min(gap, onGrid(ownLength, at)), held: true };
      return { length: Math.min(gap, onGrid(2 * ownLength, at)), held: false };
    default:
      return unreachable(length);
  }
}

/** Whether a hit that starts between beats is held over the next one: then it may lead into a new chord. */
function anticipates(at: Ticks, length: Ticks, beats: readonly Ticks[]): boolean {
  const next = beats.find((beat) => beat >= at);
  return next !== undefined && next !== at && at + length > next;
}

function settled(drafts: readonly Draft[], frame: HandFrame): Hit[] {
  const bar = barTicks(frame.meter);
  const end = frame.bars * bar;
  const beats = [...placesIn(frame, 'beats'), end];
  const roundAgain = end + (drafts[0]?.at ?? 0);
  return drafts.map((draft, i) => {
    const gap = Math.min(bar, (drafts[i + 1]?.at ?? roundAgain) - draft.at);
    const { length, held } = lengthOf(draft, gap);
    const leads = held && anticipates(draft.at, length, beats);
    const hit = { at: draft.at, length, play: draft.play, touch: draft.touch, held };
    return leads ? { ...hit, anticipates: true } : hit;
  });
}

/**
 * Both hands out of what the band plays, by a table of rules: which source feeds which hand, what its
 * strokes become there, and what helps a hand that would have nothing to do. Only strokes that are
 * played in half of the bars or more count; of several sources of one part the busiest is taken.
 *
 * Each hand has at most one hit at a tick, and every hit ends by the hand's next, the last by the first
 * of the next time round, none after more than a bar. Strokes that stand out from their source are
 * accents, weak ones ghosts; short ones are played short. A held hit that starts between beats and goes
 * on over the next beat `anticipates`. Without strokes both hands are empty.
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
