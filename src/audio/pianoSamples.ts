import type { KeyNumber } from '../core/harmony/pitch.ts';

/** The velocity layers that are shipped, numbered as in the source (1 softest to 16 loudest). */
export const PIANO_LAYERS = [5, 10, 14] as const;

export type PianoLayer = (typeof PIANO_LAYERS)[number];

/** Highest MIDI velocity that a layer plays: ghosted, plain and accented touches get one each. */
const LAYER_TOPS: readonly (readonly [PianoLayer, number])[] = [
  [5, 54],
  [10, 84],
  [14, 127],
];

/** Keys that were sampled: every minor third from E♭1 to C6, and F♯6. */
export const PIANO_ZONES: readonly KeyNumber[] = [
  ...Array.from({ length: 20 }, (_, i) => 27 + 3 * i),
  90,
];

const FILE_NAMES: Readonly<Record<number, string>> = { 0: 'C', 3: 'Ds', 6: 'Fs', 9: 'A' };

const URLS = import.meta.glob<string>('./samples/*.ogg', {
  query: '?url',
  import: 'default',
  eager: true,
});

/** Name of a sample without its ending: `Ds3v10`. Only for keys of `PIANO_ZONES`. */
export function pianoFile(zone: KeyNumber, layer: PianoLayer): string {
  const name = FILE_NAMES[zone % 12];
  if (name === undefined) throw new Error(`no piano sample of key ${zone}`);
  return `${name}${Math.floor(zone / 12) - 1}v${layer}`;
}

/** Address of a sample by its name. */
export function pianoUrl(file: string): string {
  const url = URLS[`./samples/${file}.ogg`];
  if (url === undefined) throw new Error(`no piano sample called ${file}`);
  return url;
}

/** The layer that plays a velocity of 1 to 127. */
export function pianoLayer(velocity: number): PianoLayer {
  return LAYER_TOPS.find(([, top]) => velocity <= top)?.[0] ?? 14;
}

/**
 * How loud a sampled key is stored, as the mean (rms) of its first quarter of a second. The
 * samples' own loudness jumps by up to 5 dB from one to the next; this is even up to C5 and falls
 * by 3.6 dB an octave above, as the short strings at the top die away sooner.
 */
export function pianoLoudness(zone: KeyNumber): number {
  return 0.07 * 10 ** (-Math.max(0, zone - 72) * (0.3 / 20));
}

/**
 * Time in which the damper takes a key's sound to 1/e once it is released: heavier strings sound
 * on a little longer. The highest keys of a piano have no dampers at all (from memory: from about
 * F♯6 on).
 */
export function damperSec(keyNumber: KeyNumber): number {
  if (keyNumber >= 90) return 0.4;
  return keyNumber < 48 ? 0.08 : 0.05;
}
