import type { Chord } from '../../core/harmony/chord.ts';
import type { PatternId } from '../../core/ids.ts';
import type {
  ClickSettings,
  DrillSettings,
  PracticeSettings,
} from '../../core/practice/practiceSettings.ts';
import type { SoundingHands } from '../../core/practice/soundingHands.ts';
import type { Stage } from '../../core/practice/stage.ts';
import {
  LADDER_STEPS,
  type LadderStep,
  type TempoLadder,
} from '../../core/practice/tempoLadder.ts';
import { type ClickRests, LONGEST_CLICK_REST } from '../../core/rhythm/clickRests.ts';
import { BPM_RANGE } from '../../core/time/tempoMap.ts';
import { brought, type Edit, type ProjectParts, withParts } from './edit.ts';

/** Most passes that a rung, bars that a pass, and unclean rungs that a fall can be given. */
export const LONGEST_PRACTICE = { passesPerRung: 64, barsPerPass: 64, fallBackAfter: 16 } as const;

const SHARES = { lowest: 0, highest: 1 } as const;

function inPractice(change: (practice: PracticeSettings) => PracticeSettings): Edit {
  return (project) => withParts(project, { practice: change(project.practice) });
}

function inDrill(change: (drill: DrillSettings) => DrillSettings): Edit {
  return inPractice((practice) => withParts(practice, { drill: change(practice.drill) }));
}

function broughtCount(count: number, highest: number, before: number): number {
  return brought(Math.round(count), { lowest: 1, highest }, before);
}

function settableStep(step: LadderStep, before: LadderStep): LadderStep {
  if (step.kind === 'marks') return step;
  const size = step.kind === 'bpm' ? step.bpm : step.percent;
  if (!Number.isFinite(size)) return before;
  const settable = brought(size, LADDER_STEPS, size);
  return step.kind === 'bpm' ? { ...step, bpm: settable } : { ...step, percent: settable };
}

function settableRests({ sounding, resting }: ClickRests, before: ClickRests): ClickRests {
  return {
    sounding: broughtCount(sounding, LONGEST_CLICK_REST, before.sounding),
    resting: broughtCount(resting, LONGEST_CLICK_REST, before.resting),
  };
}

/**
 * Changes some settings of the click; undefined takes an optional one away. The level is brought
 * into 0 to 1, the bars of its rests into 1 to `LONGEST_CLICK_REST`.
 */
export function setClick(parts: ProjectParts<ClickSettings>): Edit {
  return inPractice((practice) => {
    const { click } = practice;
    const { level = click.level, rests } = parts;
    return withParts(practice, {
      click: withParts(click, {
        ...parts,
        level: brought(level, SHARES, click.level),
        ...(rests && { rests: settableRests(rests, click.rests ?? rests) }),
      }),
    });
  });
}

/** Which hands the tool sounds; the player plays the others. */
export function setSoundingHands(hands: SoundingHands): Edit {
  return inPractice((practice) => withParts(practice, { hands }));
}

/** Which hands the tool sounds in the drill; the song and the Rhythm page keep theirs. */
export function setDrillHands(hands: SoundingHands): Edit {
  return inDrill((drill) => withParts(drill, { hands }));
}

/** Whether the band of the patterns' sources sounds. */
export function setBand(band: boolean): Edit {
  return inPractice((practice) => withParts(practice, { band }));
}

/**
 * Has the drill hold the key's own chord under a pattern, up to the song's tempo: a ladder that starts above it
 * starts at two thirds of it. Nothing where there is no such pattern.
 */
export function drillInSong(patternId: PatternId): Edit {
  return (project) => {
    if (!project.patterns.some(({ id }) => id === patternId)) return project;
    const { key, tempo } = project.song;
    const chord: Chord = { root: key.tonic, quality: key.mode, tensions: [] };
    const goalBpm = Math.round(tempo.bpm);
    const { startBpm } = project.practice.drill.ladder;
    const start = startBpm < goalBpm ? startBpm : Math.round((2 * goalBpm) / 3);
    const whole = setLadder({ goalBpm, startBpm: start })(project);
    return inDrill((drill) => withParts(drill, { chord, patternId }))(whole);
  };
}

/** The chord that the drill holds. */
export function setDrillChord(chord: Chord): Edit {
  return inDrill((drill) => withParts(drill, { chord }));
}

/** The pattern that is drilled; undefined for the first of the project, as does a pattern that is not there. */
export function setDrillPattern(patternId: PatternId | undefined): Edit {
  return (project) => {
    const isThere =
      patternId === undefined || project.patterns.some((pattern) => pattern.id === patternId);
    return isThere ? inDrill((drill) => withParts(drill, { patternId }))(project) : project;
  };
}

/**
 * Changes some of the tempo ladder. Start and goal are brought into `BPM_RANGE`, the passes to a
 * whole number from 1 to `LONGEST_PRACTICE`, the step to at least 1 bpm or 1 per cent, the rungs
 * before a fall to a whole number from 1; undefined takes those away.
 */
export function setLadder(parts: ProjectParts<TempoLadder>): Edit {
  return inDrill((drill) => {
    const before = drill.ladder;
    const ladder = withParts(before, parts);
    const { fallBackAfter } = ladder;
    return withParts(drill, {
      ladder: {
        ...ladder,
        startBpm: brought(ladder.startBpm, BPM_RANGE, before.startBpm),
        goalBpm: brought(ladder.goalBpm, BPM_RANGE, before.goalBpm),
        step: settableStep(ladder.step, before.step),
        passesPerRung: broughtCount(
          ladder.passesPerRung,
          LONGEST_PRACTICE.passesPerRung,
          before.passesPerRung,
        ),
        ...(fallBackAfter !== undefined && {
          fallBackAfter: broughtCount(
            fallBackAfter,
            LONGEST_PRACTICE.fallBackAfter,
            before.fallBackAfter ?? 1,
          ),
        }),
      },
    });
  });
}

/** Bars held to one pass, brought to a whole number from 1 to `LONGEST_PRACTICE`. */
export function setBarsPerPass(bars: number): Edit {
  return inDrill((drill) =>
    withParts(drill, {
      barsPerPass: broughtCount(bars, LONGEST_PRACTICE.barsPerPass, drill.barsPerPass),
    }),
  );
}

/** The player's own list of stages, as it is to be from now on; undefined for the proposal again. */
export function setStages(stages: readonly Stage[] | undefined): Edit {
  return inDrill((drill) => withParts(drill, { stages }));
}

/** Where the drill counts in. */
export function setCountInAt(countInAt: DrillSettings['countInAt']): Edit {
  return inDrill((drill) => withParts(drill, { countInAt }));
}
