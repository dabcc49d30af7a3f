import * as v from 'valibot';
import { DIVISIONS, MOST_PATTERN_BARS, type Pattern, TOUCHES } from '../core/rhythm/pattern.ts';
import { SOURCE_PARTS } from '../core/rhythm/sources.ts';
import { BASS_TONES, type BassTone, VOICE_TONES, type VoiceTone } from '../core/rhythm/tones.ts';
import {
  countSchema,
  countUpTo,
  idSchema,
  list,
  meterSchema,
  recordOf,
  shareSchema,
  swingSchema,
  textSchema,
  wholeSchema,
} from './schemaParts.ts';

function hitsSchema<Tone extends BassTone | VoiceTone>(tones: readonly Tone[]) {
  return list(
    recordOf({
      at: wholeSchema,
      length: countSchema,
      play: v.pipe(v.array(v.picklist(tones)), v.nonEmpty(), v.readonly()),
      touch: v.picklist(TOUCHES),
      held: v.boolean(),
      anticipates: v.exactOptional(v.boolean()),
    }),
  );
}

const handsEntries = { left: hitsSchema(BASS_TONES), right: hitsSchema(VOICE_TONES) };

const strokeSchema = recordOf({
  at: wholeSchema,
  length: countSchema,
  strength: shareSchema,
  presence: shareSchema,
  what: list(v.picklist([...BASS_TONES, ...VOICE_TONES, 'unpitched'])),
});

const sourceSchema = recordOf({
  id: textSchema,
  name: textSchema,
  part: v.picklist(SOURCE_PARTS),
  strokes: list(strokeSchema),
});

/** The form of a pattern as data; that its parts fit each other is for `patternFaults`. */
export const patternSchema = recordOf({
  id: idSchema,
  name: textSchema,
  meter: meterSchema,
  bars: countUpTo(MOST_PATTERN_BARS),
  divisions: list(v.picklist(DIVISIONS)),
  swing: swingSchema,
  sources: list(sourceSchema),
  ...handsEntries,
  ending: v.exactOptional(
    recordOf({ ...handsEntries, divisions: v.exactOptional(list(v.picklist(DIVISIONS))) }),
  ),
  variationOf: v.exactOptional(idSchema),
  pedal: v.exactOptional(v.literal('by-chord')),
}) satisfies v.GenericSchema<unknown, Pattern>;
