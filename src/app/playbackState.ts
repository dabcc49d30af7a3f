import type { Bpm } from '../core/time/tempoMap.ts';
import type { DrillPlace, DrillWish } from './drillCourse.ts';
import type { PlayRequest, ScoreProblem } from './score.ts';

/** Why nothing plays: what was to be played, the sound that the browser did not give, or the system that took it away. */
export type PlaybackProblem =
  | ScoreProblem
  | { readonly kind: 'no-sound'; readonly reason: string }
  | { readonly kind: 'interrupted' };

/** What plays, as far as a page must be drawn anew for it; where in it is live (`position`). */
export type PlaybackState =
  | { readonly status: 'stopped'; readonly problem?: PlaybackProblem }
  | { readonly status: 'starting'; readonly request: PlayRequest }
  | {
      readonly status: 'playing';
      readonly request: PlayRequest;
      readonly bpm: Bpm;
      readonly drill?: DrillPlace;
      /** The rung (from 0) and the stage that a drill goes to with its next pass, where one was chosen. */
      readonly wanted?: DrillWish;
      /** Which time the song, or what of it was asked for, is played; from 1. */
      readonly time?: number;
      /** The bar of the song that follows at the next bar line, where a jump was asked for. */
      readonly wantedBar?: number;
    };
