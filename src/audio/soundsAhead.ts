import { type LoadOptions, loadSounds, type SoundBank } from './loadSounds.ts';
import { STORED_SOUNDS } from './soundCatalogue.ts';

/** The sounds of a page, loaded before they are needed where there is time and room. */
export type SoundsAhead = {
  /** Begins to load, one sound after the other while the page rests. Once; not on a small device. */
  readonly begin: () => void;
  /** Every sound for a context: those on their way, all that is left of them together, or loaded now. */
  readonly at: (context: BaseAudioContext) => Promise<SoundBank>;
};

/**
 * Up to so much memory, in GB as the browser tells it, a device keeps its sounds in one channel and
 * loads them when they are needed (docs/decisions/034-sounds-ahead.md).
 */
const SMALL_GB = 2;

/** How the page can rest, and the device's memory in GB where it is known. */
export type SoundsAheadParts = {
  readonly rest: () => Promise<void>;
  readonly memoryGb: number | undefined;
};

/** See `SoundsAhead`. A failure is not kept: what is asked for later is loaded then. */
export function createSoundsAhead({ rest, memoryGb }: SoundsAheadParts): SoundsAhead {
  const isSmall = memoryGb !== undefined && memoryGb <= SMALL_GB;
  const manner: LoadOptions = isSmall ? { channels: 1 } : {};
  let ahead: { readonly sampleRate: number; readonly sounds: Promise<SoundBank> } | undefined;
  let isNeeded = false;

  async function begin(): Promise<void> {
    const sampleRate = await deviceRate();
    if (isNeeded || ahead) return;
    const context = new OfflineAudioContext(1, 1, sampleRate);
    const pause = () => (isNeeded ? undefined : rest());
    const sounds = loadSounds(context, STORED_SOUNDS, { ...manner, pause });
    sounds.catch(() => {
      ahead = undefined;
    });
    ahead = { sampleRate, sounds };
  }

  return {
    begin() {
      if (!isSmall && !isNeeded) void begin();
    },
    async at(context) {
      isNeeded = true;
      const here = () => loadSounds(context, STORED_SOUNDS, manner);
      return ahead?.sampleRate === context.sampleRate ? ahead.sounds.catch(here) : here();
    },
  };
}

/** The rate that a live context will have here. */
async function deviceRate(): Promise<number> {
  const context = new AudioContext();
  const { sampleRate } = context;
  await context.close();
  return sampleRate;
}
