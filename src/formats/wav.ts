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

/**
 * The sound as a RIFF WAVE file: 16- or 24-bit whole numbers (what lies beyond ±1 is clipped) or
 * 32-bit floats (nothing is). Any number of channels of one length; an odd number of data bytes is
 * padded. Throws where the channels differ in length or there are none.
 */
export function encodeWav(audio: AudioData, bits: 16 | 24 | 32): Uint8Array<ArrayBuffer> {
  const { channels, sampleRate } = audio;
  const frames = channels[0]?.length;
  if (frames === undefined || channels.some((channel) => channel.length !== frames))
    throw new Error('a WAV file needs channels of one length');
  const blockAlign = (channels.length * bits) / 8;
  const dataBytes = frames * blockAlign;
  const padding = dataBytes % 2;
  const bytes = new Uint8Array(HEADER_BYTES + dataBytes + padding);
  const view = new DataView(bytes.buffer);
  writeText(view, 0, 'RIFF');
  view.setUint32(4, bytes.length - 8, true);
  writeText(view, 8, 'WAVEfmt ');
  view.setUint32(16, 16, true);
  view.setUint16(20, bits === 32 ? FLOAT : PCM, true);
  view.setUint16(22, channels.length, true);
  view.setUint32(24, sampleRate, true);
  view.setUint32(28, sampleRate * blockAlign, true);
  view.setUint16(32, blockAlign, true);
  view.setUint16(34, bits, true);
  writeText(view, 36, 'data');
  view.setUint32(40, dataBytes, true);
  channels.forEach((channel, c) => {
    for (let i = 0; i < frames; i++)
      WRITE_SAMPLE[bits](view, HEADER_BYTES + i * blockAlign + (c * bits) / 8, channel[i]!);
  });
  return bytes;
}
