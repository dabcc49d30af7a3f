import { type ChordChange, chordChanges, sameChord } from '../core/practice/chordChange.ts';
import type { DrillChord } from '../core/practice/drill.ts';
import type { DrillRung } from '../core/practice/drillRungs.ts';
import type { SoundingHands } from '../core/practice/soundingHands.ts';
import { barsOfPassage, type Passage } from '../core/practice/stage.ts';
import type { Project } from '../core/project.ts';
import { err, ok, type Result, unreachable } from '../core/result.ts';
import { type Bpm, steadyTempo } from '../core/time/tempoMap.ts';
import { AS_WRITTEN, arrangedProject } from '../state/arrangement.ts';
import { selectTimeline, selectVoicings } from '../state/selectors.ts';
import { stageList } from '../state/stages.ts';
import {
  chordsScore,
  type DrillRequest,
  drillPattern,
  type PlayRequest,
  type Score,
  type ScoreProblem,
  songScore,
} from './score.ts';

type DrillStage = DrillRequest['stage'];

/** A stage as the list of the project has it now; one that is not in the list as it is. */
export function stageNow(project: Project, stage: DrillStage): DrillStage {
  return stage && (stageList(project).find(({ id }) => id === stage.id) ?? stage);
}

/** Which hands the tool sounds where something is asked for: those of a drill's stage, else those that are set. */
export function soundingHandsIn(request: PlayRequest, project: Project): SoundingHands {
  const { hands, drill } = project.practice;
  if (request.kind !== 'drill') return hands;
  return stageNow(project, request.stage)?.tool ?? drill.hands ?? hands;
}

/**
 * The music of a drill on a rung: its stage's passage, or the one held chord, at a tempo. Sections and
 * joins are the song's own bars, with what the song plays there, and count their tempo as the song
 * does. The level is what it is at the song's own tempo, so that the part is the same on every rung, at
 * every stage and in the song.
 */
export function drillScore(
  project: Project,
  stage: DrillStage,
  { level }: DrillRung,
  bpm: Bpm,
): Result<Score, ScoreProblem> {
  const played = arrangedProject(project, { ...AS_WRITTEN, ...(level !== undefined && { level }) });
  const passage: Passage = stage?.passage ?? { kind: 'one-chord' };
  switch (passage.kind) {
    case 'one-chord':
      return onChords(played, [{ chord: project.practice.drill.chord }], bpm);
    case 'two-chords':
      return onChords(played, inTurn(project, passage), bpm);
    case 'section':
    case 'join':
      return inSong(played, passage, bpm);
    default:
      return unreachable(passage);
  }
}

function onChords(
  played: Project,
  chords: readonly DrillChord[],
  bpm: Bpm,
): Result<Score, ScoreProblem> {
  const pattern = drillPattern(played);
  if (!pattern) return err({ kind: 'nothing-to-play' });
  return chordsScore(played, pattern, chords, played.practice.drill.barsPerPass, bpm);
}

/** Two chords in the hands that they have where the song plays them one after the other, if it does. */
function inTurn(
  project: Project,
  { first, second }: Passage & { readonly kind: 'two-chords' },
): DrillChord[] {
  const change = changesOfSong(project).find(
    (each) => sameChord(each.first.chord, first) && sameChord(each.second.chord, second),
  );
  return change
    ? [change.first, change.second].map(({ chord, keys }) => ({ chord, fixedKeys: keys }))
    : [{ chord: first }, { chord: second }];
}

function changesOfSong(project: Project): ChordChange[] {
  const voicings = selectVoicings(project);
  return voicings.ok ? chordChanges(selectTimeline(project), voicings.value) : [];
}

function inSong(played: Project, passage: Passage, bpm: Bpm): Result<Score, ScoreProblem> {
  const bars = barsOfPassage(selectTimeline(played), passage);
  if (!bars) return err({ kind: 'nothing-to-play' });
  const score = songScore(played, bars, 100);
  if (!score.ok) return score;
  return ok({ ...score.value, tempoMap: steadyTempo(bpm, played.song.tempo.beatTicks) });
}
