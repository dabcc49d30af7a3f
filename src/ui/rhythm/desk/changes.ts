import {
  approachAtEnd,
  BROKEN_WAYS,
  type BrokenWay,
  bassInOctaves,
  brokenChords,
  type FigureStretch,
  inManner,
  pushed,
  wholeChords,
} from '../../../core/rhythm/figureMoves.ts';
import { doubleNoteValues, halveNoteValues } from '../../../core/rhythm/noteValues.ts';
import {
  type Pattern,
  type PatternBeat,
  patternBeats,
  patternSteps,
  type Step,
} from '../../../core/rhythm/pattern.ts';
import {
  accentEvery,
  clearHits,
  copyBar,
  copyBeat,
  copyRhythm,
  fillBetween,
  mirrorHands,
  shiftHits,
  type WhichHands,
} from '../../../core/rhythm/patternMoves.ts';
import { barTicks } from '../../../core/time/meter.ts';

/** Where a change is made: the beat and the bar of the cursor, and the hands that are meant. */
export type ChangePlace = { readonly step: Step; readonly which: WhichHands };

/** One thing that can be done to a pattern: what its button says, what undo calls it, and the rule. */
export type DeskChange = {
  readonly name: string;
  readonly label: string;
  readonly rule: (pattern: Pattern) => Pattern;
};

/** Changes of one kind, under a word of their own. */
export type ChangeGroup = { readonly title: string; readonly changes: readonly DeskChange[] };

/** What is changed: where hits stand, or how they are played. */
export const CHANGE_SIDES = ['places', 'playing'] as const;

export type ChangeSide = (typeof CHANGE_SIDES)[number];

function beatPlace(pattern: Pattern, beat: PatternBeat): number {
  return patternBeats(pattern).findIndex(({ start }) => start === beat.start);
}

function others(count: number, self: number): number[] {
  return Array.from({ length: count }, (_, i) => i).filter((i) => i !== self);
}

/** The same rule for several places, one after the other. */
function forAll(
  places: readonly number[],
  rule: (place: number) => (pattern: Pattern) => Pattern,
): (pattern: Pattern) => Pattern {
  return (pattern) => places.reduce((changed, place) => rule(place)(changed), pattern);
}

function copies(pattern: Pattern, { step, which }: ChangePlace): DeskChange[] {
  const beats = patternBeats(pattern).length;
  const beat = beatPlace(pattern, step.beat);
  const { bar } = step.beat;
  const ontoBeat = (to: number) => (p: Pattern) => copyBeat(p, which, beat, to);
  const ontoBar = (to: number) => (p: Pattern) => copyBar(p, which, bar, to);
  const ofBeat = [
    { name: 'beat to the next', rule: ontoBeat((beat + 1) % beats) },
    { name: 'beat to all', rule: forAll(others(beats, beat), ontoBeat) },
  ];
  const ofBar = [
    { name: 'bar to the next', rule: ontoBar((bar + 1) % pattern.bars) },
    { name: 'bar to all', rule: forAll(others(pattern.bars, bar), ontoBar) },
  ];
  return [
    ...ofBeat.map((copy) => ({ ...copy, label: 'copy beat' })),
    ...(pattern.bars > 1 ? ofBar.map((copy) => ({ ...copy, label: 'copy bar' })) : []),
  ];
}

function shifts({ step, which }: ChangePlace): DeskChange[] {
  const by = (name: string, ticks: number): DeskChange => ({
    name,
    label: 'shift',
    rule: (pattern) => shiftHits(pattern, which, ticks),
  });
  return [
    by('beat earlier', -step.beat.length),
    by('step earlier', -step.length),
    by('step later', step.length),
    by('beat later', step.beat.length),
  ];
}

function handChanges(): DeskChange[] {
  return [
    { name: 'hands change over', label: 'hands change over', rule: mirrorHands },
    { name: 'right as left', label: 'rhythm of the left hand', rule: (p) => copyRhythm(p, 'left') },
    {
      name: 'left as right',
      label: 'rhythm of the right hand',
      rule: (p) => copyRhythm(p, 'right'),
    },
  ];
}

function accents({ which }: ChangePlace): DeskChange[] {
  const every = (name: string, n: number, first = 0): DeskChange => ({
    name,
    label: 'accents',
    rule: (pattern) => accentEvery(pattern, which, n, first),
  });
  return [
    every('every 2nd', 2),
    every('every 3rd', 3),
    every('every 4th', 4),
    every('backbeats', 2, 1),
  ];
}

function clearings(pattern: Pattern, { step, which }: ChangePlace): DeskChange[] {
  const { beat } = step;
  const bar = barTicks(pattern.meter);
  const clear = (name: string, from: number, until: number): DeskChange => ({
    name,
    label: 'clear',
    rule: (p) => clearHits(p, which, from, until),
  });
  return [
    clear('beat', beat.start, beat.start + beat.length),
    clear('bar', beat.bar * bar, (beat.bar + 1) * bar),
  ];
}

/** Longest and shortest pattern that note values can be doubled and halved in, in bars. */
const BARS = { shortest: 1, longest: 4 } as const;

function timeChanges(pattern: Pattern): DeskChange[] {
  return [
    ...(2 * pattern.bars <= BARS.longest
      ? [{ name: 'half time', label: 'half time', rule: doubleNoteValues }]
      : []),
    { name: 'double time', label: 'double time', rule: halveNoteValues },
  ];
}

function fills({ step, which }: ChangePlace): DeskChange[] {
  const { start, length } = step.beat;
  const fill = (name: string, from?: number, until?: number): DeskChange => ({
    name,
    label: 'fill between',
    rule: (p) => fillBetween(p, which, from, until),
  });
  return [fill('this beat', start, start + length), fill('between hits')];
}

/** A push by the step before the beat, round the pattern; nothing where that is a whole beat. */
function pushes(pattern: Pattern, { step, which }: ChangePlace): DeskChange[] {
  const before = patternSteps(pattern).at(
    patternSteps(pattern).findIndex(({ at }) => at === step.beat.start) - 1,
  );
  if (!before || before.beat.division === 1) return [];
  const push: DeskChange = {
    name: 'beat early, tied over',
    label: 'push',
    rule: (p) => pushed(p, which, step.beat.start, before.length),
  };
  return [push];
}

function manners({ which }: ChangePlace): DeskChange[] {
  const manner = (name: string, as: Parameters<typeof inManner>[2]): DeskChange => ({
    name,
    label: name,
    rule: (pattern) => inManner(pattern, which, as),
  });
  return [
    manner('short', { held: false }),
    manner('held', { held: true }),
    manner('ghosted', { touch: 'ghost' }),
    manner('plain', { touch: 'plain' }),
  ];
}

function chordChanges(bar: FigureStretch): DeskChange[] {
  const ways = Object.keys(BROKEN_WAYS) as BrokenWay[];
  return [
    ...ways.map((way) => ({
      name: way,
      label: 'broken chords',
      rule: (pattern: Pattern) => brokenChords(pattern, way, bar),
    })),
    { name: 'whole', label: 'whole chords', rule: (pattern) => wholeChords(pattern, bar) },
  ];
}

function bassChanges(bar: FigureStretch): DeskChange[] {
  return [
    { name: 'octaves', label: 'bass in octaves', rule: (p) => bassInOctaves(p, bar) },
    { name: 'leads to the next root', label: 'approach', rule: (p) => approachAtEnd(p, bar) },
  ];
}

/**
 * Everything that can be changed at a place of a pattern, by kinds. `isEnding`: the pattern is an
 * ending bar, whose length stays.
 */
export function changesAt(
  pattern: Pattern,
  place: ChangePlace,
  isEnding: boolean,
): Readonly<Record<ChangeSide, readonly ChangeGroup[]>> {
  const length = barTicks(pattern.meter);
  const from = place.step.beat.bar * length;
  const bar = { from, until: from + length };
  const some = (title: string, changes: readonly DeskChange[]): ChangeGroup[] =>
    changes.length > 0 ? [{ title, changes }] : [];
  return {
    places: [
      { title: 'Copy', changes: copies(pattern, place) },
      { title: 'Shift', changes: shifts(place) },
      { title: 'Fill', changes: fills(place) },
      { title: 'Clear', changes: clearings(pattern, place) },
      { title: 'Hands', changes: handChanges() },
      ...(isEnding ? [] : [{ title: 'Time', changes: timeChanges(pattern) }]),
    ],
    playing: [
      { title: 'Accent', changes: accents(place) },
      { title: 'All', changes: manners(place) },
      ...some('Push', pushes(pattern, place)),
      { title: 'Chords in this bar', changes: chordChanges(bar) },
      { title: 'Bass in this bar', changes: bassChanges(bar) },
    ],
  };
}
