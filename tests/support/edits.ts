import * as fc from 'fast-check';
import type { Stage } from '../../src/core/practice/stage.ts';
import { CLIMB_ORDERS } from '../../src/core/practice/tempoLadder.ts';
import { parseCounts } from '../../src/core/rhythm/counts.ts';
import type { Level } from '../../src/core/rhythm/levels.ts';
import { doubleNoteValues, halveNoteValues } from '../../src/core/rhythm/noteValues.ts';
import {
  DIVISIONS,
  type LeftHit,
  type Pattern,
  type RightHit,
  TOUCHES,
} from '../../src/core/rhythm/pattern.ts';
import {
  copyBar,
  copyBeat,
  fillBetween,
  mirrorHands,
  shiftHits,
} from '../../src/core/rhythm/patternMoves.ts';
import { SOURCE_PARTS } from '../../src/core/rhythm/sources.ts';
import { thinHands } from '../../src/core/rhythm/thin.ts';
import { BASS_TONES, VOICE_TONES } from '../../src/core/rhythm/tones.ts';
import { SECTION_KINDS, WASHES } from '../../src/core/song/song.ts';
import { FORM_TEMPLATES } from '../../src/core/song/templates.ts';
import { DEFAULT_WEIGHTS } from '../../src/core/voicing/voicing.ts';
import {
  pinVoicing,
  setChord,
  setSectionChart,
  unpinVoicing,
} from '../../src/state/edits/chart.ts';
import type { Edit } from '../../src/state/edits/edit.ts';
import { clearEntryEnding, setEntryEnding } from '../../src/state/edits/ending.ts';
import { fittedToMeter } from '../../src/state/edits/fitMeter.ts';
import * as form from '../../src/state/edits/form.ts';
import * as hits from '../../src/state/edits/hits.ts';
import * as patterns from '../../src/state/edits/pattern.ts';
import * as practice from '../../src/state/edits/practice.ts';
import { pullStroke } from '../../src/state/edits/pullStroke.ts';
import * as sectionPatterns from '../../src/state/edits/sectionPatterns.ts';
import * as song from '../../src/state/edits/song.ts';
import { addTemplate, startFromTemplate } from '../../src/state/edits/templates.ts';
import { addVariation, reworkPattern } from '../../src/state/edits/variations.ts';
import { setVoicing } from '../../src/state/edits/voicing.ts';
import { type RhythmTarget, saidStrokes, writeRhythm } from '../../src/state/edits/writeRhythm.ts';
import { anyChord } from './chords.ts';
import { anyKey } from './keys.ts';
import { meter, otherEnding, slots } from './music.ts';
import { pattern, source } from './patterns.ts';

const text = fc.string({ maxLength: 6 });
const sectionId = fc.constantFrom('verse', 'chorus', 's1', 's2');
const patternId = fc.constantFrom('p', 'q', 'r');
const perhapsPatternId = fc.option(patternId, { nil: undefined });
const place = fc.integer({ min: -1, max: 6 });
const anyMeter = fc.constantFrom('4/4', '3/4', '6/8', '7/8', '2/4', '5/4').map((m) => meter(m));
const tick = fc.oneof(
  fc.integer({ min: -1, max: 32 }).map((eighth) => eighth * 120),
  fc.double({ min: -1, max: 2000, noNaN: true }),
);
const length = fc.double({ min: 0, max: 3000, noNaN: true });
const anyNumber = fc.oneof(fc.integer({ min: -9, max: 999 }), fc.double());
const scope = fc.constantFrom('main', 'ending') satisfies fc.Arbitrary<hits.Scope>;
const handName = fc.constantFrom('left', 'right');

function hit<Tone>(tones: readonly Tone[]) {
  return fc.record({
    at: tick,
    length,
    play: fc.array(fc.constantFrom(...tones), { maxLength: 3 }),
    touch: fc.constantFrom(...TOUCHES),
    held: fc.boolean(),
  });
}

const leftHit: fc.Arbitrary<LeftHit> = hit(BASS_TONES);
const rightHit: fc.Arbitrary<RightHit> = hit(VOICE_TONES);

const keys = fc.array(fc.integer({ min: 28, max: 90 }), { maxLength: 5 });

const chart = fc.constantFrom('| C |', '| Am / F / | G |', '| N.C. | C | % |').map((c) => slots(c));

/** Two patterns that a project may be given: a bar of 4/4 with an ending, two bars of 6/8 with a source. */
const TWO_BARS = { meter: meter('6/8'), bars: 2, divisions: [3, 3, 3, 3] as const };
const NEW_PATTERNS = [
  pattern('4/4', { left: 'R---5---', ending: { left: 'R---R---' } }, { id: 'q' }),
  pattern(
    '6/8',
    { left: 'R--5--R--5--', right: 'C-C-C-C-C-C-' },
    { id: 'r', ...TWO_BARS, sources: [source(TWO_BARS, 'kick', 'x--x--x--x--')] },
  ),
];

const songEdits: fc.Arbitrary<Edit>[] = [
  text.map(song.setTitle),
  anyKey().map(song.setKey),
  anyKey().map(song.transposeTo),
  fc.constantFrom('2M', '-3m', '5d', '9M').map(song.transposeTo),
  anyNumber.map(song.setTempo),
  text.map(song.setNotes),
  fc
    .tuple(sectionId, chart, fc.option(fc.record({ from: fc.nat(3), by: fc.constantFrom(1, -1) })))
    .map(([id, slotsOf, moved]) => setSectionChart(id, slotsOf, [], moved ?? undefined)),
  fc.tuple(sectionId, place, anyChord()).map(([id, slot, chord]) => setChord(id, slot, chord)),
  fc
    .tuple(sectionId, place, keys, keys)
    .map(([id, slot, left, right]) => pinVoicing(id, slot, { left, right })),
  fc.tuple(sectionId, place).map(([id, slot]) => unpinVoicing(id, slot)),
];

const formEdits: fc.Arbitrary<Edit>[] = [
  fc
    .tuple(sectionId, fc.constantFrom(...SECTION_KINDS))
    .map(([id, kind]) => form.addSection(id, kind)),
  sectionId.map(form.removeSection),
  fc.tuple(sectionId, sectionId).map(([id, copy]) => form.duplicateSection(id, copy)),
  fc.tuple(sectionId, text).map(([id, name]) => form.renameSection(id, name)),
  fc.tuple(sectionId, fc.constantFrom(...WASHES)).map(([id, wash]) => form.setWash(id, wash)),
  fc.tuple(sectionId, anyMeter).map(([id, m]) => form.setMeter(id, m)),
  fc.tuple(place, place).map(([from, to]) => form.moveFormEntry(from, to)),
  fc.tuple(sectionId, fc.nat(6)).map(([id, at]) => form.addFormEntry(id, at)),
  fc.nat(4).map((n) => form.removeFormEntry(`entry-${n}`)),
];

/** The ids of entries that there are at the start, and of some that edits make. */
const entryId = fc.oneof(
  fc.nat(3).map((n) => `entry ${n}`),
  fc.nat(4).map((n) => `entry-${n}`),
);

const patternPlace = fc.oneof(
  sectionId.map((id) => ({ kind: 'section', id }) as const),
  entryId.map((id) => ({ kind: 'playing', id }) as const),
);

const courseEdits: fc.Arbitrary<Edit>[] = [
  fc.tuple(sectionId, perhapsPatternId).map((args) => sectionPatterns.setSectionPattern(...args)),
  fc.tuple(entryId, perhapsPatternId).map((args) => sectionPatterns.setEntryPattern(...args)),
  fc.tuple(patternPlace, perhapsPatternId).map((args) => sectionPatterns.playThroughout(...args)),
  fc
    .tuple(patternPlace, fc.nat(5), perhapsPatternId)
    .map((args) => sectionPatterns.setPatternFrom(...args)),
  fc
    .tuple(patternPlace, fc.nat(5), perhapsPatternId)
    .map((args) => sectionPatterns.setPatternFrom(...args)),
  fc.tuple(patternPlace, fc.nat(5)).map((args) => sectionPatterns.clearPatternFrom(...args)),
];

const someEnding = fc
  .tuple(
    fc.integer({ min: -1, max: 5 }),
    fc.constantFrom(
      otherEnding(1, '| C |'),
      otherEnding(1, '| Am / F / | 2/4 G |'),
      otherEnding(1, '| N.C. | G F |', '6/8'),
    ),
  )
  .map(([replacesBars, last]) => ({ ...last, replacesBars }));

const endingEdits: fc.Arbitrary<Edit>[] = [
  fc.tuple(entryId, someEnding).map(([id, last]) => setEntryEnding(id, last)),
  fc.tuple(entryId, someEnding).map(([id, last]) => setEntryEnding(id, last)),
  entryId.map(clearEntryEnding),
];

const templateEdits: fc.Arbitrary<Edit>[] = [
  fc.constantFrom(...FORM_TEMPLATES).map(addTemplate),
  fc
    .tuple(fc.constantFrom(...FORM_TEMPLATES), anyKey())
    .map(([template, { tonic }]) => startFromTemplate(template, tonic)),
];

const patternEdits: fc.Arbitrary<Edit>[] = [
  fc.constantFrom(...NEW_PATTERNS).map(patterns.addPattern),
  fc.tuple(patternId, patternId).map(([id, copy]) => patterns.duplicatePattern(id, copy)),
  patternId.map(patterns.removePattern),
  fc.tuple(patternId, text).map(([id, name]) => patterns.renamePattern(id, name)),
  fc
    .tuple(patternId, anyNumber)
    .map(([id, ratio]) => patterns.setSwing(id, { level: 'eighth', ratio })),
  fc
    .tuple(patternId, place, fc.constantFrom(...DIVISIONS), scope)
    .map(([id, beat, division, where]) => patterns.setDivision(id, beat, division, where)),
  fc
    .tuple(patternId, fc.constantFrom(...patterns.PATTERN_BARS))
    .map(([id, bars]) => patterns.setPatternBars(id, bars)),
  fc.tuple(patternId, anyMeter).map(([id, m]) => patterns.setPatternMeter(id, m)),
  fc
    .tuple(patternId, fc.constantFrom(...NEW_PATTERNS))
    .map(([id, from]) => patterns.replaceHands(id, from)),
  fc
    .tuple(patternId, fc.constantFrom(...NEW_PATTERNS))
    .map(([id, from]) => patterns.replaceSources(id, from.sources)),
  fc
    .tuple(patternId, fc.constantFrom('by-chord' as const, undefined))
    .map(([id, pedal]) => patterns.setPedal(id, pedal)),
  patternId.map(patterns.addEnding),
  fc
    .tuple(patternId, fc.constantFrom(...NEW_PATTERNS))
    .map(([id, { left, right, divisions }]) => patterns.setEnding(id, { left, right, divisions })),
  patternId.map(patterns.removeEnding),
  fc
    .tuple(patternId, fc.constantFrom(...SOURCE_PARTS), tick, handName)
    .map(([id, part, at, hand]) => pullStroke(id, part, at, hand)),
];

const RULES = [
  mirrorHands,
  doubleNoteValues,
  halveNoteValues,
  (p: Pattern) => shiftHits(p, 'both', 240),
  (p: Pattern) => copyBeat(p, 'left', 0, 1),
  (p: Pattern) => copyBar(p, 'both', 0, p.bars - 1),
  (p: Pattern) => fillBetween(p, 'right'),
  (p: Pattern) => ({ ...p, ...thinHands(p, 2, 90, p) }),
];

const RHYTHM_TARGETS: readonly RhythmTarget[] = [
  { kind: 'hand', hand: 'left' },
  { kind: 'hand', hand: 'right' },
  { kind: 'source', id: 'kick' },
  { kind: 'new-source', part: 'bass', name: 'Bass' },
];

const someRhythm = fc.constantFrom('1 & 3', '1 2 | 1 trip let', '1 e & a 2').map((counts) => {
  const said = parseCounts(counts, meter('4/4'));
  if (!said.ok) throw new Error(`nobody says ${counts}`);
  return { ...said.value, strokes: saidStrokes(said.value.at, said.value, undefined) };
});

const workshopEdits: fc.Arbitrary<Edit>[] = [
  fc
    .tuple(patternId, fc.constantFrom(...RULES), scope)
    .map(([id, rule, where]) => reworkPattern(id, rule, where)),
  fc
    .tuple(patternId, patternId, fc.constantFrom(...NEW_PATTERNS), anyMeter)
    .map(([id, newId, from, m]) =>
      addVariation(id, newId, 'in 3/4', fittedToMeter(from, m).at(-1)!.pattern),
    ),
  fc
    .tuple(patternId, fc.constantFrom(...RHYTHM_TARGETS), someRhythm, fc.boolean())
    .map(([id, target, rhythm, adds]) => writeRhythm(id, target, rhythm, adds ? 'add' : 'replace')),
];

const hitEdits: fc.Arbitrary<Edit>[] = [
  fc
    .tuple(patternId, leftHit, scope)
    .map(([id, one, where]) => hits.addHit(id, 'left', one, where)),
  fc
    .tuple(patternId, rightHit, scope)
    .map(([id, one, where]) => hits.addHit(id, 'right', one, where)),
  fc.tuple(patternId, handName, tick, scope).map((args) => hits.removeHit(...args)),
  fc.tuple(patternId, handName, tick, tick, scope).map((args) => hits.moveHit(...args)),
  fc.tuple(patternId, handName, tick, length, scope).map((args) => hits.setHitLength(...args)),
  fc
    .tuple(patternId, handName, tick, fc.constantFrom(1, -1), scope)
    .map((args) => hits.lengthenHit(...args)),
  fc
    .tuple(patternId, tick, leftHit)
    .map(([id, at, { play }]) => hits.setHitPlay(id, 'left', at, play)),
  fc
    .tuple(patternId, handName, tick, fc.constantFrom(...TOUCHES))
    .map((args) => hits.setHitTouch(...args)),
  fc.tuple(patternId, handName, tick, fc.boolean()).map((args) => hits.setHitHeld(...args)),
  fc.tuple(patternId, handName, tick, fc.boolean()).map((args) => hits.setHitAnticipates(...args)),
];

const level = fc.constantFrom<Level>(1, 2, 3, 4, 5);
const anyLevelClimb = fc.record({ from: level, order: fc.constantFrom(...CLIMB_ORDERS) });
/** Any stage of a drill, also of sections that are not there. */
export const anyStage: fc.Arbitrary<Stage> = fc.record(
  {
    id: fc.constantFrom('a', 'b', 'c'),
    passage: fc.oneof(
      fc.constant({ kind: 'one-chord' as const }),
      fc.record({
        kind: fc.constant('two-chords' as const),
        first: anyChord(),
        second: anyChord(),
      }),
      fc.record({ kind: fc.constant('section' as const), sectionId }),
      fc.record({ kind: fc.constant('join' as const), from: sectionId, to: sectionId }),
    ),
    tool: fc.constantFrom('left', 'right', 'both', 'none'),
    level,
  },
  { requiredKeys: ['id', 'passage'] },
);

const settingEdits: fc.Arbitrary<Edit>[] = [
  anyNumber.map((spanSemitones) => setVoicing({ spanSemitones, rightLowest: spanSemitones })),
  anyNumber.map((motion) => setVoicing({ weights: { ...DEFAULT_WEIGHTS, motion } })),
  anyNumber.map((loudness) => practice.setClick({ level: loudness })),
  anyChord().map(practice.setDrillChord),
  perhapsPatternId.map(practice.setDrillPattern),
  anyNumber.map((startBpm) => practice.setLadder({ startBpm })),
  anyNumber.map((bpm) => practice.setLadder({ passesPerRung: bpm, step: { kind: 'bpm', bpm } })),
  anyNumber.map(practice.setBarsPerPass),
  fc.option(anyLevelClimb, { nil: undefined }).map((levels) => practice.setLadder({ levels })),
  fc.option(fc.array(anyStage, { maxLength: 4 }), { nil: undefined }).map(practice.setStages),
];

/**
 * Any edit that a player can make, as often aimed at something that is not there as at something
 * that is: sections are called `verse`, `chorus`, `s1`, `s2`, patterns `p`, `q`, `r`.
 */
export function anyEdit(): fc.Arbitrary<Edit> {
  return fc.oneof(
    ...songEdits,
    ...formEdits,
    ...endingEdits,
    ...endingEdits,
    ...courseEdits,
    ...patternEdits,
    ...workshopEdits,
    ...hitEdits,
    ...settingEdits,
    { weight: 1, arbitrary: fc.oneof(...templateEdits) },
  );
}
