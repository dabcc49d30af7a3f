import * as v from 'valibot';
import type { PracticeSettings } from '../core/practice/practiceSettings.ts';
import { CLIMB_ORDERS, LADDER_STEPS } from '../core/practice/tempoLadder.ts';
import type { Project } from '../core/project.ts';
import { CLICK_SOUNDS } from '../core/rhythm/click.ts';
import { LONGEST_CLICK_REST } from '../core/rhythm/clickRests.ts';
import { SPANS, type VoicingSettings, WEIGHTS } from '../core/voicing/voicing.ts';
import { patternSchema } from './patternSchema.ts';
import {
  chordSchema,
  countUpTo,
  idSchema,
  keyNumberSchema,
  list,
  recordOf,
  shareSchema,
  wholeSchema,
  within,
} from './schemaParts.ts';
import { bpmSchema, songSchema } from './songSchema.ts';

const weightSchema = within(WEIGHTS);

const voicingSchema = recordOf({
  manner: v.picklist(['close', 'open', 'shell', 'rootless']),
  spanSemitones: v.pipe(wholeSchema, within(SPANS)),
  rightLowest: keyNumberSchema,
  rightHighest: keyNumberSchema,
  leftLowest: keyNumberSchema,
  leftHighest: keyNumberSchema,
  bass: v.picklist(['single', 'octave', 'fifth', 'tenth', 'elsewhere']),
  fullness: v.picklist([3, 4, 5]),
  weights: recordOf({
    motion: weightSchema,
    topLeap: weightSchema,
    leftLeap: weightSchema,
    register: weightSchema,
    lowIntervals: weightSchema,
    handGap: weightSchema,
  }),
}) satisfies v.GenericSchema<unknown, VoicingSettings>;

const levelSchema = v.picklist([1, 2, 3, 4, 5]);

const ladderSchema = recordOf({
  startBpm: bpmSchema,
  goalBpm: bpmSchema,
  step: v.variant('kind', [
    recordOf({ kind: v.literal('bpm'), bpm: within(LADDER_STEPS) }),
    recordOf({ kind: v.literal('percent'), percent: within(LADDER_STEPS) }),
    recordOf({ kind: v.literal('marks') }),
  ]),
  passesPerRung: countUpTo(1000),
  climb: v.picklist(['always', 'when-clean', 'by-hand']),
  fallBackAfter: v.exactOptional(countUpTo(1000)),
  order: v.exactOptional(v.picklist(['rising', 'alternating'])),
  levels: v.exactOptional(recordOf({ from: levelSchema, order: v.picklist(CLIMB_ORDERS) })),
});

const soundingHandsSchema = v.picklist(['left', 'right', 'both', 'none']);

const stageSchema = recordOf({
  id: idSchema,
  passage: v.variant('kind', [
    recordOf({ kind: v.literal('one-chord') }),
    recordOf({ kind: v.literal('two-chords'), first: chordSchema, second: chordSchema }),
    recordOf({ kind: v.literal('section'), sectionId: idSchema }),
    recordOf({ kind: v.literal('join'), from: idSchema, to: idSchema }),
  ]),
  tool: v.exactOptional(soundingHandsSchema),
  level: v.exactOptional(levelSchema),
});

/** More stages than these no list has use for. */
const MOST_STAGES = 100;

const practiceSchema = recordOf({
  click: recordOf({
    on: v.boolean(),
    beats: v.lazy((beats) =>
      Array.isArray(beats)
        ? list(wholeSchema)
        : v.picklist(['all', 'groups', 'downbeat', 'back-beat']),
    ),
    subdivision: v.exactOptional(v.picklist(['quarters', 'eighths', 'triplets', 'sixteenths'])),
    sound: v.exactOptional(v.picklist(CLICK_SOUNDS)),
    level: shareSchema,
    rests: v.exactOptional(
      recordOf({
        sounding: countUpTo(LONGEST_CLICK_REST),
        resting: countUpTo(LONGEST_CLICK_REST),
      }),
    ),
    countInBars: v.picklist([0, 1, 2]),
    countInVoice: v.exactOptional(v.picklist(['clicked', 'spoken'])),
  }),
  hands: soundingHandsSchema,
  band: v.boolean(),
  drill: recordOf({
    chord: chordSchema,
    patternId: v.exactOptional(idSchema),
    hands: v.exactOptional(soundingHandsSchema),
    ladder: ladderSchema,
    barsPerPass: countUpTo(1000),
    countInAt: v.picklist(['start', 'every-rung']),
    stages: v.exactOptional(v.pipe(list(stageSchema), v.maxLength(MOST_STAGES))),
  }),
}) satisfies v.GenericSchema<unknown, PracticeSettings>;

/** The form of a project as data; that its parts fit each other is for `projectFaults`. */
export const projectSchema = recordOf({
  id: idSchema,
  song: songSchema,
  patterns: list(patternSchema),
  voicing: voicingSchema,
  practice: practiceSchema,
}) satisfies v.GenericSchema<unknown, Project>;
