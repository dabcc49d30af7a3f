import type { Key } from '../../../core/harmony/key.ts';
import type { Sheet, SheetBar, SheetEvent } from '../../../core/rhythm/sheet.ts';
import { spelledPitch } from '../../../core/rhythm/spelling.ts';
import { sectionBars } from '../../../core/song/form.ts';
import type { ChordSlot, Section } from '../../../core/song/song.ts';
import { TICKS_PER_WHOLE, type Ticks } from '../../../core/time/ticks.ts';
import { type HandName, keysOfHand, type Voicing } from '../../../core/voicing/voicing.ts';
import type { Notation } from './notation.ts';

/** A chord of a section, what the hands hold for it, and where it stands in the row. */
type PlacedChord = { readonly slot: ChordSlot; readonly voicing: Voicing; readonly at: Ticks };

/**
 * The hands of a section's chords as whole notes, in the order of the section. Bar lines stand
 * where bars with new chords begin; bars in which a chord is only held are left out. `voicings` has
 * one entry for each slot.
 */
export function notatedVoicings(
  section: Section,
  voicings: readonly Voicing[],
  key: Key,
): Notation {
  const chords = section.slots.map(
    (slot, i): PlacedChord => ({ slot, voicing: voicings[i] ?? [], at: i * TICKS_PER_WHOLE }),
  );
  return {
    title: section.name,
    sheet: chordSheet(groupedByBar(section, chords)),
    key,
    kind: 'chords',
    words: [],
  };
}

/** The chords that begin in the same bar together. */
function groupedByBar(section: Section, chords: readonly PlacedChord[]): PlacedChord[][] {
  const starts = sectionBars(section).map(({ startTick }) => startTick);
  const groups = new Map<number, PlacedChord[]>();
  let tick = 0;
  for (const chord of chords) {
    const from = tick;
    const bar = starts.findLastIndex((start) => start <= from);
    groups.set(bar, [...(groups.get(bar) ?? []), chord]);
    tick += chord.slot.durationTicks;
  }
  return [...groups.values()];
}

/** One bar for each group, with a whole note's time for each chord. */
function chordSheet(groups: readonly (readonly PlacedChord[])[]): Sheet {
  return {
    bars: groups.map(
      (group): SheetBar => ({
        startTick: group[0]!.at,
        meter: { beats: 4 * group.length, unit: 4, groups: [4 * group.length] },
        section: 0,
        chords: group.map(({ slot, at }) => ({ startTick: at, chord: slot.chord })),
        staves: {
          right: [group.map((chord) => wholeNote(chord, 'right'))],
          left: [group.map((chord) => wholeNote(chord, 'left'))],
        },
      }),
    ),
  };
}

function wholeNote({ slot, voicing, at }: PlacedChord, hand: HandName): SheetEvent {
  const chord = slot.chord === 'no-chord' ? undefined : slot.chord;
  return {
    startTick: at,
    durationTicks: TICKS_PER_WHOLE,
    written: { value: 1, dots: 0 },
    notes: keysOfHand(voicing, hand).map((keyNumber) => ({
      keyNumber,
      pitch: spelledPitch(keyNumber, chord),
      tiedFromBefore: false,
      tiedToNext: false,
    })),
    articulations: [],
  };
}
