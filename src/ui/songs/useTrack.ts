import { useRef, useState } from 'react';
import {
  exportWav,
  type TrackProblem,
  type TrackRequest,
  trackFileName,
} from '../../app/exports.ts';
import { saveFile } from '../kit/saveFile.ts';
import { useParts } from '../parts/tool/parts.ts';
import { mixLevels } from '../parts/tool/viewState.ts';

/** A practice track in the making; `percent` is how far it is, where the browser can say so. */
export type TrackState =
  | { readonly kind: 'none' }
  | { readonly kind: 'making'; readonly percent?: number }
  | { readonly kind: 'failed'; readonly problem: TrackProblem }
  | { readonly kind: 'saved'; readonly fileName: string };

export type Track = {
  readonly state: TrackState;
  /** Makes a track of the open song and saves it as a file; nothing while one is in the making. */
  readonly make: (request: TrackRequest) => Promise<void>;
  readonly giveUp: () => void;
};

/** The one practice track that can be in the making, whatever is shown meanwhile. */
export function useTrack(): Track {
  const { store, view } = useParts();
  const [state, setState] = useState<TrackState>({ kind: 'none' });
  const making = useRef<AbortController | undefined>(undefined);

  async function make(request: TrackRequest): Promise<void> {
    if (making.current) return;
    const abort = new AbortController();
    making.current = abort;
    setState({ kind: 'making' });
    const project = store.snapshot();
    const levels = mixLevels(view.snapshot().volumes);
    const made = await exportWav(project, request, {
      levels: { ...levels, master: 1, click: project.practice.click.level },
      signal: abort.signal,
      onProgress: (share) => setState({ kind: 'making', percent: Math.round(100 * share) }),
    });
    making.current = undefined;
    if (!made.ok) return setState({ kind: 'failed', problem: made.error });
    const fileName = trackFileName(project, request.passage);
    saveFile(fileName, made.value);
    setState({ kind: 'saved', fileName });
  }

  return { state, make, giveUp: () => making.current?.abort() };
}
