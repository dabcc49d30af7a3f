import type { KeyNumber } from '../core/harmony/pitch.ts';
import { BETWEEN_KEY, CLICK_KEYS, CLICK_SOUNDS } from '../core/rhythm/click.ts';
import { clickBurst } from './synth/clickBurst.ts';
import { ringingClick } from './synth/ringingClick.ts';

/** Where in a bar a click stands, as far as its sound tells. */
type ClickPlace = keyof (typeof CLICK_KEYS)[keyof typeof CLICK_KEYS];

/** Name of a click as it is stored: `wood-downbeat`, or `between` for what ticks between the beats. */
export type ClickName = `${keyof typeof CLICK_KEYS}-${ClickPlace}` | 'between';

/** One click as it is computed; `peak` is how loud it is stored, longer ones lower. */
export type ClickRecipe = {
  readonly name: ClickName;
  readonly key: KeyNumber;
  readonly peak: number;
  readonly samples: (sampleRate: number) => Float32Array<ArrayBuffer>;
};

/**
 * What each click is made of: a very short burst, a struck piece of wood (two partials that do not
 * fit each other), a soft tone. Their peaks are set so that they are about as loud as each other:
 * the energy of sounds that are this short is what is heard (common practice).
 */
const MADE: Readonly<
  Record<
    keyof typeof CLICK_KEYS,
    {
      readonly peak: number;
      readonly hz: Readonly<Record<ClickPlace, number>>;
      readonly samples: (hz: number, sampleRate: number) => Float32Array<ArrayBuffer>;
    }
  >
> = {
  tick: { peak: 0.4, hz: { downbeat: 4500, beat: 3000 }, samples: clickBurst },
  wood: {
    peak: 0.3,
    hz: { downbeat: 1250, beat: 900 },
    samples: (hz, rate) => ringingClick({ partialsHz: [hz, 1.57 * hz], decaySec: 0.009 }, rate),
  },
  beep: {
    peak: 0.14,
    hz: { downbeat: 1320, beat: 880 },
    samples: (hz, rate) =>
      ringingClick({ partialsHz: [hz], decaySec: 0.025, riseSec: 0.002 }, rate),
  },
};

/** Every click that can be struck. */
export const CLICK_RECIPES: readonly ClickRecipe[] = [
  ...CLICK_SOUNDS.flatMap((sound) =>
    (['downbeat', 'beat'] as const).map((place) => ({
      name: `${sound}-${place}` as const,
      key: CLICK_KEYS[sound][place],
      peak: MADE[sound].peak,
      samples: (rate: number) => MADE[sound].samples(MADE[sound].hz[place], rate),
    })),
  ),
  {
    name: 'between',
    key: BETWEEN_KEY,
    peak: MADE.tick.peak,
    samples: (rate) => clickBurst(2200, rate),
  },
];

/** The click of a key number; the plain tick for a key that none has. */
export function clickOfKey(keyNumber: KeyNumber): ClickName {
  return CLICK_RECIPES.find(({ key }) => key === keyNumber)?.name ?? 'tick-beat';
}
