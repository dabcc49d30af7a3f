import { tellingLevels } from '../core/practice/drillRungs.ts';
import { isThere, type Stage } from '../core/practice/stage.ts';
import { proposedStages } from '../core/practice/stageProposal.ts';
import { chosenPattern } from '../core/rhythm/chosenPattern.ts';
import type { Level } from '../core/rhythm/levels.ts';
import { type Selector, selector, selectTimeline, selectVoicings } from './selectors.ts';

/** The stages that are proposed for the drill's pattern; those on chords alone where two hands cannot play the song. */
export const selectProposal: Selector<readonly Stage[]> = selector(
  (project) => [
    project.song,
    project.patterns,
    selectVoicings(project),
    project.practice.drill.patternId,
    project.practice.drill.chord,
  ],
  (project) => {
    const { song, patterns, practice } = project;
    const pattern = chosenPattern(project, practice.drill.patternId);
    const voicings = selectVoicings(project);
    return pattern
      ? proposedStages(
          { song, patterns, voicings: voicings.ok ? voicings.value : [] },
          pattern,
          practice.drill.chord,
        )
      : [];
  },
);

/** The levels that differ in the drill's pattern at the song's tempo, upwards: see `tellingLevels`. */
export const selectTellingLevels: Selector<readonly Level[]> = selector(
  ({ song, patterns, practice }) => [song.tempo, patterns, practice.drill.patternId],
  (project) => {
    const pattern = chosenPattern(project, project.practice.drill.patternId);
    return pattern ? tellingLevels(pattern, project.song.tempo) : [];
  },
);

/** The player's own list of stages, those included that the song does not play now; the proposal where there is none. */
export function stageList(project: Parameters<typeof selectProposal>[0]): readonly Stage[] {
  return project.practice.drill.stages ?? selectProposal(project);
}

/** The stages that can be played, in order. */
export const selectStages: Selector<readonly Stage[]> = selector(
  (project) => [stageList(project), selectTimeline(project)],
  (project) => {
    const timeline = selectTimeline(project);
    return stageList(project).filter((stage) => isThere(timeline, stage));
  },
);
