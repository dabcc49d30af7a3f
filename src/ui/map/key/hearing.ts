import type { PhraseRequest } from '../../../app/score.ts';
import type { Chord } from '../../../core/harmony/chord.ts';
import type { PatternId } from '../../../core/ids.ts';
import { chordRow, type Pace } from '../../../core/song/chordRow.ts';
import { sectionBars } from '../../../core/song/form.ts';
import { slotsBetween } from '../../../core/song/slotsBetween.ts';
import type { ChordSlot, PatternChoice, Section } from '../../../core/song/song.ts';
import { barTicks, type Meter } from '../../../core/time/meter.ts';
import { heldKeys, type Voicing } from '../../../core/voicing/voicing.ts';

/** A request to hear a row of chords in a meter, held. */
export function rowRequest(chords: readonly Chord[], meter: Meter, pace: Pace): PhraseRequest {
  return {
    kind: 'phrase',
    phrase: { meter, barMeters: [], slots: chordRow(chords, meter, pace) },
  };
}

/** The section's slots with the hands in which they are played, as far as these are known. */
function inHands(slots: readonly ChordSlot[], voicings: readonly Voicing[]): ChordSlot[] {
  return slots.map((slot, i) => {
    const voicing = voicings[i];
    return voicing ? { ...slot, fixedKeys: heldKeys(voicing) } : slot;
  });
}

/** A request to hear a section in its hands (one voicing for each slot), held or with patterns. */
export function sectionRequest(
  { meter, barMeters, slots }: Section,
  voicings: readonly Voicing[],
  choice: PatternChoice = {},
): PhraseRequest {
  const phrase = { meter, barMeters, slots: inHands(slots, voicings) };
  return { kind: 'phrase', phrase, ...choice };
}

/** A request to hear one bar (0-based) of a section, as `sectionRequest`; undefined outside the section. */
export function barRequest(
  section: Section,
  bar: number,
  voicings: readonly Voicing[],
  patternId?: PatternId,
): PhraseRequest | undefined {
  const found = sectionBars(section)[bar];
  if (!found) return undefined;
  const { meter, startTick } = found;
  const slots = inHands(section.slots, voicings);
  const within = slotsBetween(slots, startTick, startTick + barTicks(meter));
  const phrase = { meter, barMeters: [], slots: within };
  return { kind: 'phrase', phrase, ...(patternId !== undefined && { patternId }) };
}

/** A request to hear the chord of one slot in its hands, held for a bar; undefined for N.C. */
export function chordRequest(
  { meter, slots }: Section,
  slot: number,
  voicings: readonly Voicing[],
): PhraseRequest | undefined {
  const found = inHands(slots, voicings)[slot];
  if (!found || found.chord === 'no-chord') return undefined;
  const held = { ...found, durationTicks: barTicks(meter) };
  return { kind: 'phrase', phrase: { meter, barMeters: [], slots: [held] } };
}
