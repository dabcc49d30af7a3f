import type { Chord } from '../../core/harmony/chord.ts';
import type { PatternId } from '../../core/ids.ts';
import type {
  ClickSettings,
  DrillSettings,
  PracticeSettings,
  SoundingHands,
} from '../../core/practice/practiceSettings.ts';
import type { TempoLadder } from '../../core/practice/tempoLadder.ts';
import { type Edit, withParts } from './edit.ts';
import { settableBpm } from './song.ts';

/** Most passes that a rung, and most bars that a pass, can be given. */
export const LONGEST_PRACTICE = { passesPerRung: 64, barsPerPass: 64 } as const;

function inPractice(change: (practice: PracticeSettings) => PracticeSettings): Edit {
  return (project) => withParts(project, { practice: change(project.practice) });
}

function inDrill(change: (drill: DrillSettings) => DrillSettings): Edit {
  return inPractice((practice) => withParts(practice, { drill: change(practice.drill) }));
}

function wholeBetween(lowest: number, highest: number, value: number): number {
  return Math.min(Math.max(Math.round(value), lowest), highest);
}

/** Changes some settings of the click; its level is brought into 0 to 1. */
export function setClick(parts: Partial<ClickSettings>): Edit {
  return inPractice((practice) => {
    const click = { ...practice.click, ...parts };
    const level = Math.min(Math.max(click.level, 0), 1);
    return withParts(practice, { click: { ...click, level } });
  });
}

/** Which hands the tool sounds; the player plays the others. */
export function setSoundingHands(hands: SoundingHands): Edit {
  return inPractice((practice) => withParts(practice, { hands }));
}

/** Whether the band of the patterns' sources sounds. */
export function setBand(band: boolean): Edit {
  return inPractice((practice) => withParts(practice, { band }));
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
 * whole number from 1 to `LONGEST_PRACTICE`, the step to at least 1 bpm or 1 per cent.
 */
export function setLadder(parts: Partial<TempoLadder>): Edit {
  return inDrill((drill) => {
    const ladder = { ...drill.ladder, ...parts };
    const { step } = ladder;
    return withParts(drill, {
      ladder: {
        ...ladder,
        startBpm: settableBpm(ladder.startBpm),
        goalBpm: settableBpm(ladder.goalBpm),
        step:
          step.kind === 'bpm'
            ? { ...step, bpm: Math.max(step.bpm, 1) }
            : { ...step, percent: Math.max(step.percent, 1) },
        passesPerRung: wholeBetween(1, LONGEST_PRACTICE.passesPerRung, ladder.passesPerRung),
      },
    });
  });
}

/** Bars held to one pass, brought to a whole number from 1 to `LONGEST_PRACTICE`. */
export function setBarsPerPass(bars: number): Edit {
  const barsPerPass = wholeBetween(1, LONGEST_PRACTICE.barsPerPass, bars);
  return inDrill((drill) => withParts(drill, { barsPerPass }));
}

/** Where the drill counts in. */
export function setCountInAt(countInAt: DrillSettings['countInAt']): Edit {
  return inDrill((drill) => withParts(drill, { countInAt }));
}
