import { createContext, useContext } from 'react';
import type { GivenFiles } from '../../../app/givenFiles.ts';
import type { KeptApp } from '../../../app/keptApp.ts';
import type { LatencyCheck } from '../../../app/latencyCheck.ts';
import type { MidiDoor } from '../../../app/midiDoor.ts';
import type { Playback } from '../../../app/playback.ts';
import type { PlayingTakes } from '../../../app/playingTakes.ts';
import type { Songs } from '../../../app/songs.ts';
import type { Takes } from '../../../app/take.ts';
import type { Pads } from '../../../app/takeInputs.ts';
import type { ShelfPattern } from '../../../core/rhythm/shelf.ts';
import type { Autosave } from '../../../state/autosave.ts';
import type { Opening } from '../../../state/opening.ts';
import type { Store } from '../../../state/store.ts';
import type { TakeHistory } from '../../../state/takeHistory.ts';
import type { ViewStore } from './viewState.ts';

/** The parts of the running tool that pages use; built once in `main.tsx`. */
export type Parts = {
  readonly store: Store;
  readonly playback: Playback;
  readonly view: ViewStore;
  readonly shelf: readonly ShelfPattern[];
  readonly autosave: Autosave;
  readonly songs: Songs;
  readonly takes: Pick<Takes, 'live'>;
  readonly playingTakes: PlayingTakes;
  readonly takeHistory: TakeHistory;
  readonly latencyCheck: LatencyCheck;
  readonly midi: Omit<MidiDoor, 'openPlayed'>;
  /** Says which pads are on the page. */
  readonly pads: { readonly set: (pads: Pads | undefined) => void };
  /** What went wrong with the song that lay open last time, if anything did. */
  readonly opening: Pick<Opening, 'problem'>;
  readonly keptApp: KeptApp;
  readonly givenFiles: GivenFiles;
};

export const PartsContext = createContext<Parts | undefined>(undefined);

export function useParts(): Parts {
  const parts = useContext(PartsContext);
  if (!parts) throw new Error('a page stands outside the app');
  return parts;
}
