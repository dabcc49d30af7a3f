import { phraseTimeline } from '../core/practice/phrase.ts';
import type { PracticeSettings } from '../core/practice/practiceSettings.ts';
import type { Project } from '../core/project.ts';
import { err, ok, type Result } from '../core/result.ts';
import { heldNotes } from '../core/rhythm/heldNotes.ts';
import type { Note } from '../core/rhythm/note.ts';
import type { Pattern } from '../core/rhythm/pattern.ts';
import { realise } from '../core/rhythm/realise.ts';
import type { Timeline } from '../core/song/timeline.ts';
import { voiceSection } from '../core/voicing/voiceTimeline.ts';
import type { Voicing } from '../core/voicing/voicing.ts';
import { selectTempoMap } from '../state/selectors.ts';
import { atSpeed, type PhraseRequest, type Score, type ScoreProblem, unplayable } from './score.ts';

/** The chords with the pattern, or held where there is none or it has another meter than one of the bars. */
function phraseNotes(
  timeline: Timeline,
  voicings: readonly Voicing[],
  pattern: Pattern | undefined,
): Note[] {
  const played = pattern && realise(timeline, voicings, () => pattern);
  return played?.ok ? played.value : heldNotes(timeline, voicings);
}

/** A phrase at `speedPercent` of the song's tempo, in the hands that move least from its first chord to its last. */
export function phraseScore(
  project: Project,
  { phrase, patternId }: PhraseRequest,
  speedPercent: number,
): Result<Score, ScoreProblem> {
  const timeline = phraseTimeline(phrase);
  if (timeline.bars.length === 0) return err({ kind: 'nothing-to-play' });
  const voicings = voiceSection(timeline.chords, project.voicing, 'path');
  if (!voicings.ok) return err(unplayable(timeline.chords[voicings.error.place]!));
  const pattern = project.patterns.find((each) => each.id === patternId);
  return ok({
    timeline,
    notes: phraseNotes(timeline, voicings.value, pattern),
    fromTick: 0,
    toTick: timeline.lengthTicks,
    tempoMap: atSpeed(selectTempoMap(project), speedPercent),
  });
}

/** The practice settings under which a phrase is heard: both hands and nothing else. */
export function phrasePractice(practice: PracticeSettings): PracticeSettings {
  return { ...practice, hands: 'both', band: false, click: { ...practice.click, on: false } };
}
