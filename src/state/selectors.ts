import type { Project } from '../core/project.ts';
import { ok, type Result } from '../core/result.ts';
import { clickTrack } from '../core/rhythm/click.ts';
import { patternsThatFit } from '../core/rhythm/fittedPattern.ts';
import { type Music, musicOf } from '../core/rhythm/music.ts';
import type { Note } from '../core/rhythm/note.ts';
import { type PatternAt, patternForBar } from '../core/rhythm/patternAt.ts';
import type { PedalSpan } from '../core/rhythm/pedal.ts';
import { type ChordSpan, type Timeline, tempoMapOf, timelineOf } from '../core/song/timeline.ts';
import type { TempoMap } from '../core/time/tempoMap.ts';
import { voiceTimeline } from '../core/voicing/voiceTimeline.ts';
import type { Voicing } from '../core/voicing/voicing.ts';

/** Something computed from a project. */
export type Selector<T> = (project: Project) => T;

/** No two hands can play this chord under the project's settings. */
export type NothingPlayable = { readonly kind: 'nothing-playable'; readonly span: ChordSpan };

/** Two: the song as it is written, which the pages show, and as it is arranged, which may play. */
const REMEMBERED = 2;

/**
 * A selector that computes anew only when one of the parts that `partsOf` lists is another object
 * than the last two times; otherwise it gives the very same result.
 */
export function selector<T>(
  partsOf: (project: Project) => readonly unknown[],
  compute: Selector<T>,
): Selector<T> {
  const remembered: { readonly parts: readonly unknown[]; readonly value: T }[] = [];
  return (project) => {
    const parts = partsOf(project);
    const known = remembered.findIndex((each) => areSame(each.parts, parts));
    const latest = remembered[known] ?? { parts, value: compute(project) };
    remembered.splice(known < 0 ? REMEMBERED - 1 : known, 1);
    remembered.unshift(latest);
    return latest.value;
  };
}

function areSame(some: readonly unknown[], others: readonly unknown[]): boolean {
  return some.length === others.length && some.every((part, i) => Object.is(part, others[i]));
}

/** The song laid out in playing order. */
export const selectTimeline: Selector<Timeline> = selector(
  ({ song }) => [song.sections, song.form],
  ({ song }) => timelineOf(song),
);

/** When everything sounds. */
export const selectTempoMap: Selector<TempoMap> = selector(
  ({ song }) => [song.tempo],
  ({ song }) => tempoMapOf(song),
);

/** The chords that are played, section by section: all of the song that voicings depend on. */
function playedChords({ song }: Project): readonly unknown[] {
  const sections = new Map(song.sections.map((section) => [section.id, section]));
  return song.form.flatMap(({ sectionId, ending }) => {
    const section = sections.get(sectionId);
    const cut = ending && [ending, section?.meter, section?.barMeters];
    return [sectionId, section?.slots, ...(cut ?? [])];
  });
}

/** The hands for every chord of the timeline; only chords, their order and the voicing settings change them. */
export const selectVoicings: Selector<Result<readonly Voicing[], NothingPlayable>> = selector(
  (project) => [project.voicing, ...playedChords(project)],
  (project) => voiceTimeline(selectTimeline(project), project.voicing),
);

/** The pattern of each bar of the timeline, as `patternsThatFit` fits it to bars of another meter. */
export const selectPatternAt: Selector<PatternAt> = selector(
  (project) => [project.patterns, selectTimeline(project)],
  (project) => {
    const timeline = selectTimeline(project);
    return patternsThatFit(patternForBar(project.patterns, timeline), timeline);
  },
);

/** What plays in the whole song but the click, which changes by itself. */
const selectMusic: Selector<Result<Music, NothingPlayable>> = selector(
  (project) => [selectPatternAt(project), selectVoicings(project)],
  (project) => {
    const voicings = selectVoicings(project);
    if (!voicings.ok) return voicings;
    const music = musicOf({
      timeline: selectTimeline(project),
      voicings: voicings.value,
      patternAt: selectPatternAt(project),
    });
    if (!music.ok) throw new Error(`bar ${music.error.bar} got a pattern of another meter`);
    return music;
  },
);

/** What both hands play in the whole song. */
export const selectNotes: Selector<Result<readonly Note[], NothingPlayable>> = selector(
  (project) => [selectMusic(project)],
  (project) => {
    const music = selectMusic(project);
    return music.ok ? ok(music.value.hands) : music;
  },
);

/** What the band plays in the whole song. */
export const selectBandNotes: Selector<Result<readonly Note[], NothingPlayable>> = selector(
  (project) => [selectMusic(project)],
  (project) => {
    const music = selectMusic(project);
    return music.ok ? ok(music.value.band) : music;
  },
);

/** When the pedal is down in the whole song; never where hands cannot be found. */
export const selectPedals: Selector<readonly PedalSpan[]> = selector(
  (project) => [selectMusic(project)],
  (project) => {
    const music = selectMusic(project);
    return music.ok ? music.value.pedals : [];
  },
);

/** The click of the whole song, as the practice settings will have it, and without rests. */
export const selectClick: Selector<readonly Note[]> = selector(
  (project) => {
    const { beats, subdivision, sound } = project.practice.click;
    return [selectTimeline(project), beats, subdivision, sound];
  },
  (project) => clickTrack(selectTimeline(project), project.practice.click),
);
