import { hardJoins, type Join } from '../../../core/practice/joins.ts';
import type { SongToPractise } from '../../../core/practice/planTopics.ts';
import { ok, type Result } from '../../../core/result.ts';
import {
  type NothingPlayable,
  type Selector,
  selector,
  selectPatternAt,
  selectTimeline,
  selectVoicings,
} from '../../../state/selectors.ts';

/** The joins of the song, hardest first. */
export const selectHardJoins: Selector<Result<readonly Join[], NothingPlayable>> = selector(
  (project) => [selectTimeline(project), selectVoicings(project), selectPatternAt(project)],
  (project) => {
    const voicings = selectVoicings(project);
    if (!voicings.ok) return voicings;
    return ok(hardJoins(selectTimeline(project), voicings.value, selectPatternAt(project)));
  },
);

/** The song as a plan for practising reads it. */
export const selectSongToPractise: Selector<Result<SongToPractise, NothingPlayable>> = selector(
  (project) => [project.song, project.patterns, selectVoicings(project)],
  (project) => {
    const { song, patterns } = project;
    const voicings = selectVoicings(project);
    return voicings.ok ? ok({ song, patterns, voicings: voicings.value }) : voicings;
  },
);
