import { phraseTimeline } from '../core/practice/phrase.ts';
import type { PracticeSettings } from '../core/practice/practiceSettings.ts';
import type { Project } from '../core/project.ts';
import { err, ok, type Result } from '../core/result.ts';
import { musicOrHeld } from '../core/rhythm/music.ts';
import { patternForBar } from '../core/rhythm/patternAt.ts';
import type { PatternChoice } from '../core/song/song.ts';
import type { Timeline } from '../core/song/timeline.ts';
import { tempoBeatTicks } from '../core/time/meter.ts';
import { steadyTempo } from '../core/time/tempoMap.ts';
import { voiceSection } from '../core/voicing/voiceTimeline.ts';
import { selectTempoMap } from '../state/selectors.ts';
import {
  atSpeed,
  type PhraseRequest,
  type Score,
  type ScoreProblem,
  unplayable,
  wholeScore,
} from './score.ts';

/** The timeline of a phrase as a section that plays the patterns which are chosen. */
function withPatterns(timeline: Timeline, choice: PatternChoice): Timeline {
  return { ...timeline, sections: timeline.sections.map((span) => ({ ...span, ...choice })) };
}

/** A phrase at `speedPercent` of the song's tempo, in the hands that move least from its first chord to its last. */
export function phraseScore(
  project: Project,
  { phrase, played, patternId, patternChanges }: PhraseRequest,
  speedPercent: number,
): Result<Score, ScoreProblem> {
  const timeline = withPatterns(phraseTimeline(phrase), {
    ...(patternId !== undefined && { patternId }),
    ...(patternChanges && { patternChanges }),
  });
  if (timeline.bars.length === 0) return err({ kind: 'nothing-to-play' });
  if (played)
    return ok({
      timeline,
      notes: played.notes,
      fromTick: 0,
      toTick: timeline.lengthTicks,
      tempoMap: steadyTempo(played.bpm, tempoBeatTicks(phrase.meter)),
    });
  const voicings = voiceSection(timeline.chords, project.voicing, 'path');
  if (!voicings.ok) return err(unplayable(timeline.chords[voicings.error.place]!));
  const music = musicOrHeld({
    timeline,
    voicings: voicings.value,
    patternAt: patternForBar(project.patterns, timeline),
  });
  return ok(wholeScore(timeline, music, atSpeed(selectTempoMap(project), speedPercent)));
}

/** The practice settings under which a phrase is heard: both hands, and the band where notes of it are given. */
export function phrasePractice(
  practice: PracticeSettings,
  { played }: PhraseRequest,
): PracticeSettings {
  return {
    ...practice,
    hands: 'both',
    band: played !== undefined,
    click: { ...practice.click, on: false },
  };
}
