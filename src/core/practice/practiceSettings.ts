import type { Chord } from '../harmony/chord.ts';
import type { PatternId } from '../ids.ts';
import type { ClickManner } from '../rhythm/click.ts';
import type { ClickRests } from '../rhythm/clickRests.ts';
import type { SoundingHands } from './soundingHands.ts';
import type { Stage } from './stage.ts';
import type { TempoLadder } from './tempoLadder.ts';

/**
 * `on` silences the click without forgetting the choice; `level` 0 to 1 is its share beside the band
 * and hands. Without `rests` it never rests; the count-in is clicked unless it is `spoken`, and is
 * heard in any case.
 */
export type ClickSettings = ClickManner & {
  readonly on: boolean;
  readonly level: number;
  readonly rests?: ClickRests;
  readonly countInBars: 0 | 1 | 2;
  readonly countInVoice?: 'clicked' | 'spoken';
};

/**
 * The drill: the held chord, the pattern (the first of the song where none is chosen), the ladder, and
 * the stages that lead into the song; those that are proposed where the player has no list of their own.
 */
export type DrillSettings = {
  readonly chord: Chord;
  readonly patternId?: PatternId;
  readonly ladder: TempoLadder;
  /** Bars held to one pass; at least the pattern's own length is played. */
  readonly barsPerPass: number;
  /** Whether the count-in comes once at the start or again at each new rung, to hear its tempo first. */
  readonly countInAt: 'start' | 'every-rung';
  readonly stages?: readonly Stage[];
  /** Which hands the tool sounds in the drill; those of the song where it has none of its own. */
  readonly hands?: SoundingHands;
};

/** Everything about practising that is saved with the song. */
export type PracticeSettings = {
  readonly click: ClickSettings;
  readonly hands: SoundingHands;
  readonly band: boolean;
  readonly drill: DrillSettings;
};
