import { soundOpener } from '../../src/app/openSound.ts';
import { createPlayback, type Playback } from '../../src/app/playback.ts';
import {
  createPracticeTakes,
  type PracticeTakes,
  type PracticeTakesParts,
} from '../../src/app/practiceTakes.ts';
import { err } from '../../src/core/result.ts';
import type { Store } from '../../src/state/store.ts';
import { heardWith } from '../../src/ui/parts/takes/latencies.ts';
import type { Parts } from '../../src/ui/parts/tool/parts.ts';

/** Opened once, as on a page: loading the sounds takes a moment. */
export const openSound = soundOpener();

function often(act: () => void): () => void {
  const watch = setInterval(act, 60);
  return () => clearInterval(watch);
}

/** A playback with real sound. */
export function soundingPlayback(store: Store): Playback {
  return createPlayback({ store, openSound, often });
}

/** What hears the player of a page with real sound; there is no MIDI unless `rest` has it, and nothing is measured. */
export function hearingParts(
  {
    store,
    playback,
    view,
    takeHistory,
  }: Pick<Parts, 'store' | 'playback' | 'view' | 'takeHistory'>,
  rest: Partial<Pick<PracticeTakesParts, 'openMidi' | 'onMeasured'>> = {},
): PracticeTakes {
  return createPracticeTakes({
    store,
    playback,
    openSound,
    often,
    nowMs: () => performance.now(),
    dateMs: () => Date.now(),
    keyTarget: window,
    openMidi: async () => err({ kind: 'unsupported' }),
    heardWith: () => heardWith(view.snapshot()),
    keep: takeHistory.keep,
    onMeasured: () => undefined,
    ...rest,
  });
}
