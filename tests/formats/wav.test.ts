import { expect, it } from 'vitest';
import { encodeWav } from '../../src/formats/wav.ts';

function silence(channels: number, frames: number, sampleRate: number) {
  return { channels: Array.from({ length: channels }, () => new Float32Array(frames)), sampleRate };
}

function view(bytes: Uint8Array): DataView {
  return new DataView(bytes.buffer);
}

const TEXT = new TextDecoder();

// Worked values of reference 1.4, computed: byte rate, block align, data bytes, RIFF size, file size.
it('writes one second of stereo at 44100 Hz in 16 bits with the worked sizes', () => {
  const bytes = encodeWav(silence(2, 44_100, 44_100), 16);
  const header = view(bytes);
  expect(TEXT.decode(bytes.slice(0, 4))).toBe('RIFF');
  expect(TEXT.decode(bytes.slice(8, 16))).toBe('WAVEfmt ');
  expect(TEXT.decode(bytes.slice(36, 40))).toBe('data');
  expect([header.getUint32(16, true), header.getUint16(20, true)]).toEqual([16, 1]);
  expect([header.getUint16(22, true), header.getUint32(24, true)]).toEqual([2, 44_100]);
  expect([header.getUint32(28, true), header.getUint16(32, true)]).toEqual([176_400, 4]);
  expect(header.getUint16(34, true)).toBe(16);
  expect([header.getUint32(40, true), header.getUint32(4, true)]).toEqual([176_400, 176_436]);
  expect(bytes.length).toBe(176_444);
});

it('writes mono at 48000 Hz in 16 bits with byte rate 96000 and block 2', () => {
  const header = view(encodeWav(silence(1, 10, 48_000), 16));
  expect([header.getUint32(28, true), header.getUint16(32, true)]).toEqual([96_000, 2]);
});

it('marks 32 bits as floats, format 3', () => {
  expect(view(encodeWav(silence(1, 1, 48_000), 32)).getUint16(20, true)).toBe(3);
});

const SAMPLES = Float32Array.of(0, 0.5, -0.5, 1, -1, 2);

it('writes 16-bit samples little-endian and clips beyond full scale', () => {
  const data = view(encodeWav({ channels: [SAMPLES], sampleRate: 8000 }, 16));
  const read = Array.from(SAMPLES, (_, i) => data.getInt16(44 + 2 * i, true));
  expect(read).toEqual([0, 16_384, -16_384, 32_767, -32_768, 32_767]);
});

it('writes 24-bit samples little-endian', () => {
  const bytes = encodeWav({ channels: [Float32Array.of(0.5, -0.5)], sampleRate: 8000 }, 24);
  expect(Array.from(bytes.slice(44))).toEqual([0, 0, 0x40, 0, 0, 0xc0]);
});

it('keeps floats beyond full scale', () => {
  const data = view(encodeWav({ channels: [SAMPLES], sampleRate: 8000 }, 32));
  expect(data.getFloat32(44 + 4 * 5, true)).toBe(2);
});

it('puts the channels side by side, frame by frame', () => {
  const channels = [Float32Array.of(0.5, 0), Float32Array.of(-0.5, 0.25)];
  const data = view(encodeWav({ channels, sampleRate: 8000 }, 16));
  const read = [0, 1, 2, 3].map((i) => data.getInt16(44 + 2 * i, true));
  expect(read).toEqual([16_384, -16_384, 0, 8192]);
});

it('pads an odd number of data bytes and says how many are data', () => {
  const bytes = encodeWav(silence(1, 1, 8000), 24);
  expect(bytes.length).toBe(48);
  expect(view(bytes).getUint32(40, true)).toBe(3);
  expect(view(bytes).getUint32(4, true)).toBe(40);
});

it('refuses channels of different lengths', () => {
  const channels = [new Float32Array(2), new Float32Array(3)];
  expect(() => encodeWav({ channels, sampleRate: 8000 }, 16)).toThrow('one length');
});
