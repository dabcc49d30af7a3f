import { chordLikelihoods, EVEN_LIKELIHOOD, type NoteShares } from './chordLikelihood.ts';

/** Where a slice begins: at a bar line, in the middle of a bar, on another beat, or between beats. */
export type SliceStart = 'bar' | 'middle' | 'beat' | 'between';

/** What is heard in a slice of time, in which one chord sounds at most. */
export type HeardSlice = NoteShares & {
  readonly durationSec: number;
  readonly starts: SliceStart;
  /** Nothing sounds. */
  readonly isSilent: boolean;
};

/** A chord is looked for in so much time at once: in less, a melody or a drum may be all that there is. */
const LISTENING_SEC = 1;

/** Music has chords or has none for at least so long; the median over it decides. */
const DECIDING_SEC = 4;

/**
 * From this on the likeliest chord tells a note about as well as "any note" does, per draw (a chord's shares are
 * sharp, so that a stray note costs it much): drums alone, tuned ones too, and noise stay under -0.37 in the median,
 * bands with distorted guitars come to -0.23, nearly all others to 0 and more (the line was set on this material: docs/decisions/053-heard-chords.md).
 */
const CHORD_GAIN = -0.3;

/** The slices around one, up to half of `sec` before and after its middle. */
function around(slices: readonly HeardSlice[], place: number, sec: number): [number, number] {
  let [first, last] = [place, place];
  let before = slices[place]!.durationSec / 2;
  let after = before;
  while (first > 0 && before + slices[first - 1]!.durationSec / 2 <= sec / 2)
    before += slices[--first]!.durationSec;
  while (last + 1 < slices.length && after + slices[last + 1]!.durationSec / 2 <= sec / 2)
    after += slices[++last]!.durationSec;
  return [first, last];
}

function meanShares(slices: readonly HeardSlice[]): NoteShares {
  const sec = slices.reduce((sum, { durationSec }) => sum + durationSec, 0);
  const mean = (of: 'chroma' | 'bass') =>
    Float64Array.from({ length: 12 }, (_, i) =>
      slices.reduce((sum, each) => sum + (each.durationSec * each[of][i]!) / sec, 0),
    );
  return { chroma: mean('chroma'), bass: mean('bass') };
}

/** How much better the likeliest chord tells what sounds around a place than evenness does; undefined in silence. */
function chordGain(slices: readonly HeardSlice[], place: number): number | undefined {
  if (slices[place]!.isSilent) return undefined;
  const [first, last] = around(slices, place, LISTENING_SEC);
  const sounding = slices.slice(first, last + 1).filter(({ isSilent }) => !isSilent);
  return Math.max(...chordLikelihoods(meanShares(sounding))) - EVEN_LIKELIHOOD;
}

/**
 * Whether chords sound in each of the slices at all: not in silence, and not where what sounds is hardly more
 * like any chord than like all notes at once, as drums and noise are.
 */
export function chordsSound(slices: readonly HeardSlice[]): boolean[] {
  const gains = slices.map((_, i) => chordGain(slices, i));
  return gains.map((gain, i) => {
    if (gain === undefined) return false;
    const [first, last] = around(slices, i, DECIDING_SEC);
    const near = gains.slice(first, last + 1).filter((each) => each !== undefined);
    return near.toSorted((a, b) => a - b)[near.length >> 1]! >= CHORD_GAIN;
  });
}
