import {
  Accidental,
  Beam,
  Dot,
  Metrics,
  ModifierContext,
  Stave,
  StaveNote,
  Stem,
  TickContext,
} from 'vexflow/core';
import type { HandName } from '../../../core/voicing/voicing.ts';
import { headWidth, STAFF_REACH, type Units } from './glyphs.ts';
import { pitchAtPlace, type StaffPlace } from './staffPlaces.ts';
import { beamedRuns } from './stemDirections.ts';
import { columnX, type PlacedBar } from './systems.ts';
import { lowerVoiceShift } from './voiceShift.ts';
import type { WrittenEvent, WrittenVoice } from './writtenBars.ts';

/** An event in its place: the library's note and what it was made of. */
export type EngravedNote = {
  readonly note: StaveNote;
  readonly written: WrittenEvent;
  readonly hand: HandName;
  readonly bar: PlacedBar;
  /** How many voices share its staff in its bar. */
  readonly voices: number;
  /** Height of the staff's middle line on the system. */
  readonly middle: Units;
};

/** One voice of one bar; its notes in order, the beams over them. */
export type EngravedVoice = {
  readonly notes: readonly EngravedNote[];
  readonly beams: readonly Beam[];
};

const CLEFS: Readonly<Record<HandName, string>> = { right: 'treble', left: 'bass' };

const SIGN_NAMES: Readonly<Record<number, string>> = {
  [-2]: 'bb',
  [-1]: 'b',
  0: 'n',
  1: '#',
  2: '##',
};

/**
 * The voices of a bar on one hand's staff, whose middle line lies at `middle`, as the library's
 * notes with their final places, stems and beams, not drawn yet.
 */
export function engravedVoices(bar: PlacedBar, hand: HandName, middle: Units): EngravedVoice[] {
  const stave = staffAt(middle);
  const voices = bar.written.staves[hand];
  return voices.map((voice, v) => {
    const notes = voice.map((written): EngravedNote => {
      const note = libraryNote(written, hand);
      const shift = v === 1 ? shiftUnder(voices[0]!, written) : 0;
      putAt(note, stave, eventX(written, bar) + shift);
      return { note, written, hand, bar, voices: voices.length, middle };
    });
    const beams = beamedRuns(voice.map(({ event }) => event))
      .filter((run) => run.length > 1)
      .map((run) => new Beam(run.map((i) => notes[i]!.note)));
    for (const { note } of notes) note.postFormat();
    return { notes, beams };
  });
}

/** A staff of the library on which a note's place is the very one it is given. */
function staffAt(middle: Units): Stave {
  const stave = new Stave(0, middle - STAFF_REACH, 0, { spaceAboveStaffLn: 0 });
  stave.setNoteStartX(-Metrics.get('Stave.padding'));
  stave.setDefaultLedgerLineStyle({ strokeStyle: 'currentColor', lineWidth: 1.6 });
  return stave;
}

function shiftUnder(upper: WrittenVoice, lower: WrittenEvent): Units {
  const above = upper.find(({ event }) => event.startTick === lower.event.startTick);
  return above ? lowerVoiceShift(above, lower) : 0;
}

function eventX({ event }: WrittenEvent, bar: PlacedBar): Units {
  if (!event.isBarRest) return columnX(bar, event.startTick);
  return (bar.notesX + bar.endX) / 2 - headWidth(1) / 2;
}

function libraryNote(written: WrittenEvent, hand: HandName): StaveNote {
  const { event, heads, stem } = written;
  const isRest = heads.length === 0;
  const places = isRest ? [restLine(written)] : heads.map(({ place }) => place);
  const note = new StaveNote({
    keys: places.map((at) => keyName(at, hand)),
    duration: String(event.written.value),
    dots: event.written.dots,
    clef: CLEFS[hand],
    stemDirection: stem === 'up' ? Stem.UP : Stem.DOWN,
    ...(isRest && { type: 'r' }),
  });
  for (const [i, { sign }] of heads.entries())
    if (sign !== undefined) note.addModifier(new Accidental(SIGN_NAMES[sign]!), i);
  if (event.written.dots > 0) Dot.buildAndAttach([note], { all: true });
  return note;
}

/** The line or space that a rest is drawn from: a whole rest hangs from the line over its middle. */
function restLine({ event, restPlace }: WrittenEvent): StaffPlace {
  return event.written.value === 1 && restPlace < 4 ? restPlace + 2 : restPlace;
}

function keyName(at: StaffPlace, hand: HandName): string {
  const { letter, octave } = pitchAtPlace(at, hand);
  return `${letter.toLowerCase()}/${octave}`;
}

function putAt(note: StaveNote, stave: Stave, x: Units): void {
  note.setStave(stave);
  note.addToModifierContext(new ModifierContext());
  new TickContext().addTickable(note).preFormat().setX(x);
}
