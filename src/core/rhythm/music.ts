import { ok, type Result } from '../result.ts';
import type { Timeline } from '../song/timeline.ts';
import type { Voicing } from '../voicing/voicing.ts';
import { type ClickManner, clickTrack } from './click.ts';
import { heldNotes } from './heldNotes.ts';
import type { NoPatternForMeter } from './laidBars.ts';
import type { Note } from './note.ts';
import type { PatternAt } from './patternAt.ts';
import { type PedalSpan, pedalSpans } from './pedal.ts';
import { realise } from './realise.ts';
import { realiseBand } from './realiseBand.ts';

/**
 * What music is made of. `voicings` has one entry for each of `timeline.chords`, in order.
 * `loop`: it is played round and round (see `realise`). `click`: how it clicks; silent
 * without.
 */
export type MusicPlan = {
  readonly timeline: Timeline;
  readonly voicings: readonly Voicing[];
  readonly patternAt: PatternAt;
  readonly loop?: boolean;
  readonly click?: ClickManner;
};

/** All that a timeline sounds like, part by part, and when the pedal is down. */
export type Music = {
  readonly hands: readonly Note[];
  readonly band: readonly Note[];
  readonly click: readonly Note[];
  readonly pedals: readonly PedalSpan[];
};

/**
 * The one way from chords, hands and patterns to music: what both hands play, the band and the click over
 * the whole timeline, in ticks, and the pedal that goes with the hands. A song, a section, a drill and the
 * bars of a join differ in the plan alone. A bar whose meter is not its pattern's is the error.
 */
export function musicOf(plan: MusicPlan): Result<Music, NoPatternForMeter> {
  const { timeline, voicings, patternAt, loop = false } = plan;
  const hands = realise(timeline, voicings, patternAt, { loop });
  if (!hands.ok) return hands;
  return ok({
    hands: hands.value,
    band: realiseBand(timeline, voicings, patternAt, { loop }),
    click: plan.click ? clickTrack(timeline, plan.click) : [],
    pedals: pedalSpans(timeline, patternAt, hands.value),
  });
}

/**
 * Music where every chord may also simply be held: as `musicOf`, but with all chords held, each for its length, where no
 * bar has a pattern or one has a pattern of another meter.
 */
export function musicOrHeld(plan: MusicPlan): Music {
  const { timeline, voicings, patternAt } = plan;
  const isHeld = timeline.bars.every((bar, i) => !patternAt(bar, i));
  const played = isHeld ? undefined : musicOf(plan);
  if (played?.ok) return played.value;
  const hands = heldNotes(timeline, voicings);
  return {
    hands,
    band: [],
    click: plan.click ? clickTrack(timeline, plan.click) : [],
    pedals: pedalSpans(timeline, patternAt, hands),
  };
}
