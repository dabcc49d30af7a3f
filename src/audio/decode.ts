import { err, ok, type Result } from '../core/result.ts';

/** One channel of sound. */
export type MonoSound = { readonly samples: Float32Array; readonly sampleRateHz: number };

/** Why sound was not read: the browser cannot decode what the file holds (its own word), or there is none in it. */
export type DecodeError =
  | { readonly kind: 'not-decoded'; readonly text: string }
  | { readonly kind: 'silent-file' };

/** Rate at which recordings are listened to; the browser resamples to it while it decodes. */
const LISTENING_RATE_HZ = 22_050;

function mixedDown(buffer: AudioBuffer): Float32Array {
  const mono = new Float32Array(buffer.length);
  for (let channel = 0; channel < buffer.numberOfChannels; channel++) {
    const samples = buffer.getChannelData(channel);
    for (let i = 0; i < mono.length; i++) mono[i]! += samples[i]! / buffer.numberOfChannels;
  }
  return mono;
}

/**
 * The sound of a file in any format that the browser knows, mixed down to one channel at 22 050 Hz (twenty minutes
 * take about 100 MB a channel while they are decoded).
 */
export async function decodeMono(bytes: ArrayBuffer): Promise<Result<MonoSound, DecodeError>> {
  try {
    const context = new OfflineAudioContext(1, 1, LISTENING_RATE_HZ);
    const buffer = await context.decodeAudioData(bytes);
    if (buffer.length === 0) return err({ kind: 'silent-file' });
    return ok({ samples: mixedDown(buffer), sampleRateHz: buffer.sampleRate });
  } catch (error) {
    return err({
      kind: 'not-decoded',
      text: error instanceof Error ? error.message : String(error),
    });
  }
}
