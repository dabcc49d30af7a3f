import type { PatternId } from '../../../core/ids.ts';
import { type Pattern, patternSteps, type Step, TOUCHES } from '../../../core/rhythm/pattern.ts';
import type { Source, Stroke } from '../../../core/rhythm/sources.ts';
import type { BassTone, VoiceTone } from '../../../core/rhythm/tones.ts';
import type { HandName } from '../../../core/voicing/voicing.ts';
import type { Edit } from '../../../state/edits/edit.ts';
import {
  addHit,
  type HitOf,
  lengthenHit,
  moveHit,
  removeHit,
  type Scope,
  setHitAnticipates,
  setHitHeld,
  setHitPlay,
  setHitTouch,
} from '../../../state/edits/hits.ts';
import { pullStroke } from '../../../state/edits/pullStroke.ts';
import { PART_NAMES } from '../pattern/sourceNames.ts';
import { BASS_NAMES, VOICE_NAMES } from '../pattern/toneNames.ts';
import type { GridAction } from './gridKeys.ts';
import { hitOnStep } from './gridPlace.ts';

/** Where hits are changed: the pattern as it is shown (`shownPattern`), one hand, one step. */
export type HitPlace = {
  readonly patternId: PatternId;
  readonly scope: Scope;
  readonly shown: Pattern;
  readonly hand: HandName;
  readonly column: number;
};

/** One undoable change, and the step that the cursor then stands on. */
export type HitChange = {
  readonly edit: Edit;
  readonly label: string;
  readonly column: number;
};

type Tone = BassTone | VoiceTone;

/** What a new hit plays. */
const NEW_TONES = { left: ['root'], right: ['all'] } as const;

/** A plain held hit as long as its step; the tones are those of the hand it is for. */
function newHit({ at, length }: Step, play: readonly Tone[]): HitOf[HandName] {
  return { at, length, play, touch: 'plain', held: true } as HitOf[HandName];
}

/** Adds a hit of one step on a step: the left hand's plays the root, the right hand's the chord, or else what is said. */
export function hitAdded(place: HitPlace, play?: readonly Tone[]): HitChange | undefined {
  const { patternId, scope, hand, column } = place;
  const step = patternSteps(place.shown)[column];
  if (!step) return undefined;
  const hit = newHit(step, play ?? NEW_TONES[hand]);
  return { edit: addHit(patternId, hand, hit, scope), label: 'add hit', column };
}

/** Pulls a stroke of the band into a hand. */
export function strokePulled(
  patternId: PatternId,
  source: Source,
  stroke: Stroke,
  hand: HandName,
): Pick<HitChange, 'edit' | 'label'> {
  return {
    edit: pullStroke(patternId, source.id, stroke.at, hand),
    label: `pull ${PART_NAMES[source.part]} into the ${hand} hand`,
  };
}

/** The tone of a hand that a key chooses; undefined where the hand has none of that key. */
function toneOfKey(hand: HandName, key: string): Tone | undefined {
  const names = hand === 'left' ? BASS_NAMES : VOICE_NAMES;
  return (Object.keys(names) as Tone[]).find(
    (tone) => (names as Readonly<Record<string, { key: string }>>)[tone]?.key === key,
  );
}

/** Tones with one more, or without it; the last one stays. */
export function toneSwitched<T extends Tone>(play: readonly T[], tone: T): readonly T[] {
  if (!play.includes(tone)) return [...play, tone];
  return play.length > 1 ? play.filter((each) => each !== tone) : play;
}

/**
 * What an action of the grid changes on a step of a hand; undefined where it changes nothing there.
 * A tone on an empty step adds a hit that plays it.
 */
export function hitChange(place: HitPlace, action: GridAction): HitChange | undefined {
  const { patternId, scope, shown, hand, column } = place;
  const steps = patternSteps(shown);
  const step = steps[column];
  const hit = step && hitOnStep<HitOf[HandName]>(shown[hand], step);
  if (!step) return undefined;
  if (!hit) {
    const tone = action.kind === 'tone' ? toneOfKey(hand, action.key) : undefined;
    return tone && hitAdded(place, [tone]);
  }
  switch (action.kind) {
    case 'remove':
      return { edit: removeHit(patternId, hand, hit.at, scope), label: 'remove hit', column };
    case 'lengthen':
      return {
        edit: lengthenHit(patternId, hand, hit.at, action.by, scope),
        label: 'length of hit',
        column: steps.findLastIndex(({ at }) => at <= hit.at),
      };
    case 'move': {
      const from = steps.findLastIndex(({ at }) => at <= hit.at);
      const to = steps[from + action.by];
      return (
        to && {
          edit: moveHit(patternId, hand, hit.at, to.at, scope),
          label: 'move hit',
          column: from + action.by,
        }
      );
    }
    case 'touch': {
      const touch = TOUCHES[(TOUCHES.indexOf(hit.touch) + 1) % TOUCHES.length]!;
      return { edit: setHitTouch(patternId, hand, hit.at, touch, scope), label: 'touch', column };
    }
    case 'held':
      return {
        edit: setHitHeld(patternId, hand, hit.at, !hit.held, scope),
        label: 'short or held',
        column,
      };
    case 'leads':
      return {
        edit: setHitAnticipates(patternId, hand, hit.at, !hit.anticipates, scope),
        label: 'lead into next chord',
        column,
      };
    case 'tone': {
      const tone = toneOfKey(hand, action.key);
      if (!tone) return undefined;
      const play = action.how === 'also' ? toneSwitched<Tone>(hit.play, tone) : [tone];
      return {
        edit: setHitPlay(patternId, hand, hit.at, play as HitOf[HandName]['play'], scope),
        label: 'what a hit plays',
        column,
      };
    }
    default:
      return undefined;
  }
}
