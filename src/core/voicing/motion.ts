import type { KeyNumber, Semitones } from '../harmony/pitch.ts';

/**
 * How far a hand moves between two chords: the least total of semitones over all pairings of their
 * notes. Chords of one size pair note by note, and this is a metric on them. Otherwise every note
 * of the smaller chord is paired with a note of its own in the larger one, and each note left over
 * costs its distance to the nearest note of the smaller chord (which divides into two voices, or in
 * which two meet). Symmetric. Lists in any order; to or from an empty list there is no motion.
 */
export function motion(from: readonly KeyNumber[], to: readonly KeyNumber[]): Semitones {
  return sortedMotion(
    from.toSorted((a, b) => a - b),
    to.toSorted((a, b) => a - b),
  );
}

/** `motion` of lists that ascend already. */
export function sortedMotion(from: readonly KeyNumber[], to: readonly KeyNumber[]): Semitones {
  if (from.length === to.length) return pairedMotion(from, to);
  const [fewer, more] = from.length < to.length ? [from, to] : [to, from];
  return fewer.length === 0 ? 0 : unequalMotion(fewer, more);
}

/** Pairing in order is the least total, for distances on a line never gain from crossing. */
function pairedMotion(from: readonly KeyNumber[], to: readonly KeyNumber[]): Semitones {
  let total = 0;
  for (let i = 0; i < from.length; i++) total += Math.abs(from[i]! - to[i]!);
  return total;
}

/**
 * Least total over all choices of the notes left over, by dynamic programming: `best[i]` is the
 * least for the notes of `more` seen so far when the lowest `i` of `fewer` are paired among them.
 */
function unequalMotion(fewer: readonly KeyNumber[], more: readonly KeyNumber[]): Semitones {
  const best = [0];
  for (let i = 0; i < fewer.length; i++) best.push(Infinity);
  for (const note of more) {
    const extra = distanceToNearest(note, fewer);
    for (let i = fewer.length; i > 0; i--) {
      const paired = best[i - 1]! + Math.abs(fewer[i - 1]! - note);
      best[i] = Math.min(best[i]! + extra, paired);
    }
    best[0]! += extra;
  }
  return best[fewer.length]!;
}

function distanceToNearest(note: KeyNumber, notes: readonly KeyNumber[]): Semitones {
  let nearest = Infinity;
  for (const other of notes) nearest = Math.min(nearest, Math.abs(other - note));
  return nearest;
}
