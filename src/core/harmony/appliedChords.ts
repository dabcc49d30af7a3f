import {
  above,
  type HeardChord,
  hasThird,
  isDominant,
  isDominantSeventh,
  isLeading,
  isSecond,
} from './heardChords.ts';
import type { KeyReading, Target } from './keyReading.ts';
import { type Finding, type Moment, nextMoment } from './moment.ts';
import { type NumeralTarget, targetKey } from './numerals.ts';
import { transposePitchClass } from './pitch.ts';

function applied({ of }: Target, interval: string, { key }: KeyReading): Finding {
  return { root: transposePitchClass(targetKey(of, key).tonic, interval), of };
}

/** Whether a chord stands on the target's root with its third, as its dominant seventh, or without a third. */
function isTarget(after: HeardChord, { root, of }: Target): boolean {
  if (after.root !== root) return false;
  const isMajor = hasThird(after, 4);
  if (isMajor === hasThird(after, 3)) return true;
  return isMajor === (of.mode === 'major') || isDominantSeventh(after);
}

/** Whether a chord is the sixth of the target's key, to which its dominant can lead instead. */
function isDeceptive(after: HeardChord, { root, of }: Target): boolean {
  return of.mode === 'minor'
    ? after.root === above(root, 8) && hasThird(after, 4)
    : after.root === above(root, 9) && hasThird(after, 3);
}

/**
 * Whether a dominant is followed by what it leads to: the target; a chord over the target's root (the
 * cadential six-four); the tritone substitute of the target's dominant form; or, deceptively, the
 * sixth of the target's key. A visiting target must follow itself.
 */
function leadsTo(after: HeardChord | undefined, target: Target): boolean {
  if (!after) return false;
  const { root, of, isVisiting } = target;
  if (isVisiting) return after.root === root && hasThird(after, of.mode === 'major' ? 4 : 3);
  const isOverRoot = after.bass === root && after.root !== root;
  const isSubstitute = after.root === above(root, 6) && isDominantSeventh(after);
  return isTarget(after, target) || isOverRoot || isSubstitute || isDeceptive(after, target);
}

/** Whether the second of a target's key comes right before a dominant seventh, which then needs not lead on. */
function isAnnounced({ chord, before }: Moment, { root, isVisiting }: Target): boolean {
  const hasSecond = before && isSecond(before) && before.root === above(root, 2);
  return hasSecond === true && isDominantSeventh(chord) && !isVisiting;
}

/** V or V7 of a step that it leads to or that is announced by its second. */
export function appliedDominant(moment: Moment): Finding | undefined {
  const { chord, after, reading } = moment;
  const target = reading.targets.find(
    (candidate) =>
      chord.root === above(candidate.root, 7) &&
      (leadsTo(after, candidate) || isAnnounced(moment, candidate)),
  );
  return target && isDominant(chord) ? applied(target, '5P', reading) : undefined;
}

/** vii° of a step that follows, itself or in the bass. */
export function appliedLeadingTone({ chord, after, reading }: Moment): Finding | undefined {
  const target = reading.targets.find(
    ({ root }) => chord.root === above(root, 11) && (after?.root === root || after?.bass === root),
  );
  return target && isLeading(chord) ? applied(target, '-2m', reading) : undefined;
}

/** ♭II7 of the tonic or of a step, a semitone above the chord that follows. */
export function tritoneSubstituteAt({ chord, after, reading }: Moment): Finding | undefined {
  if (!after || !isDominantSeventh(chord) || chord.root !== above(after.root, 1)) return undefined;
  const { tonic, key, targets } = reading;
  if (after.root === tonic) return { root: transposePitchClass(key.tonic, '2m') };
  const target = targets.find(({ root }) => root === after.root);
  return target && applied(target, '2m', reading);
}

function appliedTarget(moment: Moment): NumeralTarget | undefined {
  return appliedDominant(moment)?.of ?? tritoneSubstituteAt(moment)?.of;
}

/** ii of a step before an applied dominant of that step or its substitute. */
export function appliedSecond(moment: Moment): Finding | undefined {
  const { chord, reading } = moment;
  const next = nextMoment(moment);
  const of = next && isSecond(chord) ? appliedTarget(next) : undefined;
  const target = of && reading.targets.find((candidate) => candidate.of === of);
  return target && chord.root === above(target.root, 2)
    ? applied(target, '2M', reading)
    : undefined;
}

/** A visiting step itself, right after its applied dominant. */
export function visitedStep({ chord, before, reading }: Moment): Finding | undefined {
  const target = reading.targets.find(
    ({ root, of, isVisiting }) =>
      isVisiting && chord.root === root && hasThird(chord, of.mode === 'major' ? 4 : 3),
  );
  const isLedTo = before && target && isDominant(before) && before.root === above(target.root, 7);
  return isLedTo ? { root: targetKey(target.of, reading.key).tonic } : undefined;
}
