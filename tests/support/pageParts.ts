import { createGivenFiles } from '../../src/app/givenFiles.ts';
import type { LatencyState } from '../../src/app/latencyCheck.ts';
import { createMidiDoor } from '../../src/app/midiDoor.ts';
import type { Playback } from '../../src/app/playback.ts';
import type { PlaybackState } from '../../src/app/playbackState.ts';
import type { PlayerHearing } from '../../src/app/playingTakes.ts';
import type { PlayRequest } from '../../src/app/score.ts';
import { createSongs } from '../../src/app/songs.ts';
import type { Project } from '../../src/core/project.ts';
import { ok } from '../../src/core/result.ts';
import type { ShelfPattern } from '../../src/core/rhythm/shelf.ts';
import type { SavingStatus } from '../../src/state/autosave.ts';
import type { Storage } from '../../src/state/storage.ts';
import { createStore } from '../../src/state/store.ts';
import { createTakeHistory, randomTakeId } from '../../src/state/takeHistory.ts';
import type { Parts } from '../../src/ui/parts/tool/parts.ts';
import { createViewStore, type ViewChange } from '../../src/ui/parts/tool/viewState.ts';
import { songsView } from '../../src/ui/songs/songsView.ts';
import { memoryStorage } from './memoryStorage.ts';

const SAVED: SavingStatus = { kind: 'saved' };
const NOTHING_HEARD: PlayerHearing = {};
const NOT_MEASURING: LatencyState = { status: 'idle' };

/** A playback without sound: it is stopped or plays what was asked for, at no position. */
function silentPlayback(): Playback {
  let state: PlaybackState = { status: 'stopped' };
  const listeners = new Set<() => void>();
  const show = (next: PlaybackState) => {
    state = next;
    for (const listener of listeners) listener();
  };
  return {
    state: () => state,
    subscribe: (listener) => {
      listeners.add(listener);
      return () => listeners.delete(listener);
    },
    play: async (request: PlayRequest) => show({ status: 'playing', request, bpm: 80 }),
    stop: () => show({ status: 'stopped' }),
    position: () => undefined,
    changeRung: () => undefined,
    goToRung: () => undefined,
    nudge: () => undefined,
    jump: () => undefined,
    setTimes: () => undefined,
    turnTo: (request) => {
      if (state.status === 'playing' && state.request.kind === 'pattern')
        show({ ...state, request });
    },
    setVolumes: () => undefined,
    setManner: () => undefined,
    passes: () => [],
    judgeWith: () => () => undefined,
    dismiss: () => undefined,
  };
}

/** Nobody hears the player. */
const NOT_KEPT = { kind: 'impossible', newer: false } as const;

const DEAF: Pick<Parts, 'takes' | 'playingTakes' | 'latencyCheck' | 'pads'> = {
  takes: { live: () => undefined },
  playingTakes: {
    state: () => NOTHING_HEARD,
    subscribe: () => () => undefined,
    tryInput: async () => undefined,
    listenAnew: () => false,
    forget: () => undefined,
  },
  latencyCheck: {
    state: () => NOT_MEASURING,
    subscribe: () => () => undefined,
    start: async () => undefined,
    cancel: () => undefined,
  },
  pads: { set: () => undefined },
};

/**
 * The parts that a page needs, for a project and a view, with a playback that makes no sound. Nothing
 * is saved as it is edited; the songs are those of `storage`.
 */
export function pageParts(
  project: Project,
  view: ViewChange = {},
  shelf: readonly ShelfPattern[] = [],
  storage: Storage = memoryStorage(),
): Parts {
  const views = createViewStore({ getItem: () => null, setItem: () => undefined });
  views.set(view);
  const store = createStore(project);
  const playback = silentPlayback();
  return {
    store,
    playback,
    view: views,
    shelf,
    autosave: {
      status: () => SAVED,
      subscribe: () => () => undefined,
      flush: () => undefined,
      adopt: () => undefined,
      stop: () => undefined,
    },
    songs: createSongs({
      store,
      storage: ok(storage),
      playback,
      nowMs: () => 0,
      ...songsView(views),
    }),
    takeHistory: createTakeHistory({
      store,
      storage: ok(storage),
      talk: { tell: () => undefined, onTold: () => undefined },
      newTakeId: randomTakeId,
    }),
    opening: {},
    givenFiles: createGivenFiles(),
    keptApp: {
      state: () => NOT_KEPT,
      subscribe: () => () => {},
      useNewer: () => {},
    },
    midi: createMidiDoor({
      taught: () => views.snapshot().taught,
      request: async () => {
        throw new DOMException('no instruments here', 'NotAllowedError');
      },
    }),
    ...DEAF,
  };
}
