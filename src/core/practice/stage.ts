import type { Chord } from '../harmony/chord.ts';
import type { SectionId } from '../ids.ts';
import { unreachable } from '../result.ts';
import type { Level } from '../rhythm/levels.ts';
import type { Timeline } from '../song/timeline.ts';
import { sameChord } from './chordChange.ts';
import type { SoundingHands } from './soundingHands.ts';

/**
 * What a stage of a drill goes through, round and round: the drill's held chord, two chords in turn,
 * a section, or a join: the last bar of one section and the first of the one that follows it.
 */
export type Passage =
  | { readonly kind: 'one-chord' }
  | { readonly kind: 'two-chords'; readonly first: Chord; readonly second: Chord }
  | { readonly kind: 'section'; readonly sectionId: SectionId }
  | { readonly kind: 'join'; readonly from: SectionId; readonly to: SectionId };

/**
 * One step on the way from the first slow pass to the song: what is gone through, which hands the
 * tool sounds (the player plays the others, or both; those that are set for all playing without), and
 * the level of the part; all of it without. `id` names the stage among those of its list.
 */
export type Stage = {
  readonly id: string;
  readonly passage: Passage;
  readonly tool?: SoundingHands;
  readonly level?: Level;
};

/** Whether two passages are the same; chords are the same where they are written alike. */
export function samePassage(one: Passage, other: Passage): boolean {
  switch (one.kind) {
    case 'one-chord':
      return other.kind === 'one-chord';
    case 'two-chords':
      return (
        other.kind === 'two-chords' &&
        sameChord(one.first, other.first) &&
        sameChord(one.second, other.second)
      );
    case 'section':
      return other.kind === 'section' && one.sectionId === other.sectionId;
    case 'join':
      return other.kind === 'join' && one.from === other.from && one.to === other.to;
    default:
      return unreachable(one);
  }
}

/** Bars of a timeline by index, the end exclusive. */
type Bars = { readonly firstBar: number; readonly endBar: number };

/**
 * The bars of the song in which a passage first comes; undefined for chords by themselves, and for
 * what the song does not play.
 */
export function barsOfPassage(timeline: Timeline, passage: Passage): Bars | undefined {
  switch (passage.kind) {
    case 'one-chord':
    case 'two-chords':
      return undefined;
    case 'section': {
      const place = timeline.sections.findIndex((span) => span.sectionId === passage.sectionId);
      return place < 0 ? undefined : barsFrom(timeline, place);
    }
    case 'join': {
      const place = timeline.sections.findIndex(
        (span, i) =>
          span.sectionId === passage.to && timeline.sections[i - 1]?.sectionId === passage.from,
      );
      if (place < 0) return undefined;
      const { firstBar } = barsFrom(timeline, place);
      return { firstBar: firstBar - 1, endBar: firstBar + 1 };
    }
    default:
      return unreachable(passage);
  }
}

function barsFrom({ sections }: Timeline, place: number): Bars {
  const firstBar = sections.slice(0, place).reduce((bars, span) => bars + span.bars, 0);
  return { firstBar, endBar: firstBar + (sections[place]?.bars ?? 0) };
}

/** Whether the song has what a stage goes through; chords by themselves are always there. */
export function isThere(timeline: Timeline, { passage }: Stage): boolean {
  const needsBars = passage.kind === 'section' || passage.kind === 'join';
  return !needsBars || barsOfPassage(timeline, passage) !== undefined;
}
