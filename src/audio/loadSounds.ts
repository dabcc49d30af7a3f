import type { AudioData } from '../core/audioData.ts';
import { unreachable } from '../core/result.ts';
import { fromAttack, peakOf, rmsOf, toSoftEnd } from './attack.ts';
import type { Loudness, SoundId, StoredSound } from './soundCatalogue.ts';

/** Sounds ready to be struck, by identity. They belong to no context; any context of any rate plays them. */
export type SoundBank = ReadonlyMap<SoundId, AudioBuffer>;

/** How much of a sound its mean loudness is measured over. */
const LOUDNESS_SEC = 0.25;

async function bytesAt(url: string): Promise<ArrayBuffer> {
  const response = await fetch(url);
  if (!response.ok) throw new Error(`sound file ${url}: ${response.status} ${response.statusText}`);
  return response.arrayBuffer();
}

function channelsOf(buffer: AudioBuffer): Float32Array[] {
  return Array.from({ length: buffer.numberOfChannels }, (_, i) => buffer.getChannelData(i));
}

async function decodedAt(url: string, context: BaseAudioContext): Promise<AudioData> {
  const decoded = await context.decodeAudioData(await bytesAt(url));
  return { channels: channelsOf(decoded), sampleRate: decoded.sampleRate };
}

async function audioOf({ origin }: StoredSound, context: BaseAudioContext): Promise<AudioData> {
  const { sampleRate } = context;
  const computed = (samples: (rate: number) => Float32Array) => ({
    channels: [samples(sampleRate)],
    sampleRate,
  });
  switch (origin.kind) {
    case 'synthesised':
      return computed(origin.samples);
    case 'recorded':
      return fromAttack(await decodedAt(origin.url, context));
    case 'spoken':
      return decodedAt(origin.url, context).catch(() => computed(origin.standIn));
    default:
      return unreachable(origin);
  }
}

function scaleTo(loudness: Loudness, { channels, sampleRate }: AudioData): number {
  if (loudness.measure === 'factor') return loudness.value;
  const measured =
    loudness.measure === 'peak'
      ? peakOf(channels)
      : rmsOf(channels, Math.round(LOUDNESS_SEC * sampleRate));
  if (measured === 0) throw new Error('a stored sound is silent');
  return loudness.value / measured;
}

function bufferOf(audio: AudioData, scale: number): AudioBuffer {
  const buffer = new AudioBuffer({
    length: audio.channels[0]?.length ?? 0,
    numberOfChannels: audio.channels.length,
    sampleRate: audio.sampleRate,
  });
  audio.channels.forEach((channel, i) => {
    buffer.copyToChannel(
      channel.map((sample) => sample * scale),
      i,
    );
  });
  return buffer;
}

/**
 * Fetches and decodes, or computes, the given sounds at the context's sample rate, cuts them so
 * that each attack stands on the first sample (not those of words, which begin softly), and brings
 * them to their stated loudness. Rejects, naming the file, where a file of the app cannot be fetched
 * or decoded; in place of a word there is a click then.
 */
export async function loadSounds(
  context: BaseAudioContext,
  sounds: readonly StoredSound[],
): Promise<SoundBank> {
  const loaded = sounds.map(async (sound) => {
    const audio = toSoftEnd(await audioOf(sound, context));
    return [sound.id, bufferOf(audio, scaleTo(sound.loudness, audio))] as const;
  });
  return new Map(await Promise.all(loaded));
}
