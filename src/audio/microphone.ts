import { err, ok, type Result } from '../core/result.ts';
import type { Seconds } from '../core/time/ticks.ts';
import captureUrl from './captureWorklet.mjs?url';
import type { AudioRoom } from './context.ts';

/** A piece of what the microphone hears, and the time of the context at which its first sample came in. */
export type OnPiece = (samples: Float32Array, atSec: Seconds) => void;

/** An open microphone; one channel. */
export type Microphone = {
  readonly sampleRate: number;
  /** Tells every piece from now on, in order; returns how to end that. */
  readonly listen: (onPiece: OnPiece) => () => void;
  /** Calls `listener` if the device is taken away; returns how to end that. */
  readonly onLost: (listener: () => void) => () => void;
  /** Lets go of the device. Nothing is heard afterwards. */
  readonly close: () => void;
};

/**
 * Why there is no microphone: the browser has no access to any, the user (or a policy) forbade it,
 * none is connected, or the system refused with a message of its own.
 */
export type MicrophoneError =
  | { readonly kind: 'unsupported' }
  | { readonly kind: 'denied' }
  | { readonly kind: 'no-device' }
  | { readonly kind: 'refused'; readonly text: string };

/** Everything that a call would want and that changes attacks: off. */
const RAW: MediaTrackConstraints = {
  echoCancellation: false,
  noiseSuppression: false,
  autoGainControl: false,
  channelCount: 1,
};

/** Opens the default microphone, unprocessed, which may ask the user. What it hears is not played. */
export async function openMicrophone(
  room: Pick<AudioRoom, 'context'>,
): Promise<Result<Microphone, MicrophoneError>> {
  const devices = typeof navigator === 'undefined' ? undefined : navigator.mediaDevices;
  if (!devices?.getUserMedia) return err({ kind: 'unsupported' });
  try {
    const stream = await devices.getUserMedia({ audio: RAW });
    await room.context.audioWorklet.addModule(captureUrl);
    return ok(microphoneOf(room.context, stream));
  } catch (error) {
    return err(microphoneError(error));
  }
}

function microphoneOf(context: AudioContext, stream: MediaStream): Microphone {
  const source = context.createMediaStreamSource(stream);
  const capture = new AudioWorkletNode(context, 'capture', { channelCount: 1 });
  // Silent (its outputs stay empty), but connected: a node that leads nowhere need not be run.
  source.connect(capture).connect(context.destination);
  const listeners = new Set<OnPiece>();
  const pass = ({ data }: MessageEvent<{ samples: Float32Array; atSec: Seconds }>) => {
    for (const onPiece of listeners) onPiece(data.samples, data.atSec);
  };
  capture.port.addEventListener('message', pass);
  capture.port.start();
  const [track] = stream.getAudioTracks();
  return {
    sampleRate: context.sampleRate,
    listen(onPiece) {
      listeners.add(onPiece);
      return () => listeners.delete(onPiece);
    },
    onLost(listener) {
      track?.addEventListener('ended', listener);
      return () => track?.removeEventListener('ended', listener);
    },
    close() {
      listeners.clear();
      source.disconnect();
      capture.disconnect();
      capture.port.close();
      for (const each of stream.getTracks()) each.stop();
    },
  };
}

function microphoneError(error: unknown): MicrophoneError {
  const name = error instanceof Error ? error.name : '';
  if (name === 'NotAllowedError' || name === 'SecurityError') return { kind: 'denied' };
  if (name === 'NotFoundError') return { kind: 'no-device' };
  return { kind: 'refused', text: String(error) };
}
