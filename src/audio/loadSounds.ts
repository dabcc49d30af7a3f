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

/** The sound in so many channels, those that are too many mixed into one. */
function inChannels(audio: AudioData, most: number): AudioData {
  const { channels, sampleRate } = audio;
  const [first] = channels;
  if (!first || channels.length <= most) return audio;
  const mixed = first.map(
    (_, i) => channels.reduce((sum, channel) => sum + channel[i]!, 0) / channels.length,
  );
  return { channels: [mixed], sampleRate };
}

/**
 * `channels`: 1 keeps recordings in one channel. With `pause` one sound is loaded after the other, each
 * after a pause; once it gives none, those that are left are loaded together.
 */
export type LoadOptions = {
  readonly channels?: 1 | 2;
  readonly pause?: () => Promise<void> | undefined;
};

/**
 * Fetches and decodes, or computes, the given sounds at the context's sample rate, cuts them so
 * that each attack stands on the first sample (not those of words, which begin softly), and brings
 * them to their stated loudness. Rejects, naming the file, where a file of the app cannot be fetched
 * or decoded; in place of a word there is a click then.
 */
export async function loadSounds(
  context: BaseAudioContext,
  sounds: readonly StoredSound[],
  { channels = 2, pause }: LoadOptions = {},
): Promise<SoundBank> {
  const load = async (sound: StoredSound) => {
    const audio = inChannels(toSoftEnd(await audioOf(sound, context)), channels);
    return [sound.id, bufferOf(audio, scaleTo(sound.loudness, audio))] as const;
  };
  const loaded: (readonly [SoundId, AudioBuffer])[] = [];
  for (const [i, sound] of sounds.entries()) {
    const rest = pause?.();
    if (!rest) return new Map([...loaded, ...(await Promise.all(sounds.slice(i).map(load)))]);
    await rest;
    loaded.push(await load(sound));
  }
  return new Map(loaded);
}
