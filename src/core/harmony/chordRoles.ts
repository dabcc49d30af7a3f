import {
  appliedDominant,
  appliedLeadingTone,
  appliedSecond,
  tritoneSubstituteAt,
  visitedStep,
} from './appliedChords.ts';
import type { Chord, ChordQuality } from './chord.ts';
import {
  above,
  type HeardChord,
  type HeardLine,
  hasNote,
  isDominantSeventh,
  isLeading,
} from './heardChords.ts';
import type { Key } from './key.ts';
import { type KeyReading, stepInScales } from './keyReading.ts';
import { type Finding, type Moment, momentAt } from './moment.ts';
import { type Numeral, numeralOf } from './numerals.ts';
import { type PitchClass, transposePitchClass } from './pitch.ts';

/**
 * What a chord is in a key. `diatonic`: of its scale (in minor of any of the three); `blues`: I7 and
 * IV7 where both are dominant sevenths; `altered-dominant`: V or V7 with an altered fifth; `applied-dominant`: V, V7, vii° of a step that it leads to, or
 * that the second before it announces; `applied-second`: the ii before such a chord;
 * `tritone-substitute`: ♭II7 of the chord it falls to; `borrowed`: of the parallel key's scale, or a
 * step of the parallel key after its applied dominant; `neapolitan`: the major chord on ♭2;
 * `passing-diminished`: between two roots a tone apart; `common-tone-diminished`: a diminished
 * seventh that keeps the root of a diatonic neighbour; `unexplained`: none of these, its numeral says
 * root and quality only.
 */
export type Role =
  | 'diatonic'
  | 'blues'
  | 'altered-dominant'
  | 'applied-dominant'
  | 'applied-second'
  | 'tritone-substitute'
  | 'borrowed'
  | 'neapolitan'
  | 'passing-diminished'
  | 'common-tone-diminished'
  | 'unexplained';

/** A chord's role, how far fetched the reading is (`cost`, 0 to 5), and what gives it its numeral. */
export type RoleReading = {
  readonly role: Role;
  readonly cost: number;
  readonly finding: Finding;
};

type Rule = {
  readonly role: Role;
  readonly cost: number;
  readonly find: (moment: Moment) => Finding | undefined;
};

function onRoot(root: PitchClass | undefined): Finding | undefined {
  return root && { root };
}

function bluesStep(chord: HeardChord, { key, tonic, isBlues }: KeyReading): PitchClass | undefined {
  if (!isBlues || !isDominantSeventh(chord)) return undefined;
  if (chord.root === tonic) return key.tonic;
  return chord.root === above(tonic, 5) ? transposePitchClass(key.tonic, '4P') : undefined;
}

const ALTERED_FIFTHS: readonly ChordQuality[] = [
  'augmented',
  'augmented-seventh',
  'dominant-seventh-flat-five',
];

function alteredDominantRoot({ chord, reading }: Moment): PitchClass | undefined {
  return ALTERED_FIFTHS.includes(chord.chord.quality) && chord.root === above(reading.tonic, 7)
    ? transposePitchClass(reading.key.tonic, '5P')
    : undefined;
}

function neapolitanRoot({ chord, reading }: Moment): PitchClass | undefined {
  const { quality } = chord.chord;
  const isMajor = quality === 'major' || quality === 'major-seventh';
  return isMajor && chord.root === above(reading.tonic, 1)
    ? transposePitchClass(reading.key.tonic, '2m')
    : undefined;
}

function passingRoot({ chord, before, after }: Moment): PitchClass | undefined {
  if (!before || !after || !isLeading(chord)) return undefined;
  const goesUp = above(before.root, 1) === chord.root && above(chord.root, 1) === after.root;
  const goesDown = above(chord.root, 1) === before.root && above(after.root, 1) === chord.root;
  return goesUp || goesDown ? chord.chord.root : undefined;
}

function commonToneRoot({ chord, before, after, reading }: Moment): PitchClass | undefined {
  if (chord.chord.quality !== 'diminished-seventh') return undefined;
  const isKept = (other: HeardChord | undefined) =>
    other !== undefined &&
    hasNote(chord.notes, other.root) &&
    (stepInScales(other, reading.scales) ?? bluesStep(other, reading)) !== undefined;
  return isKept(before) || isKept(after) ? chord.chord.root : undefined;
}

/** The rules in the order in which they are asked, with the cost of reading a chord so. */
const RULES: readonly Rule[] = [
  { role: 'diatonic', cost: 0, find: (m) => onRoot(stepInScales(m.chord, m.reading.scales)) },
  { role: 'blues', cost: 0, find: (m) => onRoot(bluesStep(m.chord, m.reading)) },
  { role: 'altered-dominant', cost: 0.5, find: (m) => onRoot(alteredDominantRoot(m)) },
  { role: 'applied-dominant', cost: 0.5, find: appliedDominant },
  { role: 'applied-dominant', cost: 0.5, find: appliedLeadingTone },
  { role: 'tritone-substitute', cost: 0.5, find: tritoneSubstituteAt },
  { role: 'applied-second', cost: 0.5, find: appliedSecond },
  {
    role: 'diatonic',
    cost: 1,
    find: (m) => onRoot(stepInScales(m.chord, m.reading.melodicScales)),
  },
  {
    role: 'borrowed',
    cost: 1,
    find: (m) => onRoot(stepInScales(m.chord, m.reading.parallelScales)),
  },
  { role: 'borrowed', cost: 1, find: visitedStep },
  { role: 'neapolitan', cost: 1.5, find: (m) => onRoot(neapolitanRoot(m)) },
  { role: 'common-tone-diminished', cost: 1.5, find: (m) => onRoot(commonToneRoot(m)) },
  { role: 'passing-diminished', cost: 1.5, find: (m) => onRoot(passingRoot(m)) },
];

/** The cost of a chord that no rule explains. */
const UNEXPLAINED_COST = 5;

/**
 * The role of the chord at a place of the line in a key: that of the first rule that fits. Undefined
 * where no chord is played.
 */
export function roleReading(
  line: HeardLine,
  place: number,
  reading: KeyReading,
): RoleReading | undefined {
  const moment = momentAt(line, place, reading);
  if (!moment) return undefined;
  for (const { role, cost, find } of RULES) {
    const finding = find(moment);
    if (finding) return { role, cost, finding };
  }
  const finding = { root: moment.chord.chord.root };
  return { role: 'unexplained', cost: UNEXPLAINED_COST, finding };
}

/** The numeral of a chord that was read so in a key, spelled as the key spells it. */
export function numeralFor(chord: Chord, { finding }: RoleReading, key: Key): Numeral {
  return numeralOf({ ...chord, root: finding.root }, key, finding.of);
}
