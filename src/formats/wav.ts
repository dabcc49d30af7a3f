import type { AudioData } from '../core/audioData.ts';

const HEADER_BYTES = 44;

/** WAVE format tags: whole numbers, and 32-bit floats (reference 1.4). */
const PCM = 1;
const FLOAT = 3;

/** How one sample is written at a byte: floats as they are, whole numbers rounded and limited. */
const WRITE_SAMPLE: Readonly<
  Record<16 | 24 | 32, (view: DataView, at: number, sample: number) => void>
> = {
  16: (view, at, sample) => view.setInt16(at, wholeSample(sample, 15), true),
  24: (view, at, sample) => {
    const value = wholeSample(sample, 23);
    view.setUint8(at, value & 0xff);
    view.setInt16(at + 1, value >> 8, true);
  },
  32: (view, at, sample) => view.setFloat32(at, sample, true),
};

function wholeSample(sample: number, bits: number): number {
  const full = 2 ** bits;
  return Math.max(-full, Math.min(full - 1, Math.round(sample * full)));
}

function writeText(view: DataView, at: number, text: string): void {
  for (let i = 0; i < text.length; i++) view.setUint8(at + i, text.charCodeAt(i));
}

/** How the samples of a WAV file lie: so many frames of so many channels. */
export type WavLayout = {
  readonly frames: number;
  readonly channels: number;
  readonly sampleRate: number;
  readonly bits: 16 | 24 | 32;
};

/** A chunk's length is written in 32 bits (reference 1.4), and so is that of the whole file. */
const MOST_BYTES = 2 ** 32 - 1;

function blockBytes({ channels, bits }: Pick<WavLayout, 'channels' | 'bits'>): number {
  return (channels * bits) / 8;
}

/**
 * The first 44 bytes of a RIFF WAVE file; its frames follow as `wavFrames` gives them, and a byte 0
 * where their number of bytes is odd. Throws where the file would be longer than one can be, 4 GB.
 */
export function wavHeader(layout: WavLayout): Uint8Array<ArrayBuffer> {
  const { frames, channels, sampleRate, bits } = layout;
  const dataBytes = frames * blockBytes(layout);
  const fileBytes = HEADER_BYTES + dataBytes + (dataBytes % 2);
  if (fileBytes > MOST_BYTES) throw new Error('a WAV file holds no more than 4 GB');
  const bytes = new Uint8Array(HEADER_BYTES);
  const view = new DataView(bytes.buffer);
  writeText(view, 0, 'RIFF');
  view.setUint32(4, fileBytes - 8, true);
  writeText(view, 8, 'WAVEfmt ');
  view.setUint32(16, 16, true);
  view.setUint16(20, bits === 32 ? FLOAT : PCM, true);
  view.setUint16(22, channels, true);
  view.setUint32(24, sampleRate, true);
  view.setUint32(28, sampleRate * blockBytes(layout), true);
  view.setUint16(32, blockBytes(layout), true);
  view.setUint16(34, bits, true);
  writeText(view, 36, 'data');
  view.setUint32(40, dataBytes, true);
  return bytes;
}

/**
 * Samples as they follow a `wavHeader`: 16- or 24-bit whole numbers (what lies beyond ±1 is
 * clipped) or 32-bit floats (nothing is). Throws where the channels differ in length or there are none.
 */
export function wavFrames(
  channels: AudioData['channels'],
  bits: WavLayout['bits'],
): Uint8Array<ArrayBuffer> {
  const frames = channels[0]?.length;
  if (frames === undefined || channels.some((channel) => channel.length !== frames))
    throw new Error('a WAV file needs channels of one length');
  const block = blockBytes({ channels: channels.length, bits });
  const bytes = new Uint8Array(frames * block);
  const view = new DataView(bytes.buffer);
  channels.forEach((channel, c) => {
    for (let i = 0; i < frames; i++)
      WRITE_SAMPLE[bits](view, i * block + (c * bits) / 8, channel[i]!);
  });
  return bytes;
}

/** The sound as a whole RIFF WAVE file: see `wavHeader` and `wavFrames`. */
export function encodeWav(audio: AudioData, bits: WavLayout['bits']): Uint8Array<ArrayBuffer> {
  const { channels, sampleRate } = audio;
  const data = wavFrames(channels, bits);
  const frames = channels[0]!.length;
  const header = wavHeader({ frames, channels: channels.length, sampleRate, bits });
  const bytes = new Uint8Array(header.length + data.length + (data.length % 2));
  bytes.set(header);
  bytes.set(data, header.length);
  return bytes;
}
