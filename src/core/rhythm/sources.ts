import type { Ticks } from '../time/ticks.ts';
import type { BassTone, VoiceTone } from './tones.ts';

/** What plays a source; every drum is a source of its own. */
export const SOURCE_PARTS = [
  'bass',
  'picking',
  'strumming',
  'sung',
  'kick',
  'snare',
  'hi-hat',
  'tom',
  'cymbal',
  'percussion',
] as const;

export type SourcePart = (typeof SOURCE_PARTS)[number];

/**
 * What a stroke sounds, as far as a pattern may know: a bass note by its degree against the chord,
 * a picked note by its height among the picked notes, a whole chord, or no pitch that matters.
 */
export type StrokeTone = BassTone | VoiceTone | 'unpitched';

/** What a stroke of each part sounds that says nothing itself; a drum has no pitch (common practice). */
export const USUAL_TONE = {
  bass: 'root',
  picking: 'top',
  strumming: 'all',
  sung: 'top',
  kick: 'unpitched',
  snare: 'unpitched',
  'hi-hat': 'unpitched',
  tom: 'unpitched',
  cymbal: 'unpitched',
  percussion: 'unpitched',
} as const satisfies Readonly<Record<SourcePart, StrokeTone>>;

/**
 * One attack of a source inside a pattern. `strength` 0 to 1; `presence` is the share of the
 * folded bars in which it is played (1 where it was set by hand); `length` is how long it sounds,
 * at the most until the source's next stroke.
 */
export type Stroke = {
  readonly at: Ticks;
  readonly length: Ticks;
  readonly strength: number;
  readonly presence: number;
  readonly what: readonly StrokeTone[];
};

/** From this presence on a stroke belongs to the groove; below it is an ornament or a slip. */
export const PLAYED_PRESENCE = 0.5;

export type Source = {
  readonly id: string;
  readonly name: string;
  readonly part: SourcePart;
  readonly strokes: readonly Stroke[];
};
