import { outputTimestampOf } from '../audio/outputTimestamp.ts';
import { ok } from '../core/result.ts';
import type { Store } from '../state/store.ts';
import { createLatencyCheck, type LatencyCheck, type LatencyCheckParts } from './latencyCheck.ts';
import type { Playback } from './playback.ts';
import { createPlayingTakes, type PlayingTakes, type PlayingTakesParts } from './playingTakes.ts';
import { createTakes, type Takes, type TakesParts } from './take.ts';
import { type Pads, type TakeInputsParts, takeInputs } from './takeInputs.ts';

export type PracticeTakesParts = Pick<TakesParts, 'often' | 'nowMs' | 'dateMs'> &
  Pick<LatencyCheckParts, 'openSound' | 'onMeasured'> &
  Pick<PlayingTakesParts, 'heardWith' | 'keep'> &
  Pick<TakeInputsParts, 'keyTarget' | 'openMidi'> & {
    readonly store: Store;
    readonly playback: Playback;
  };

/** All that hears the player, on the sound and the clock that the music plays by. */
export type PracticeTakes = {
  readonly takes: Takes;
  readonly playingTakes: PlayingTakes;
  readonly latencyCheck: LatencyCheck;
  /** Says which pads are on the page. */
  readonly pads: { readonly set: (pads: Pads | undefined) => void };
};

/** Builds what hears the player; made once. */
export function createPracticeTakes(parts: PracticeTakesParts): PracticeTakes {
  const { openSound } = parts;
  let shown: Pads | undefined;
  const openRoom = async () => {
    const sound = await openSound();
    return sound.ok ? ok(sound.value.room) : sound;
  };
  const inputs = takeInputs({ ...parts, openRoom, pads: () => shown });
  const takes = createTakes({
    ...parts,
    openClock: async (): ReturnType<TakesParts['openClock']> => {
      const room = await openRoom();
      return room.ok ? ok(() => outputTimestampOf(room.value)) : room;
    },
  });
  return {
    takes,
    playingTakes: createPlayingTakes({ ...parts, takes, inputs }),
    latencyCheck: createLatencyCheck({ ...parts, inputs }),
    pads: {
      set: (pads) => {
        shown = pads;
      },
    },
  };
}
