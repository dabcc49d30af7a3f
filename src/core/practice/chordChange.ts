import type { Chord } from '../harmony/chord.ts';
import { formatChordSymbol } from '../harmony/chordSymbol.ts';
import type { Semitones } from '../harmony/pitch.ts';
import type { ChordSpan, Timeline } from '../song/timeline.ts';
import type { Ticks } from '../time/ticks.ts';
import { motion } from '../voicing/motion.ts';
import { type HeldKeys, heldKeys, type Voicing } from '../voicing/voicing.ts';

/** A chord with the keys that both hands hold for it. */
export type VoicedChord = { readonly chord: Chord; readonly keys: HeldKeys };

/** Two chords that follow each other within a section: when in the song, and how far both hands move. */
export type ChordChange = {
  readonly atTick: Ticks;
  readonly first: VoicedChord;
  readonly second: VoicedChord;
  readonly motion: Semitones;
};

/** Whether two chords are written alike. */
export function sameChord(one: Chord, other: Chord): boolean {
  return formatChordSymbol(one) === formatChordSymbol(other);
}

/**
 * The changes between different chords within the sections of a song, in playing order; silence
 * between two chords parts them. `voicings` has one entry for each of the timeline's chords.
 */
export function chordChanges(timeline: Timeline, voicings: readonly Voicing[]): ChordChange[] {
  return timeline.chords.flatMap((span, i) => {
    const next = timeline.chords[i + 1];
    if (!next || next.section !== span.section) return [];
    const [first, second] = [voiced(span, voicings[i]), voiced(next, voicings[i + 1])];
    if (!first || !second || sameChord(first.chord, second.chord)) return [];
    const left = motion(first.keys.left, second.keys.left);
    const right = motion(first.keys.right, second.keys.right);
    return [{ atTick: next.startTick, first, second, motion: left + right }];
  });
}

function voiced(span: ChordSpan, voicing: Voicing | undefined): VoicedChord | undefined {
  return span.chord === 'no-chord' || !voicing
    ? undefined
    : { chord: span.chord, keys: heldKeys(voicing) };
}

/** The change that moves the hands furthest, the first of those; undefined where there is none. */
export function hardestChange(changes: readonly ChordChange[]): ChordChange | undefined {
  const furthest = Math.max(...changes.map((change) => change.motion));
  return changes.find((change) => change.motion === furthest);
}
