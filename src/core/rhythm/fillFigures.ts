import type { Ticks } from '../time/ticks.ts';
import type { FillRoom, FillStep } from './fillRoom.ts';
import { beatAround, fillBeats, fillSteps } from './fillRoom.ts';
import type { LeftHit, RightHit, Touch } from './pattern.ts';
import type { BassTone, VoiceTone } from './tones.ts';

/** The fills there are, the smallest first (common practice of accompanying). */
export const FILL_KINDS = [
  'pick-up',
  'let-ring',
  'bass-walk',
  'run-up',
  'closing-in',
  'build',
  'hand-to-hand',
  'stop',
  'push',
] as const;

export type FillKind = (typeof FILL_KINDS)[number];

/** What a fill does from a place of the bar on. A hand that `goes on` plays what it plays in the pattern. */
export type FillFigure = {
  readonly from: Ticks;
  readonly left: readonly LeftHit[] | 'goes on';
  readonly right: readonly RightHit[] | 'goes on';
};

/** More time than the limits ask for, so that a fill stays easy. */
const EASE = 1.2;

function plain<Tone extends BassTone | VoiceTone>(
  { at, length }: FillStep,
  play: readonly Tone[],
  touch: Touch = 'plain',
) {
  return { at, length, play, touch, held: true } as const;
}

const VOICES = ['voice-1', 'voice-2', 'voice-3', 'voice-4', 'voice-5', 'voice-6'] as const;

/** A run goes on in threes (1 2 3, 2 3 4 …) where it has more notes than there are voices, and so far at the most. */
const LONGEST_RUN = 3 * (VOICES.length - 2);

function risingVoices(count: number): VoiceTone[] {
  const lowest = count < 3 ? 1 : 0;
  return Array.from({ length: count }, (_, i) => {
    const voice = count > VOICES.length ? Math.floor(i / 3) + (i % 3) : lowest + i;
    return VOICES[voice]!;
  });
}

/** The steps of single notes from a tick on, quicker at the end, no more than a run has. */
function runSteps(from: Ticks, room: FillRoom): FillStep[] {
  const gapSec = EASE * room.limits.strikeGapSec;
  const gathering = fillSteps(from, 'gathering', gapSec, room);
  const steps = gathering.length > LONGEST_RUN ? fillSteps(from, 'even', gapSec, room) : gathering;
  return steps.slice(-LONGEST_RUN);
}

function chordSteps(from: Ticks, room: FillRoom): FillStep[] {
  return fillSteps(from, 'even', EASE * room.limits.repeatGapSec, room);
}

/** What a bass plays on so many steps that lead into the next root. */
function walkTones(count: number): BassTone[] {
  const up: readonly BassTone[] = ['root', 'third', 'fifth'];
  const ways = Array.from({ length: count - 1 }, (_, i) => up.at((i + 1 - count) % up.length)!);
  return [...ways, 'approach'];
}

function walk(room: FillRoom): LeftHit[] {
  const beats = fillBeats(room.turn, room);
  const steps = beats.length > 1 ? beats : chordSteps(room.turn, room);
  const tones = walkTones(steps.length);
  return steps.map((step, i) => plain(step, [tones[i]!]));
}

/** The bass in octaves, as far as the hand reaches them. */
function octaves({ limits }: FillRoom): readonly BassTone[] {
  return limits.spanSemitones >= 12 ? ['root', 'octave'] : ['root'];
}

function pickUp(room: FillRoom): FillFigure {
  const last = room.beats.at(-1)!;
  const inBeat = runSteps(Math.max(last.start, room.turn), room);
  const steps = inBeat.length > 2 ? inBeat.slice(1) : inBeat;
  const from = steps[0]!.at;
  return {
    from,
    left: [plain({ ...steps.at(-1)!, at: from, length: room.end - from }, ['approach'])],
    right: steps.map((step, i) => plain(step, [VOICES[i + 1]!])),
  };
}

function runUp(room: FillRoom): FillFigure {
  const steps = runSteps(room.turn, room);
  const voices = risingVoices(steps.length);
  return {
    from: steps[0]!.at,
    left: 'goes on',
    right: steps.map((step, i) => plain(step, [voices[i]!])),
  };
}

function closingIn(room: FillRoom): FillFigure {
  const steps = runSteps(room.turn, room);
  const voices = risingVoices(steps.length).toReversed();
  return {
    from: room.turn,
    left: walk(room),
    right: steps.map((step, i) => plain(step, [voices[i]!])),
  };
}

function build(room: FillRoom): FillFigure {
  const steps = chordSteps(room.turn, room);
  const touchAt = (i: number): Touch => {
    if (i === steps.length - 1) return 'accent';
    return steps.length > 3 && i < steps.length / 3 ? 'ghost' : 'plain';
  };
  return {
    from: room.turn,
    left: fillBeats(room.turn, room).map((beat) => plain(beat, octaves(room))),
    right: steps.map((step, i) => plain(step, ['all'], touchAt(i))),
  };
}

/** The left hand strikes on the first step of each beat (of each two where beats have four), the right hand on the others. */
function handToHand(room: FillRoom): FillFigure | undefined {
  const steps = chordSteps(room.turn, room);
  const group = ({ pace }: FillStep) => (pace % 3 === 0 ? 3 : 2);
  const isLeft = (step: FillStep) => {
    const beat = room.beats.findLast(({ start }) => start <= step.at)!;
    const place = Math.round(((step.at - beat.start) * step.pace) / beat.length);
    return place % group(step) === 0;
  };
  if (steps.every(isLeft)) return undefined;
  const short = { held: false } as const;
  return {
    from: room.turn,
    left: steps.filter(isLeft).map((step) => ({ ...plain(step, octaves(room)), ...short })),
    right: steps
      .filter((step) => !isLeft(step))
      .map((step, i, all) => ({
        ...plain(step, ['all'], i === all.length - 1 ? 'accent' : 'plain'),
        ...short,
      })),
  };
}

function stop(room: FillRoom): FillFigure {
  const at = room.turn;
  const length = Math.min(beatAround(at, room), room.end - at);
  const struck = { touch: 'accent', held: false } as const;
  const step = { at, length, pace: 1 } as const;
  return {
    from: at,
    left: [{ ...plain(step, octaves(room)), ...struck }],
    right: [{ ...plain(step, ['all']), ...struck }],
  };
}

/** Both hands strike the next chord on the bar's last off-beat and hold it over the bar line. */
function push(room: FillRoom): FillFigure | undefined {
  const last = fillSteps(room.turn, 'even', room.limits.strikeGapSec, room).at(-1)!;
  if (last.pace === 1) return undefined;
  const step = { ...last, length: last.length + beatAround(last.at, room) };
  const leads = { touch: 'accent', anticipates: true } as const;
  return {
    from: last.at,
    left: [{ ...plain(step, ['root']), ...leads }],
    right: [{ ...plain(step, ['all']), ...leads }],
  };
}

function letRing(room: FillRoom): FillFigure {
  const at = room.turn;
  const step = { at, length: room.end - at, pace: 1 } as const;
  return { from: at, left: [plain(step, ['root'])], right: [plain(step, ['all'])] };
}

/**
 * What each fill plays in a bar; undefined where it can't be played there. A run breaks the chord
 * upwards, quicker in the last beat if the pattern moves so; closing in it falls while the bass walks
 * up; a walk ends a semitone under the next root; a build repeats the chord and grows; hand to hand
 * the hands alternate; at a stop both strike once and are silent; a push brings the next chord early.
 */
export const FILL_FIGURES: Readonly<Record<FillKind, (room: FillRoom) => FillFigure | undefined>> =
  {
    'pick-up': pickUp,
    'let-ring': letRing,
    'bass-walk': (room) => ({ from: room.turn, left: walk(room), right: 'goes on' }),
    'run-up': runUp,
    'closing-in': closingIn,
    build,
    'hand-to-hand': handToHand,
    stop,
    push,
  };
