import type { Pattern } from '../../../core/rhythm/pattern.ts';
import { useParts } from '../tool/parts.ts';
import { usePlayback } from '../tool/useProject.ts';

/** Patterns that are heard without being in the project. */
export type Trial = {
  /** The one that is heard, or about to be; undefined where none is. */
  readonly heard: Pattern | undefined;
  /** Hears a pattern; the one that is heard is stopped. */
  readonly hear: (pattern: Pattern) => void;
  /** Goes over to another pattern without a gap, where one is tried; nothing where none is. */
  readonly turn: (pattern: Pattern) => void;
  /** Ends what is tried; other music goes on. */
  readonly stop: () => void;
};

/** See `Trial`. */
export function useTrial(): Trial {
  const { playback } = useParts();
  const state = usePlayback();
  const request = state.status === 'stopped' ? undefined : state.request;
  const heard = request?.kind === 'pattern' ? request.pattern : undefined;
  return {
    heard,
    hear: (pattern) => {
      if (pattern === heard) playback.stop();
      else void playback.play({ kind: 'pattern', patternId: pattern.id, pattern });
    },
    turn: (pattern) => {
      if (heard) playback.turnTo({ kind: 'pattern', patternId: pattern.id, pattern });
    },
    stop: () => {
      if (heard) playback.stop();
    },
  };
}
