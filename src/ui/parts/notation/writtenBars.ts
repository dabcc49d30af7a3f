import type { Key } from '../../../core/harmony/key.ts';
import type { Letter } from '../../../core/harmony/pitch.ts';
import type {
  NoteValue,
  Sheet,
  SheetBar,
  SheetEvent,
  SheetNote,
  SheetVoice,
} from '../../../core/rhythm/sheet.ts';
import type { HandName } from '../../../core/voicing/voicing.ts';
import { REST_REACH, SPACE, type Units } from './glyphs.ts';
import { type StaffPlace, signatureSigns, staffPlace } from './staffPlaces.ts';
import { type StemDirection, stemDirections } from './stemDirections.ts';

/** A head on its place; `sign` is the alteration of the accidental written before it, where one is (0 a natural). */
export type NoteHead = {
  readonly note: SheetNote;
  readonly place: StaffPlace;
  readonly sign?: number;
};

/** A written value with its heads from the lowest up; a rest has none and stands at `restPlace`. */
export type WrittenEvent = {
  readonly event: SheetEvent;
  readonly stem: StemDirection;
  readonly heads: readonly NoteHead[];
  readonly restPlace: StaffPlace;
};

export type WrittenVoice = readonly WrittenEvent[];

/** A bar with all that is decided about its notes before they are spaced. */
export type EngravedBar = {
  readonly bar: SheetBar;
  readonly staves: Readonly<Record<HandName, readonly WrittenVoice[]>>;
};

/** How far the rests of two voices stand from the middle line at least, in half spaces (common practice). */
const REST_OFFSET = 4;

/** Half a head, and room between it and a rest. */
const HEAD_CLEAR: Units = 9;

/**
 * The bars of a sheet with stems and accidentals. An accidental is written where a note differs
 * from the key signature or from what stood at its place before in the bar, and as a reminder where
 * the bar before altered the same place; never on a note that is tied from before (common practice).
 */
export function writtenBars(sheet: Sheet, key: Key): EngravedBar[] {
  const right = signWriter(key);
  const left = signWriter(key);
  return sheet.bars.map((bar) => ({
    bar,
    staves: {
      right: writtenStaff(bar.staves.right, 'right', right),
      left: writtenStaff(bar.staves.left, 'left', left),
    },
  }));
}

type SignOf = (note: SheetNote) => number | undefined;

function writtenStaff(
  voices: readonly SheetVoice[],
  hand: HandName,
  startBar: () => SignOf,
): WrittenVoice[] {
  const signOf = startBar();
  const events = voices.flat().toSorted((a, b) => a.startTick - b.startTick);
  const heads = new Map(events.map((event) => [event, headsOf(event, hand, signOf)]));
  return voices.map((voice, v) => {
    const places = voice.map((event) => heads.get(event)!.map(({ place }) => place));
    const fixed = voices.length < 2 ? undefined : v === 0 ? 'up' : 'down';
    const stems = stemDirections(voice, places, fixed);
    const restPlaceOf = ({ startTick, written }: SheetEvent): StaffPlace => {
      if (fixed === undefined) return 0;
      const beside = (voices[1 - v] ?? []).find((other) => other.startTick === startTick);
      return restPlaceBeside(written.value, beside ? heads.get(beside)! : [], fixed);
    };
    return voice.map((event, i) => ({
      event,
      stem: stems[i]!,
      heads: heads.get(event)!,
      restPlace: restPlaceOf(event),
    }));
  });
}

/** Where a rest of the upper or the lower voice stands clear of the other voice's heads; always on a line. */
function restPlaceBeside(
  value: NoteValue,
  heads: readonly NoteHead[],
  side: StemDirection,
): StaffPlace {
  const out = side === 'up' ? 1 : -1;
  const { above, below } = REST_REACH[value];
  const room = HEAD_CLEAR + (side === 'up' ? below : above);
  const clear = heads.map(({ place }) => place * out + room / (SPACE / 2));
  return 2 * Math.ceil(Math.max(REST_OFFSET, ...clear) / 2) * out;
}

function headsOf(event: SheetEvent, hand: HandName, signOf: SignOf): NoteHead[] {
  return event.notes
    .map((note) => ({ note, place: staffPlace(note.pitch, hand) }))
    .toSorted((a, b) => a.place - b.place || a.note.keyNumber - b.note.keyNumber)
    .map((head) => {
      const sign = signOf(head.note);
      return sign === undefined ? head : { ...head, sign };
    });
}

/** Remembers the accidentals of one staff; each call begins a bar and gives what is written before each of its notes in turn. */
function signWriter(key: Key): () => SignOf {
  const signature = new Map<Letter, number>(
    signatureSigns(key).map(({ letter, alteration }) => [letter, alteration]),
  );
  let before = new Map<string, number>();
  let now = new Map<string, number>();
  return () => {
    before = now;
    now = new Map();
    return ({ pitch, tiedFromBefore }) => {
      if (tiedFromBefore) return undefined;
      const { letter, octave, alteration } = pitch;
      const place = letter + octave;
      const usual = signature.get(letter) ?? 0;
      const inForce = now.get(place) ?? usual;
      const reminds = !now.has(place) && (before.get(place) ?? usual) !== alteration;
      now.set(place, alteration);
      return alteration !== inForce || reminds ? alteration : undefined;
    };
  };
}
