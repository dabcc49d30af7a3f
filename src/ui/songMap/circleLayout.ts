import type { Chord } from '../../core/harmony/chord.ts';
import { fifthsOf, type Key, writableKey } from '../../core/harmony/key.ts';
import { type PitchClass, transposePitchClass } from '../../core/harmony/pitch.ts';

/** A chord on the circle of fifths: its place clockwise from the top in hours, on the outer (major) or the inner ring (minor). */
export type CirclePlace = {
  readonly hour: number;
  readonly ring: 'major' | 'minor';
  readonly chord: Chord;
  /** Whether it is one of the six triads of the key, which stand together. */
  readonly isInKey: boolean;
};

const HOURS = 12;

/** Fifths from the key's own hour, −5 to 6, so that spelling changes opposite the key. */
const STEPS = Array.from({ length: HOURS }, (_, i) => i - 5);

function modulo(value: number): number {
  return ((value % HOURS) + HOURS) % HOURS;
}

/** The note so many fifths above another, below for negative ones. */
function fifthsAbove(from: PitchClass, fifths: number): PitchClass {
  const interval = fifths < 0 ? '-5P' : '5P';
  let note = from;
  for (let i = 0; i < Math.abs(fifths); i++) note = transposePitchClass(note, interval);
  return note;
}

/** The hour at which the major key of a signature stands: C at the top, each sharp one further. */
function hourOf(key: Key): number {
  return modulo(fifthsOf(key));
}

/**
 * The circle of fifths as seen from a key: twelve major triads on the outer ring with C at the top,
 * their relative minor triads inside, those of the key as it spells them, the others with few signs. The triads of the
 * key lie at its hour and one to each side.
 */
export function circlePlaces(key: Key): CirclePlace[] {
  const tonics = {
    major: key.mode === 'major' ? key.tonic : transposePitchClass(key.tonic, '3m'),
    minor: key.mode === 'minor' ? key.tonic : transposePitchClass(key.tonic, '-3m'),
  };
  const rings = ['major', 'minor'] as const;
  return rings.flatMap((ring) =>
    STEPS.map((step) => {
      const isInKey = Math.abs(step) <= 1;
      const exact = { tonic: fifthsAbove(tonics[ring], step), mode: ring };
      const { tonic } = isInKey ? exact : writableKey(exact);
      const hour = modulo(hourOf(key) + step);
      return { hour, ring, chord: { root: tonic, quality: ring, tensions: [] }, isInKey };
    }),
  );
}

/** Radii of the circle in parts of its width: the rings on which chords stand, and the edges of the key's frame. */
export const CIRCLE = { major: 0.425, minor: 0.272, frameOuter: 0.497, frameInner: 0.195 } as const;

/** A point at an hour (12 to the circle, from the top clockwise) and a radius, in parts of the circle's width. */
export function circlePoint(
  hour: number,
  radius: number,
): { readonly x: number; readonly y: number } {
  const angle = (hour / HOURS) * 2 * Math.PI;
  return { x: 0.5 + radius * Math.sin(angle), y: 0.5 - radius * Math.cos(angle) };
}

/** The frame around the triads of the key as an SVG path in a square of 1 × 1. */
export function keyFrame(key: Key): string {
  const hour = hourOf(key);
  const { frameOuter: outer, frameInner: inner } = CIRCLE;
  const at = (side: number, radius: number) => {
    const { x, y } = circlePoint(hour + side, radius);
    return `${x.toFixed(4)} ${y.toFixed(4)}`;
  };
  return (
    `M${at(-1.5, outer)}A${outer} ${outer} 0 0 1 ${at(1.5, outer)}` +
    `L${at(1.5, inner)}A${inner} ${inner} 0 0 0 ${at(-1.5, inner)}Z`
  );
}
