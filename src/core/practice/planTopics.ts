import type { PatternId } from '../ids.ts';
import type { Pattern } from '../rhythm/pattern.ts';
import { patternForBar } from '../rhythm/patternAt.ts';
import { patternCourse } from '../song/patternCourse.ts';
import type { Song } from '../song/song.ts';
import { type Timeline, timelineOf } from '../song/timeline.ts';
import type { Bpm } from '../time/tempoMap.ts';
import type { Voicing } from '../voicing/voicing.ts';
import { hardJoins, type Join } from './joins.ts';
import {
  cleanBpm,
  fastestReached,
  type PracticeTarget,
  sameTarget,
  type TakeRecord,
} from './takeRecord.ts';
import { type WeakStep, weakSteps } from './weakSteps.ts';

/** A song with its patterns and a voicing for each chord of its timeline. */
export type SongToPractise = {
  readonly song: Pick<Song, 'sections' | 'form' | 'tempo'>;
  readonly patterns: readonly Pattern[];
  readonly voicings: readonly Voicing[];
};

/** Why something is in the plan: its steps went wrong, it is a hard join, it was not yet clean at tempo, or to keep it. */
export type PlanReason =
  | { readonly kind: 'weak-steps'; readonly steps: readonly WeakStep[] }
  | { readonly kind: 'hard-join'; readonly join: Join; readonly cleanBpm?: Bpm }
  | { readonly kind: 'not-at-tempo'; readonly cleanBpm?: Bpm }
  | { readonly kind: 'keep' };

/** Something to practise, from which tempo on and why. */
export type Topic = {
  readonly target: PracticeTarget;
  readonly startBpm: Bpm;
  readonly goalBpm: Bpm;
  readonly why: PlanReason;
};

/** Something never played clean begins at so much of the song's tempo; something weak at so much of where it was. */
const START = { unknown: 0.6, weak: 0.85 } as const;

const MOST_JOINS = 4;

/**
 * What there is to practise of a song, one of each kind in turn: patterns whose last take had weak
 * steps, the hardest joins, and patterns and sections that were not yet clean at the song's tempo. Of
 * each kind comes first what was not played for longest, so that everything has its turn. Once all is
 * at tempo, the hardest joins and the song itself, to keep them.
 */
export function topicsOf(
  { song, patterns, voicings }: SongToPractise,
  history: readonly TakeRecord[],
): Topic[] {
  const goalBpm = song.tempo.bpm;
  const timeline = timelineOf(song);
  const played = patterns.filter((pattern) => isPlayed(pattern, timeline));
  const joins = hardJoins(timeline, voicings, patternForBar(patterns, timeline));
  const sectionIds = [...new Set(timeline.sections.map((section) => section.sectionId))];
  const notAtTempo = (target: PracticeTarget) => topicNotAtTempo(target, goalBpm, history);
  const weak = played.flatMap(({ id }) => weakTopic(id, goalBpm, history));
  const isWeak = (id: PatternId) => weak.some((topic) => idOf(topic.target) === id);
  const kinds = [
    weak,
    joins.slice(0, MOST_JOINS).flatMap((join) => joinTopic(join, goalBpm, history)),
    [
      ...played
        .filter(({ id }) => !isWeak(id))
        .map(({ id }) => ({ kind: 'pattern', patternId: id }) as const),
      ...sectionIds.map((sectionId) => ({ kind: 'section', sectionId }) as const),
    ].flatMap(notAtTempo),
  ];
  const topics = inTurn(kinds.map((kind) => longestAgoFirst(kind, history)));
  return topics.length > 0 ? topics : keptTopics(joins, goalBpm, history);
}

function isPlayed(pattern: Pattern, timeline: Timeline): boolean {
  return timeline.sections.some((section) =>
    patternCourse(section).some(({ patternId }) => patternId === pattern.id),
  );
}

/** Topics by when their target was played last; what never was comes first, in the order it has. */
function longestAgoFirst(topics: readonly Topic[], history: readonly TakeRecord[]): Topic[] {
  const lastMs = new Map(
    topics.map((topic) => {
      const times = history.filter((take) => sameTarget(take.target, topic.target));
      return [topic, Math.max(Number.NEGATIVE_INFINITY, ...times.map((take) => take.atMs))];
    }),
  );
  const timeOf = (topic: Topic) => lastMs.get(topic)!;
  return topics.toSorted((a, b) => (timeOf(a) === timeOf(b) ? 0 : timeOf(a) - timeOf(b)));
}

/** The first of each list, then the second of each, and so on. */
function inTurn<T>(lists: readonly (readonly T[])[]): T[] {
  const longest = Math.max(0, ...lists.map((list) => list.length));
  return Array.from({ length: longest }, (_, i) =>
    lists.flatMap((list) => list.slice(i, i + 1)),
  ).flat();
}

function weakTopic(patternId: PatternId, goalBpm: Bpm, history: readonly TakeRecord[]): Topic[] {
  const target = { kind: 'pattern', patternId } as const;
  const last = history
    .filter((take) => take.passes > 0 && hasSteps(take, patternId))
    .reduce<TakeRecord | undefined>((a, b) => (a && a.atMs > b.atMs ? a : b), undefined);
  const steps = last ? weakStepsOf(last, patternId) : [];
  if (!last || steps.length === 0) return [];
  const startBpm = Math.round(START.weak * Math.min(last.bpm, goalBpm));
  return [{ target, startBpm, goalBpm, why: { kind: 'weak-steps', steps } }];
}

/** Steps of a drill may not name their pattern: it has but one. */
function hasSteps({ score, target }: TakeRecord, patternId: PatternId): boolean {
  return score.steps.some((step) => (step.patternId ?? idOf(target)) === patternId);
}

function weakStepsOf({ score, target }: TakeRecord, patternId: PatternId): WeakStep[] {
  return weakSteps(score).filter((step) => (step.patternId ?? idOf(target)) === patternId);
}

function idOf(target: PracticeTarget): PatternId | undefined {
  return target.kind === 'pattern' ? target.patternId : undefined;
}

/**
 * `cleanBpm` of a target; a pattern was reached, too, in a clean take of anything else in which none
 * of its steps was weak.
 */
function reachedBpm(history: readonly TakeRecord[], target: PracticeTarget): Bpm | undefined {
  if (target.kind !== 'pattern') return cleanBpm(history, target);
  const { patternId } = target;
  const isGoodOf = (take: TakeRecord) =>
    hasSteps(take, patternId) && weakStepsOf(take, patternId).length === 0;
  return fastestReached(
    history.filter((take) =>
      take.target.kind === 'pattern' ? sameTarget(take.target, target) : isGoodOf(take),
    ),
  );
}

function joinTopic(join: Join, goalBpm: Bpm, history: readonly TakeRecord[]): Topic[] {
  const target = { kind: 'join', from: join.from, to: join.to } as const;
  return topicNotAtTempo(target, goalBpm, history).map((topic) => ({
    ...topic,
    why: { ...topic.why, kind: 'hard-join', join },
  }));
}

function topicNotAtTempo(
  target: PracticeTarget,
  goalBpm: Bpm,
  history: readonly TakeRecord[],
): (Topic & { readonly why: { readonly kind: 'not-at-tempo'; readonly cleanBpm?: Bpm } })[] {
  const reached = reachedBpm(history, target);
  if (reached !== undefined && reached >= goalBpm) return [];
  const startBpm = reached ?? Math.round(START.unknown * goalBpm);
  const why = {
    kind: 'not-at-tempo',
    ...(reached === undefined ? {} : { cleanBpm: reached }),
  } as const;
  return [{ target, startBpm, goalBpm, why }];
}

/**
 * From where to where a target is practised again, in felt beats: from the tempo that was reached, or well
 * under the goal where none was, or a little under it where the goal itself was.
 */
export function climbTo(
  goalBpm: Bpm,
  target: PracticeTarget,
  history: readonly TakeRecord[],
): Pick<Topic, 'startBpm' | 'goalBpm'> {
  const reached = cleanBpm(history, target);
  const share = reached === undefined ? START.unknown : START.weak;
  const isUnder = reached !== undefined && reached < goalBpm;
  return { startBpm: isUnder ? reached : Math.round(share * goalBpm), goalBpm };
}

function keptTopics(joins: readonly Join[], goalBpm: Bpm, history: readonly TakeRecord[]): Topic[] {
  const kept = (target: PracticeTarget): Topic => ({
    target,
    startBpm: goalBpm,
    goalBpm,
    why: { kind: 'keep' },
  });
  const ofJoins = joins
    .slice(0, MOST_JOINS)
    .map(({ from, to }) => kept({ kind: 'join', from, to }));
  return [...longestAgoFirst(ofJoins, history), kept({ kind: 'song' })];
}
