import type { PlanItem } from '../../../core/practice/plan.ts';
import type { PlanReason } from '../../../core/practice/planTopics.ts';
import type { PracticeTarget } from '../../../core/practice/takeRecord.ts';
import type { Project } from '../../../core/project.ts';
import { unreachable } from '../../../core/result.ts';
import type { Bpm } from '../../../core/time/tempoMap.ts';
import { joinWords } from './joinWords.ts';

/** Names of what a plan speaks of. */
export type Named = {
  readonly song: {
    readonly sections: readonly Pick<Project['song']['sections'][number], 'id' | 'name'>[];
  };
  readonly patterns: readonly Pick<Project['patterns'][number], 'id' | 'name'>[];
};

/** The name of what has an id in a list; empty where it is gone. */
export function nameIn(
  list: readonly { readonly id: string; readonly name: string }[],
  id: string,
) {
  return list.find((each) => each.id === id)?.name ?? '';
}

/** What is practised, in words. */
export function targetWords(target: PracticeTarget, { song, patterns }: Named): string {
  switch (target.kind) {
    case 'pattern':
      return `“${nameIn(patterns, target.patternId)}” on one chord`;
    case 'section':
      return nameIn(song.sections, target.sectionId);
    case 'join':
      return `${nameIn(song.sections, target.from)} to ${nameIn(song.sections, target.to)}`;
    case 'song':
      return 'The whole song';
    case 'bars':
      return target.endBar - target.firstBar === 1
        ? `Bar ${target.endBar}`
        : `Bars ${target.firstBar + 1} to ${target.endBar}`;
    default:
      return unreachable(target);
  }
}

function reachedWords(cleanBpm: Bpm | undefined): string {
  return cleanBpm === undefined ? 'not yet played clean' : `clean at ${cleanBpm} so far`;
}

/** Why it is in the plan, in words. */
export function reasonWords(why: PlanReason): string {
  switch (why.kind) {
    case 'weak-steps':
      return why.steps.length === 1
        ? 'one step went wrong last time'
        : `${why.steps.length} steps went wrong last time`;
    case 'hard-join':
      return `${joinWords(why.join)}; ${reachedWords(why.cleanBpm)}`;
    case 'not-at-tempo':
      return reachedWords(why.cleanBpm);
    case 'keep':
      return 'to keep it in hand';
    default:
      return unreachable(why);
  }
}

/** The tempos of a line of the plan: “from 50 to 84”, or the one. */
export function tempoWords(startBpm: Bpm, goalBpm: Bpm): string {
  return startBpm === goalBpm ? `at ${goalBpm}` : `from ${startBpm} to ${goalBpm}`;
}

/** The head of a line of the plan. */
export function itemWords(item: PlanItem, named: Named): string {
  switch (item.kind) {
    case 'drill':
      return targetWords(item.target, named);
    case 'run-through':
      return 'The song from beginning to end';
    case 'rest':
      return 'Rest: hands off the keys';
    default:
      return unreachable(item);
  }
}
