import type { KeyNumber } from '../core/harmony/pitch.ts';
import type { Seconds } from '../core/time/ticks.ts';
import { CLICK_RECIPES, type ClickRecipe } from './clickSounds.ts';
import { COUNT_WORDS, wordAheadSec, wordUrl } from './countWords.ts';
import { PIANO_LAYERS, PIANO_ZONES, pianoFile, pianoLoudness, pianoUrl } from './pianoSamples.ts';
import { clickBurst } from './synth/clickBurst.ts';
import { drumSamples } from './synth/drumSound.ts';
import { KIT, type KitDrum } from './synth/drumSounds.ts';
import { BASS_SOUND, overtoneTone, SUNG_SOUND } from './synth/overtones.ts';
import { pluckedString } from './synth/pluckedString.ts';

/** Identity of one stored sound, for example `piano/C4v10`. */
export type SoundId =
  `${'piano' | 'bass' | 'plucked' | 'sung' | 'drum' | 'click' | 'count'}/${string}`;

/**
 * Where a sound comes from: a file shipped with the app, cut to its attack or, where it is spoken, as
 * it is; or samples computed for a rate in Hz. `standIn` are samples for a word that cannot be had.
 */
export type SoundOrigin =
  | { readonly kind: 'recorded'; readonly url: string }
  | {
      readonly kind: 'spoken';
      readonly url: string;
      readonly standIn: (sampleRate: number) => Float32Array<ArrayBuffer>;
    }
  | {
      readonly kind: 'synthesised';
      readonly samples: (sampleRate: number) => Float32Array<ArrayBuffer>;
    };

/**
 * How loud a sound is stored: by its highest sample, by the mean of its first quarter of a second, or
 * by what its own samples are multiplied with.
 */
export type Loudness = { readonly measure: 'peak' | 'rms' | 'factor'; readonly value: number };

/** One sound that instruments strike; see `loadSounds` for what becomes of it. */
export type StoredSound = {
  readonly id: SoundId;
  readonly origin: SoundOrigin;
  readonly loudness: Loudness;
};

/** Keys at which a synthesised instrument is computed; those between are played a little faster or slower. */
export const SYNTH_ZONES: Readonly<Record<'bass' | 'plucked' | 'sung', readonly KeyNumber[]>> = {
  bass: zones(25, 61),
  plucked: zones(37, 91),
  sung: zones(43, 85),
};

function zones(first: KeyNumber, last: KeyNumber): KeyNumber[] {
  return Array.from({ length: (last - first) / 3 + 1 }, (_, i) => first + 3 * i);
}

function hzOf(keyNumber: KeyNumber): number {
  return 440 * 2 ** ((keyNumber - 69) / 12);
}

function pianoSounds(): StoredSound[] {
  return PIANO_LAYERS.flatMap((layer) =>
    PIANO_ZONES.map((zone) => {
      const file = pianoFile(zone, layer);
      return {
        id: `piano/${file}`,
        origin: { kind: 'recorded', url: pianoUrl(file) },
        loudness: { measure: 'rms', value: pianoLoudness(zone) },
      } as const;
    }),
  );
}

function pitchedSounds(
  name: keyof typeof SYNTH_ZONES,
  rms: number,
  samples: (freqHz: number, sampleRate: number) => Float32Array<ArrayBuffer>,
): StoredSound[] {
  return SYNTH_ZONES[name].map((zone) => ({
    id: `${name}/${zone}`,
    origin: { kind: 'synthesised', samples: (sampleRate) => samples(hzOf(zone), sampleRate) },
    loudness: { measure: 'rms', value: rms },
  }));
}

function drumSound(drum: KitDrum): StoredSound {
  return {
    id: `drum/${drum.name}`,
    origin: { kind: 'synthesised', samples: (rate) => drumSamples(drum.sound, rate) },
    loudness: { measure: 'peak', value: drum.peak },
  };
}

function clickSound({ name, peak, samples }: ClickRecipe): StoredSound {
  return {
    id: `click/${name}`,
    origin: { kind: 'synthesised', samples },
    loudness: { measure: 'peak', value: peak },
  };
}

/** A click where the middle of a word would be, for a voice that cannot be had. */
function clickInPlace(aheadSec: Seconds, sampleRate: number): Float32Array<ArrayBuffer> {
  const click = clickBurst(3000, sampleRate);
  const silent = Math.round(aheadSec * sampleRate);
  return Float32Array.from({ length: silent + click.length }, (_, i) => click[i - silent] ?? 0);
}

function countSound(says: number): StoredSound {
  const { word } = COUNT_WORDS[says - 1]!;
  return {
    id: `count/${word}`,
    origin: {
      kind: 'spoken',
      url: wordUrl(word),
      standIn: (rate) => clickInPlace(wordAheadSec(says), rate),
    },
    loudness: { measure: 'factor', value: 0.6 },
  };
}

/**
 * Every sound that instruments can strike. The loudness values balance the band at velocity 127
 * with all levels at 1: a forte chord of both hands stays under the limiter's knee.
 */
export const STORED_SOUNDS: readonly StoredSound[] = [
  ...pianoSounds(),
  ...pitchedSounds('bass', 0.11, (hz, rate) => overtoneTone(BASS_SOUND, hz, rate)),
  ...pitchedSounds('plucked', 0.04, pluckedString),
  ...pitchedSounds('sung', 0.07, (hz, rate) => overtoneTone(SUNG_SOUND, hz, rate)),
  ...KIT.map(drumSound),
  ...CLICK_RECIPES.map(clickSound),
  ...COUNT_WORDS.map((_, i) => countSound(i + 1)),
];
