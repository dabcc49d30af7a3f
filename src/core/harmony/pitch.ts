import { Interval } from 'tonal';

export const LETTERS = ['C', 'D', 'E', 'F', 'G', 'A', 'B'] as const;

export type Letter = (typeof LETTERS)[number];

/** A spelled pitch class; `alteration` in semitones, flats negative (B♭ = B, −1). */
export type PitchClass = { readonly letter: Letter; readonly alteration: number };

/** Pitch classes with at most one sign, flats first: the tonics of keys that can be written. */
export const PLAIN_PITCH_CLASSES: readonly PitchClass[] = [-1, 0, 1].flatMap((alteration) =>
  LETTERS.map((letter) => ({ letter, alteration })),
);

/** A spelled pitch; octaves change at C and C4 is middle C. */
export type Pitch = PitchClass & { readonly octave: number };

/** Key of the piano as MIDI numbers it: 0 to 127, middle C = C4 = 60. */
export type KeyNumber = number;

/** A distance in semitones. */
export type Semitones = number;

/** An interval by its short name, number then quality: `3M`, `5P`, `7m`, `-2m`. */
export type IntervalName = string;

const LETTER_SEMITONES: Readonly<Record<Letter, Semitones>> = {
  C: 0,
  D: 2,
  E: 4,
  F: 5,
  G: 7,
  A: 9,
  B: 11,
};

const PITCH_CLASS_TEXT = /^([A-G])(bb|b|♭♭|♭|##|#|♯♯|♯|x|𝄪|𝄫)?$/;

const ALTERATIONS: Readonly<Record<string, number>> = {
  bb: -2,
  '♭♭': -2,
  '𝄫': -2,
  b: -1,
  '♭': -1,
  '': 0,
  '#': 1,
  '♯': 1,
  '##': 2,
  '♯♯': 2,
  x: 2,
  '𝄪': 2,
};

/** Reads `B♭`, `Bb`, `F##`; undefined where the text is no pitch class. */
export function pitchClassOf(text: string): PitchClass | undefined {
  const match = PITCH_CLASS_TEXT.exec(text);
  if (!match) return undefined;
  return { letter: match[1] as Letter, alteration: ALTERATIONS[match[2] ?? ''] ?? 0 };
}

/** Letter and signs as printed: `B♭`, `F♯♯`. */
export function formatPitchClass(pitchClass: PitchClass): string {
  const sign = pitchClass.alteration < 0 ? '♭' : '♯';
  return pitchClass.letter + sign.repeat(Math.abs(pitchClass.alteration));
}

/** Whether letter and signs agree: C♯ and D♭ differ. */
export function samePitchClass(a: PitchClass, b: PitchClass): boolean {
  return a.letter === b.letter && a.alteration === b.alteration;
}

/** Semitones above C, 0 to 11. */
export function chromaOf(pitchClass: PitchClass): Semitones {
  return (((LETTER_SEMITONES[pitchClass.letter] + pitchClass.alteration) % 12) + 12) % 12;
}

/** MIDI key number; can fall outside 0…127 for extreme octaves. B♯3 = 60 and C♭4 = 59. */
export function keyNumberOf(pitch: Pitch): KeyNumber {
  return 12 * (pitch.octave + 1) + LETTER_SEMITONES[pitch.letter] + pitch.alteration;
}

/** The same pitch class with the letter `steps` further on (back for negative steps). */
function onLetter(pitchClass: PitchClass, steps: number): PitchClass {
  const from = LETTERS.indexOf(pitchClass.letter);
  const letter = LETTERS[(from + steps + 7) % 7]!;
  const up = chromaOf(pitchClass) - LETTER_SEMITONES[letter];
  return { letter, alteration: ((((up + 6) % 12) + 12) % 12) - 6 };
}

/**
 * The same key of the piano with as few signs as it can have: C for B♯, B for C♭, D for C♯♯; one flat
 * and one sharp stay as they are.
 */
export function fewestSigns(pitchClass: PitchClass): PitchClass {
  if (pitchClass.alteration === 0) return pitchClass;
  const other = onLetter(pitchClass, Math.sign(pitchClass.alteration));
  return Math.abs(other.alteration) < Math.abs(pitchClass.alteration)
    ? fewestSigns(other)
    : pitchClass;
}

/** A pitch class that takes more than two signs, spelled with fewer (G♯♯♯ → A♯); any other as it is. */
export function respelled(pitchClass: PitchClass): PitchClass {
  if (Math.abs(pitchClass.alteration) <= 2) return pitchClass;
  return respelled(onLetter(pitchClass, Math.sign(pitchClass.alteration)));
}

/** A pitch class moved by an interval, and how many octaves (from C) it moved up or, negative, down. */
function moved(from: PitchClass, name: IntervalName): { to: PitchClass; octaves: number } {
  const { num, dir, semitones, empty } = Interval.get(name);
  if (empty) throw new Error(`no interval is called ${name}`);
  const place = LETTERS.indexOf(from.letter) + dir * (Math.abs(num) - 1);
  const octaves = Math.floor(place / LETTERS.length);
  const letter = LETTERS[place - LETTERS.length * octaves]!;
  const natural = 12 * octaves + LETTER_SEMITONES[letter] - LETTER_SEMITONES[from.letter];
  return { to: { letter, alteration: from.alteration + semitones - natural }, octaves };
}

/** The pitch class an interval above (below for a negative interval), spelled by the interval's number. */
export function transposePitchClass(from: PitchClass, interval: IntervalName): PitchClass {
  return moved(from, interval).to;
}

/** The pitch an interval above (below for a negative interval), spelled by the interval's number. */
export function transpose(pitch: Pitch, interval: IntervalName): Pitch {
  const { to, octaves } = moved(pitch, interval);
  return { ...to, octave: pitch.octave + octaves };
}

/** The interval from one pitch class up to another, less than an octave: C to B♭ is `7m`. */
export function intervalBetween(from: PitchClass, to: PitchClass): IntervalName {
  return Interval.distance(tonalName(from), tonalName(to));
}

/** Size of a named interval in semitones, negative downwards. */
export function semitonesOf(interval: IntervalName): Semitones {
  const size = Interval.semitones(interval);
  if (Number.isNaN(size)) throw new Error(`no interval is called ${interval}`);
  return size;
}

function tonalName(pitchClass: PitchClass): string {
  const sign = pitchClass.alteration < 0 ? 'b' : '#';
  return pitchClass.letter + sign.repeat(Math.abs(pitchClass.alteration));
}
