import { useSyncExternalStore } from 'react';
import type { PlaybackState } from '../../../app/playbackState.ts';
import type { Project } from '../../../core/project.ts';
import { useParts } from './parts.ts';
import type { ViewState } from './viewState.ts';

/**
 * What `selector` reads from the project, again at every edit. The selector gives the same object
 * as long as its part is unchanged, so that only what reads that part is drawn again.
 */
export function useProject<T>(selector: (project: Project) => T): T {
  const { store } = useParts();
  return useSyncExternalStore(store.subscribe, () => selector(store.snapshot()));
}

/** What `selector` reads from this device's view state. */
export function useView<T>(selector: (view: ViewState) => T): T {
  const { view } = useParts();
  return useSyncExternalStore(view.subscribe, () => selector(view.snapshot()));
}

/** Whether something plays, and what; the position within it is live state (`useFrame`). */
export function usePlayback(): PlaybackState {
  const { playback } = useParts();
  return useSyncExternalStore(playback.subscribe, playback.state);
}
