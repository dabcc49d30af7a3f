import { wordAheadSec } from '../audio/countWords.ts';
import { formatChordSymbol } from '../core/harmony/chordSymbol.ts';
import type { PatternId, SectionId } from '../core/ids.ts';
import { type DrillChord, turnsTimeline } from '../core/practice/drill.ts';
import type { Phrase } from '../core/practice/phrase.ts';
import type { PracticeSettings } from '../core/practice/practiceSettings.ts';
import type { Stage } from '../core/practice/stage.ts';
import type { Project } from '../core/project.ts';
import { err, ok, type Result } from '../core/result.ts';
import { chosenPattern } from '../core/rhythm/chosenPattern.ts';
import { countIn } from '../core/rhythm/countIn.ts';
import type { Level } from '../core/rhythm/levels.ts';
import { type Music, musicOf } from '../core/rhythm/music.ts';
import type { Note, Part, TimedNote } from '../core/rhythm/note.ts';
import type { Pattern } from '../core/rhythm/pattern.ts';
import { type PedalSpan, pedalled, pedalsWithin } from '../core/rhythm/pedal.ts';
import { perform } from '../core/rhythm/perform.ts';
import type { PatternChoice } from '../core/song/song.ts';
import { barAt, type ChordSpan, type Timeline, type TimelineBar } from '../core/song/timeline.ts';
import { barTicks, tempoBeatTicks } from '../core/time/meter.ts';
import { type Bpm, secondsAt, steadyTempo, type TempoMap, tickAt } from '../core/time/tempoMap.ts';
import type { Seconds, Ticks } from '../core/time/ticks.ts';
import { voiceTimeline } from '../core/voicing/voiceTimeline.ts';
import {
  selectBandNotes,
  selectClick,
  selectNotes,
  selectPedals,
  selectTempoMap,
  selectTimeline,
} from '../state/selectors.ts';

/** Bars of a timeline by index, the end exclusive. */
export type BarRange = { readonly firstBar: number; readonly endBar: number };

/** How often something is played: so many times, from 1, or again and again. */
export type Times = number | 'until-stopped';

/** The song, or bars of it. */
export type SongRequest = {
  readonly kind: 'song';
  readonly range?: BarRange;
  readonly times: Times;
};

/**
 * A phrase to be heard at once: its chords held, or with the patterns that are chosen where these fit its bars; or, where
 * `played` is given, just these notes at their tempo.
 */
export type PhraseRequest = PatternChoice & {
  readonly kind: 'phrase';
  readonly phrase: Phrase;
  readonly played?: { readonly notes: readonly Note[]; readonly bpm: Bpm };
};

/** A pattern (see `chosenPattern`) over the held chord, or a section's progression (see `sectionScore`), round and round. With `pattern` that one is only tried: heard without being in the project. */
export type PatternRequest = {
  readonly kind: 'pattern';
  readonly patternId: PatternId;
  readonly pattern?: Pattern;
  readonly over?: SectionId;
  /** Tempo at which it is tried, in beats of the pattern's meter; the song's without. */
  readonly bpm?: Bpm;
};

/**
 * A drill, from a rung on, counted from 0: of a stage, or of one chord as it is set. A stage that is in
 * the project's list is followed there by its id.
 */
export type DrillRequest = {
  readonly kind: 'drill';
  readonly rung: number;
  readonly stage?: Stage;
};

/** Whether a drill goes through chords by themselves, with the drill's pattern, and not through bars of the song. */
export function isOnChords({ stage }: Pick<DrillRequest, 'stage'>): boolean {
  return !stage || stage.passage.kind === 'one-chord' || stage.passage.kind === 'two-chords';
}

/** What can be asked to play. A song without a range plays whole. */
export type PlayRequest = SongRequest | PatternRequest | DrillRequest | PhraseRequest;

export type ScoreProblem =
  | { readonly kind: 'nothing-to-play' }
  | { readonly kind: 'nothing-playable'; readonly chord: string };

/**
 * A stretch of music with every part in it, on the ticks of `timeline`: the notes that start from
 * `fromTick` to before `toTick`. `tempoMap` is the tempo it is played at.
 */
export type Score = {
  readonly timeline: Timeline;
  readonly notes: readonly Note[];
  readonly fromTick: Ticks;
  readonly toTick: Ticks;
  readonly tempoMap: TempoMap;
  /** When the pedal holds on what the tool's hands let go; `notes` have the lengths that are written. */
  readonly pedals?: readonly PedalSpan[];
  /** The one pattern of a drill or of the Rhythm page. */
  readonly pattern?: Pattern;
  /** The level at which hands were thinned for this playing; all of them without. */
  readonly level?: Level;
};

/** A score that says at which level it was made. */
export function withLevel(
  score: Result<Score, ScoreProblem>,
  level: Level | undefined,
): Result<Score, ScoreProblem> {
  return score.ok && level !== undefined ? ok({ ...score.value, level }) : score;
}

/** The pattern of the drill. */
export function drillPattern(project: Project): Pattern | undefined {
  return chosenPattern(project, project.practice.drill.patternId);
}

function withinTicks(notes: readonly Note[], fromTick: Ticks, toTick: Ticks): Note[] {
  return notes.filter((note) => note.startTick >= fromTick && note.startTick < toTick);
}

/** A tempo map at so many per cent of its tempo. */
export function atSpeed(map: TempoMap, speedPercent: number): TempoMap {
  return map.map(({ tick, tempo }) => ({
    tick,
    tempo: { ...tempo, bpm: (tempo.bpm * speedPercent) / 100 },
  }));
}

/** The song, or its bars from and to what `range` names of them, at `speedPercent` of its tempo. */
export function songScore(
  project: Project,
  range: Partial<BarRange> | undefined,
  speedPercent: number,
): Result<Score, ScoreProblem> {
  const timeline = selectTimeline(project);
  const fromTick = timeline.bars[range?.firstBar ?? 0]?.startTick;
  if (fromTick === undefined) return err({ kind: 'nothing-to-play' });
  const toTick =
    timeline.bars[range?.endBar ?? timeline.bars.length]?.startTick ?? timeline.lengthTicks;
  const hands = selectNotes(project);
  if (!hands.ok) return err(unplayable(hands.error.span));
  const band = selectBandNotes(project);
  if (!band.ok) return err(unplayable(band.error.span));
  const notes = [...hands.value, ...band.value, ...selectClick(project)];
  return ok({
    timeline,
    notes: withinTicks(notes, fromTick, toTick),
    pedals: pedalsWithin(selectPedals(project), fromTick, toTick),
    fromTick,
    toTick,
    tempoMap: atSpeed(selectTempoMap(project), speedPercent),
  });
}

/** That no hands fit a chord, by its symbol. */
export function unplayable(span: ChordSpan): ScoreProblem {
  const chord = span.chord === 'no-chord' ? 'N.C.' : formatChordSymbol(span.chord);
  return { kind: 'nothing-playable', chord };
}

/** All of a timeline's music, from its start to its end. */
export function wholeScore(timeline: Timeline, music: Music, tempoMap: TempoMap): Score {
  return {
    timeline,
    notes: [...music.hands, ...music.band, ...music.click],
    pedals: music.pedals,
    fromTick: 0,
    toTick: timeline.lengthTicks,
    tempoMap,
  };
}

/** The drill's chord held, one pattern over it: see `chordsScore`. */
export function oneChordScore(
  project: Project,
  pattern: Pattern,
  bars: number,
  bpm: Bpm,
): Result<Score, ScoreProblem> {
  return chordsScore(project, pattern, [{ chord: project.practice.drill.chord }], bars, bpm);
}

/**
 * Chords held in turn, one pattern over them, as a loop without its ending, `bars` bars long; but each
 * chord is held for whole rounds of the pattern.
 */
export function chordsScore(
  project: Project,
  pattern: Pattern,
  chords: readonly DrillChord[],
  bars: number,
  bpm: Bpm,
): Result<Score, ScoreProblem> {
  const { ending: _, ...main } = pattern;
  const rounds = Math.max(1, Math.ceil(bars / chords.length / pattern.bars));
  const timeline = turnsTimeline(chords, pattern.meter, rounds * pattern.bars);
  const voicings = voiceTimeline(timeline, project.voicing);
  if (!voicings.ok) return err(unplayable(voicings.error.span));
  const music = musicOf({
    timeline,
    voicings: voicings.value,
    patternAt: () => main,
    loop: true,
    click: project.practice.click,
  });
  if (!music.ok) throw new Error(`the drill of “${pattern.name}” has bars of another meter`);
  return ok({
    ...wholeScore(timeline, music.value, steadyTempo(bpm, tempoBeatTicks(pattern.meter))),
    pattern,
  });
}

/** Whether the practice settings want a part: one of the hands, of the band, or the click. */
export function isWanted(part: Part, practice: PracticeSettings): boolean {
  switch (part) {
    case 'left':
    case 'right':
      return practice.hands === 'both' || practice.hands === part;
    case 'click':
      return practice.click.on;
    default:
      return practice.band;
  }
}

/** Whether a pattern is only tried, without being in the project. */
export function isTrial(request: PlayRequest): boolean {
  return request.kind === 'pattern' && request.pattern !== undefined;
}

/** The bar that the score starts in. */
export function firstBar(score: Score): TimelineBar {
  const bar = barAt(score.timeline, score.fromTick);
  if (!bar) throw new Error('a score starts in one of its bars');
  return bar;
}

/** What the player plays of a score; `leadInSec` is the length of the count-in before second 0. */
export type TimedScore = {
  readonly notes: readonly TimedNote[];
  readonly leadInSec: Seconds;
  readonly lengthSec: Seconds;
};

/**
 * The score in seconds from its `fromTick`, with the parts that the practice settings want, after
 * `countInBars` bars of count-in (which is heard even where the click is off). A spoken number begins
 * before its beat, to be heard on it; the first one hence a little before the lead-in. Notes of the
 * hands that the tool plays last as long as the pedal holds them.
 */
export function timedScore(
  score: Score,
  practice: PracticeSettings,
  countInBars: number,
): TimedScore {
  const { meter } = firstBar(score);
  const { countInVoice, sound } = practice.click;
  const manner = { spoken: countInVoice === 'spoken', ...(sound && { sound }) };
  const lead = countIn(meter, countInBars, manner).map((note) => ({
    ...note,
    startTick: note.startTick + score.fromTick,
  }));
  const wanted = score.notes.filter((note) => isWanted(note.part, practice));
  const zeroSec = secondsAt(score.tempoMap, score.fromTick);
  return {
    notes: perform([...lead, ...pedalled(wanted, score.pedals ?? [])], score.tempoMap).map(
      (note) => ({
        ...note,
        startSec: note.startSec - zeroSec - wordAheadSec(note.says),
      }),
    ),
    leadInSec: zeroSec - secondsAt(score.tempoMap, score.fromTick - countInBars * barTicks(meter)),
    lengthSec: secondsAt(score.tempoMap, score.toTick) - zeroSec,
  };
}

/** The tick of the score's timeline that sounds so many seconds after its `fromTick`. */
export function scoreTick(score: Score, sec: Seconds): number {
  return tickAt(score.tempoMap, sec + secondsAt(score.tempoMap, score.fromTick));
}

/** The inverse of `scoreTick`. */
export function scoreSeconds(score: Score, tick: number): Seconds {
  return secondsAt(score.tempoMap, tick) - secondsAt(score.tempoMap, score.fromTick);
}
