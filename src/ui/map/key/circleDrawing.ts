import { type Chord, chordTones } from '../../../core/harmony/chord.ts';
import { type Key, type MinorForm, scaleOf } from '../../../core/harmony/key.ts';
import { chromaOf, type PitchClass, type Semitones } from '../../../core/harmony/pitch.ts';

/** Semitones to the octave, and so places on the circle. */
const PLACES = 12;

/** Radii in parts of the circle's width: the ring of steps and notes, the corners of a chord. */
export const RADII = { ring: 0.42, chord: 0.325 } as const;

/** How far an arc stays away from the notes at its ends, in semitones. */
const ARC_GAP = 0.36;

export type Point = { readonly x: number; readonly y: number };

/** The point so many semitones above the tonic, which is at the top; clockwise, in parts of the circle's width. */
export function placeOnCircle(above: number, radius: number): Point {
  const angle = (above / PLACES) * 2 * Math.PI;
  return { x: 0.5 + radius * Math.sin(angle), y: 0.5 - radius * Math.cos(angle) };
}

function aboveTonic(note: PitchClass, key: Key): Semitones {
  return (chromaOf(note) - chromaOf(key.tonic) + PLACES) % PLACES;
}

/** A note of the scale on the circle, and the way to the next one: its size in semitones and its arc as an SVG path. */
export type CircleNote = {
  readonly note: PitchClass;
  readonly above: Semitones;
  readonly toNext: Semitones;
  readonly arc: string;
};

function pathText({ x, y }: Point): string {
  return `${x.toFixed(4)} ${y.toFixed(4)}`;
}

function arcBetween(from: number, to: number): string {
  const [start, end] = [from + ARC_GAP, to - ARC_GAP].map((above) =>
    pathText(placeOnCircle(above, RADII.ring)),
  );
  return `M${start}A${RADII.ring} ${RADII.ring} 0 0 1 ${end}`;
}

/** The scale as a circle of seven notes, as far apart as they sound: the steps are arcs between them. */
export function circleNotes(key: Key, minorForm: MinorForm): CircleNote[] {
  const scale = scaleOf(key, minorForm);
  const places = scale.map((note) => aboveTonic(note, key));
  return scale.map((note, i) => {
    const above = places[i]!;
    const next = places[i + 1] ?? PLACES;
    return { note, above, toNext: next - above, arc: arcBetween(above, next) };
  });
}

/** A chord on the circle: its corners joined, the root among them, and its notes that the scale does not have. */
export type CircleChord = {
  readonly root: Point;
  readonly outline: string;
  readonly foreign: readonly { readonly note: PitchClass; readonly at: Point }[];
};

/** Where a chord lies on the circle of a key. */
export function circleChord(chord: Chord, key: Key, minorForm: MinorForm): CircleChord {
  const own = new Set(scaleOf(key, minorForm).map((note) => aboveTonic(note, key)));
  const notes = chordTones(chord).map(({ pitchClass }) => pitchClass);
  const places = notes.map((note) => aboveTonic(note, key));
  const corners = [...new Set(places)].toSorted((a, b) => a - b);
  return {
    root: placeOnCircle(aboveTonic(chord.root, key), RADII.chord),
    outline: corners.map((above) => pathText(placeOnCircle(above, RADII.chord))).join(' '),
    foreign: notes.flatMap((note, i) =>
      own.has(places[i]!) ? [] : [{ note, at: placeOnCircle(places[i]!, RADII.ring) }],
    ),
  };
}
