import { ok } from '../core/result.ts';
import type { Seconds } from '../core/time/ticks.ts';
import { createOnsetStream } from '../signal/onsetStream.ts';
import type { HitInput, Stop } from './hitInput.ts';

/**
 * Sound as it comes in, in pieces of one channel, each with the time of the context at its first
 * sample; an open microphone is such a source.
 */
export type SoundSource = {
  readonly sampleRate: number;
  readonly listen: (onPiece: (samples: Float32Array, atSec: Seconds) => void) => Stop;
};

/**
 * A piano or a table top before a microphone: every onset is a hit of unknown hand and key, told
 * about 80 ms after it sounded. What comes from a loudspeaker is heard, too, so the player needs
 * headphones. The latency must hold both that of the microphone and that of the output, since hits
 * are stamped when they come in.
 */
export function microphoneOnsets(source: SoundSource): HitInput {
  return async (hearing) => {
    const onsetsIn = createOnsetStream(source.sampleRate);
    const stop = source.listen((samples, atSec) => {
      for (const onsetSec of onsetsIn(samples, atSec))
        hearing.onHit({ atSec: onsetSec - hearing.latencySec });
    });
    return ok(stop);
  };
}
