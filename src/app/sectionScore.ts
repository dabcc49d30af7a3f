import type { SectionId } from '../core/ids.ts';
import type { Project } from '../core/project.ts';
import { err, ok, type Result } from '../core/result.ts';
import { patternsThatFit } from '../core/rhythm/fittedPattern.ts';
import { musicOf } from '../core/rhythm/music.ts';
import type { Pattern } from '../core/rhythm/pattern.ts';
import { type Timeline, timelineOf } from '../core/song/timeline.ts';
import { sameMeter, tempoBeatTicks } from '../core/time/meter.ts';
import { type Bpm, steadyTempo } from '../core/time/tempoMap.ts';
import { voiceTimeline } from '../core/voicing/voiceTimeline.ts';
import { oneChordScore, type Score, type ScoreProblem, unplayable, wholeScore } from './score.ts';

/**
 * A section by itself, played once, as its chart is written; undefined where the song has no such
 * section. It belongs to no playing of the song, so that music goes on in it from any other chords.
 */
function sectionTimeline({ song }: Project, sectionId: SectionId): Timeline | undefined {
  if (!song.sections.some(({ id }) => id === sectionId)) return undefined;
  const timeline = timelineOf({ ...song, form: [{ id: 'by itself', sectionId }] });
  const sections = timeline.sections.map(({ formEntryId: _entry, ...span }) => span);
  return { ...timeline, sections };
}

/** Whether a pattern can be heard over a section: some of its bars are in the pattern's meter. */
export function isHeardOver(
  project: Project,
  pattern: Pick<Pattern, 'meter'>,
  sectionId: SectionId,
): boolean {
  const bars = sectionTimeline(project, sectionId)?.bars ?? [];
  return bars.some(({ meter }) => sameMeter(meter, pattern.meter));
}

/**
 * A pattern over the progression of a section, round and round, its ending in the last bar; over the
 * held chord (`oneChordScore`) where it can't be heard there (`isHeardOver`). Tempo in felt beats of
 * the pattern's meter.
 */
export function sectionScore(
  project: Project,
  pattern: Pattern,
  sectionId: SectionId,
  bpm: Bpm,
): Result<Score, ScoreProblem> {
  const timeline = sectionTimeline(project, sectionId);
  if (!timeline || !isHeardOver(project, pattern, sectionId))
    return oneChordScore(project, pattern, pattern.bars, bpm);
  const voicings = voiceTimeline(timeline, project.voicing);
  if (!voicings.ok) return err(unplayable(voicings.error.span));
  const music = musicOf({
    timeline,
    voicings: voicings.value,
    patternAt: patternsThatFit(() => pattern, timeline),
    loop: true,
    click: project.practice.click,
  });
  if (!music.ok) throw new Error(`“${pattern.name}” was laid over a bar of another meter`);
  return ok({
    ...wholeScore(timeline, music.value, steadyTempo(bpm, tempoBeatTicks(pattern.meter))),
    pattern,
  });
}
