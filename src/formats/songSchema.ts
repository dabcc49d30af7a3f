import * as v from 'valibot';
import { SECTION_KINDS, type Song, WASHES } from '../core/song/song.ts';
import { MOST_BARS } from '../core/song/songLength.ts';
import { BEAT_TICKS, BPM_RANGE } from '../core/time/tempoMap.ts';
import {
  chordSchema,
  countUpTo,
  heldKeysSchema,
  idSchema,
  list,
  meterSchema,
  pitchClassSchema,
  recordOf,
  textSchema,
  wholeSchema,
  within,
} from './schemaParts.ts';

/** A tempo that can be set, in felt beats a minute. */
export const bpmSchema = within(BPM_RANGE);

/** About five thousand bars of 4/4. */
const LONGEST_SLOT_TICKS = 10_000_000;

const slotSchema = recordOf({
  chord: v.lazy((chord) => (typeof chord === 'string' ? v.literal('no-chord') : chordSchema)),
  durationTicks: countUpTo(LONGEST_SLOT_TICKS),
  fixedKeys: v.exactOptional(recordOf({ left: heldKeysSchema, right: heldKeysSchema })),
});

const barsSchema = v.pipe(wholeSchema, v.maxValue(MOST_BARS));

const barMetersSchema = list(recordOf({ bar: barsSchema, meter: meterSchema }));

const patternChangesSchema = list(
  recordOf({
    bar: countUpTo(MOST_BARS),
    patternId: v.exactOptional(idSchema),
  }),
);

const sectionSchema = recordOf({
  id: idSchema,
  name: textSchema,
  kind: v.picklist(SECTION_KINDS),
  wash: v.picklist(WASHES),
  meter: meterSchema,
  barMeters: barMetersSchema,
  slots: list(slotSchema),
  patternId: v.exactOptional(idSchema),
  patternChanges: v.exactOptional(patternChangesSchema),
});

const endingSchema = recordOf({
  replacesBars: barsSchema,
  slots: v.pipe(
    list(slotSchema),
    v.check((slots) => slots.length > 0, 'at least one chord'),
  ),
  barMeters: barMetersSchema,
});

const formEntrySchema = recordOf({
  id: idSchema,
  sectionId: idSchema,
  patternId: v.exactOptional(idSchema),
  patternChanges: v.exactOptional(patternChangesSchema),
  ending: v.exactOptional(endingSchema),
});

/** The form of a song as data; that its parts fit each other is for `songFaults`. */
export const songSchema = recordOf({
  title: textSchema,
  key: recordOf({ tonic: pitchClassSchema, mode: v.picklist(['major', 'minor']) }),
  tempo: recordOf({ bpm: bpmSchema, beatTicks: v.pipe(wholeSchema, within(BEAT_TICKS)) }),
  sections: list(sectionSchema),
  form: list(formEntrySchema),
  notes: textSchema,
}) satisfies v.GenericSchema<unknown, Song>;
