import { type Passage, type Stage, samePassage } from './stage.ts';

/** The list with the stage at a place so many places further on (back, where negative); as it is where that is outside. */
export function withMoved(stages: readonly Stage[], place: number, by: number): readonly Stage[] {
  const stage = stages[place];
  const to = place + by;
  if (!stage || to < 0 || to >= stages.length) return stages;
  return stages.toSpliced(place, 1).toSpliced(to, 0, stage);
}

/** The list with one stage otherwise than it was; `stage.id` says which. */
export function withChanged(stages: readonly Stage[], stage: Stage): readonly Stage[] {
  return stages.map((each) => (each.id === stage.id ? stage : each));
}

/** The list without a stage. */
export function without(stages: readonly Stage[], id: Stage['id']): readonly Stage[] {
  return stages.filter((stage) => stage.id !== id);
}

/** The list with one more stage at its end, under an id of its own. */
export function withAdded(stages: readonly Stage[], stage: Omit<Stage, 'id'>): readonly Stage[] {
  let n = stages.length + 1;
  while (stages.some(({ id }) => id === `stage ${n}`)) n++;
  return [...stages, { id: `stage ${n}`, ...stage }];
}

/** The stage that goes through all of a passage: the one in the list, or else one outside it, with the hands that are set. */
export function stageThrough(stages: readonly Stage[], passage: Passage): Stage {
  const listed = stages.find(
    (stage) => stage.level === undefined && samePassage(stage.passage, passage),
  );
  return listed ?? { id: `apart: ${JSON.stringify(passage)}`, passage };
}
