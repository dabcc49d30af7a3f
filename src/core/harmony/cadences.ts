import type { Key, Mode } from './key.ts';
import type { KeyChord } from './keyChords.ts';
import { chordOfNumeral, parseNumeral } from './numerals.ts';

/** The ways in which a phrase can end. */
export const CADENCE_KINDS = ['perfect', 'plagal', 'half', 'deceptive', 'two-five-one'] as const;

export type CadenceKind = (typeof CADENCE_KINDS)[number];

/** A cadence as its chords in a key, in the order in which they are played. */
export type Cadence = { readonly kind: CadenceKind; readonly chords: readonly KeyChord[] };

/** The chords of each cadence (docs/sources.md#cadences); a perfect one is also imperfect, by its melody. */
const CADENCE_NUMERALS: Readonly<Record<Mode, Readonly<Record<CadenceKind, string>>>> = {
  major: {
    perfect: 'V7 I',
    plagal: 'IV I',
    half: 'I V',
    deceptive: 'V7 vi',
    'two-five-one': 'ii7 V7 Imaj7',
  },
  minor: {
    perfect: 'V7 i',
    plagal: 'iv i',
    half: 'i V',
    deceptive: 'V7 VI',
    'two-five-one': 'iiø7 V7 i',
  },
};

function keyChordOf(text: string, key: Key): KeyChord {
  const numeral = parseNumeral(text);
  if (!numeral.ok) throw new Error(`no numeral: ${text}`);
  return { chord: chordOfNumeral(numeral.value, key), numeral: numeral.value };
}

/** The cadences of a key, perfect first, each with its chords and their numerals. */
export function cadencesOf(key: Key): Cadence[] {
  return CADENCE_KINDS.map((kind) => ({
    kind,
    chords: CADENCE_NUMERALS[key.mode][kind].split(' ').map((text) => keyChordOf(text, key)),
  }));
}
