import type { Chord } from '../harmony/chord.ts';
import type { Level } from '../rhythm/levels.ts';
import type { Pattern } from '../rhythm/pattern.ts';
import { type PatternAt, patternForBar } from '../rhythm/patternAt.ts';
import { barAt, type Timeline, type TimelineBar, timelineOf } from '../song/timeline.ts';
import type { Tempo } from '../time/tempoMap.ts';
import { chordChanges, hardestChange, sameChord } from './chordChange.ts';
import { tellingLevels } from './drillRungs.ts';
import { hardJoins } from './joins.ts';
import type { SongToPractise } from './planTopics.ts';
import type { SoundingHands } from './soundingHands.ts';
import type { Passage, Stage } from './stage.ts';

/** The level at which both hands first come together: halves and thirds of a beat, no quick change of hands. */
const FIRST_TOGETHER: Level = 2;

/** More joins than these are for the list of hard joins. */
const MOST_JOINS = 3;

const ONE_CHORD: Passage = { kind: 'one-chord' };

/**
 * A way from the drill's held chord into the song, for one pattern: each hand alone (the tool sounds
 * the other), both at a low level, both in full, on the one chord; then two chords, the change of the
 * pattern's sections that moves the hands furthest or else the held chord and the one that first
 * follows it in the song; then the sections that play the pattern; then the hardest joins around them.
 * A proposal, not a doctrine: no order of practice is proven best (docs/sources.md#practice-plans). What
 * the song or the pattern does not have is left out: the hands apart where one of them rests, the low
 * level where it is the whole part. Each stage is named by what it is, so it keeps its `id` while it lasts.
 */
export function proposedStages(
  { song, patterns, voicings }: SongToPractise,
  pattern: Pattern,
  heldChord: Chord,
): Stage[] {
  const timeline = timelineOf(song);
  const patternAt = patternForBar(patterns, timeline);
  const ownBars = barsWith(timeline, patternAt, pattern);
  const isOwn = (bar: TimelineBar | undefined) => bar !== undefined && ownBars.has(bar);
  const both = (passage: Passage) => stage(passage, 'none');
  const changes = chordChanges(timeline, voicings);
  const change =
    hardestChange(changes.filter(({ atTick }) => isOwn(barAt(timeline, atTick)))) ??
    changes.find(({ first }) => sameChord(first.chord, heldChord));
  const sections = new Set([...ownBars].map((bar) => timeline.sections[bar.section]!.sectionId));
  return [
    ...handsApart(pattern),
    ...lowLevel(pattern, song.tempo),
    both(ONE_CHORD),
    ...(change
      ? [both({ kind: 'two-chords', first: change.first.chord, second: change.second.chord })]
      : []),
    ...[...sections].map((sectionId) => both({ kind: 'section', sectionId })),
    ...hardJoins(timeline, voicings, patternAt)
      .filter(({ bar }) => isOwn(timeline.bars[bar - 1]) || isOwn(timeline.bars[bar]))
      .slice(0, MOST_JOINS)
      .map(({ from, to }) => both({ kind: 'join', from, to })),
  ];
}

function stage(passage: Passage, tool: SoundingHands, level?: Level): Stage {
  const id = [...Object.values(passage).map((part) => JSON.stringify(part)), tool, level ?? 'full'];
  return { id: id.join(' '), passage, tool, ...(level !== undefined && { level }) };
}

function handsApart({ left, right }: Pattern): Stage[] {
  if (left.length === 0 || right.length === 0) return [];
  return [stage(ONE_CHORD, 'right'), stage(ONE_CHORD, 'left')];
}

function lowLevel(pattern: Pattern, tempo: Tempo): Stage[] {
  const isLess = tellingLevels(pattern, tempo).some((level) => level >= FIRST_TOGETHER);
  return isLess ? [stage(ONE_CHORD, 'none', FIRST_TOGETHER)] : [];
}

/** The bars of the song in which a pattern is played. */
function barsWith(timeline: Timeline, patternAt: PatternAt, { id }: Pattern): Set<TimelineBar> {
  return new Set(timeline.bars.filter((bar, i) => patternAt(bar, i)?.id === id));
}
