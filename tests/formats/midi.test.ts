import { describe, expect, it } from 'vitest';
import type { Key } from '../../src/core/harmony/key.ts';
import { steadyTempo } from '../../src/core/time/tempoMap.ts';
import { decodeMidi, type MidiBand, type MidiError } from '../../src/formats/midi.ts';
import {
  hexBytes,
  hexText,
  keySignature,
  meterOf,
  midiFile,
  note,
  program,
  tempoOf,
  trackName,
  variableLength,
} from '../support/midi.ts';
import { errorOf, meter, valueOf } from '../support/music.ts';
import { seededRandom } from '../support/random.ts';

/** The format 0 example of the specification [SMF]. */
const WORKED_FILE = hexBytes(`
  4D546864 00000006 0000 0001 0060 | 4D54726B 0000003B
  00 FF58 04 04021808 | 00 FF51 03 07A120 | 00 C005 | 00 C12E | 00 C246 | 00 923060 | 00 3C60
  60 914340 | 60 904C20 | 8140 823040 | 00 3C40 | 00 814340 | 00 804C40 | 00 FF2F00`);

function decoded(bytes: Uint8Array): MidiBand {
  return valueOf(decodeMidi(bytes));
}

function refusal(bytes: Uint8Array): MidiError {
  return errorOf(decodeMidi(bytes));
}

function asciiBytes(text: string): Uint8Array {
  return new TextEncoder().encode(text);
}

function oneNote(...events: Parameters<typeof midiFile>[0]['tracks'][number]): Uint8Array {
  return midiFile({ tracks: [[...events, ...note({ key: 60, at: 0, length: 480 })]] });
}

describe('reading', () => {
  it('reads the worked file of the specification, split by channel and rescaled', () => {
    const band = decoded(WORKED_FILE);
    expect(band.bars).toEqual([{ startTick: 0, meter: meter('4/4') }]);
    expect(band.tempoMap).toEqual(steadyTempo(120));
    expect(band.lengthTicks).toBe(1920);
    const seen = band.tracks.map(({ channel, program: sound, notes }) => ({
      channel,
      sound,
      notes: notes.map((n) => [n.keyNumber, n.startTick, n.durationTicks, n.velocity]),
    }));
    expect(seen).toEqual([
      { channel: 0, sound: 5, notes: [[76, 960, 960, 32]] },
      { channel: 1, sound: 46, notes: [[67, 480, 1440, 64]] },
      {
        channel: 2,
        sound: 70,
        notes: [
          [48, 0, 1920, 96],
          [60, 0, 1920, 96],
        ],
      },
    ]);
  });

  // Delta times out of the table of variable-length quantities [SMF]; the longer ones would make
  // files of days and are tested as text lengths by the writer below.
  it.each([
    ['00', 0x00],
    ['40', 0x40],
    ['7F', 0x7f],
    ['8100', 0x80],
    ['C000', 0x2000],
    ['FF7F', 0x3fff],
    ['818000', 0x4000],
    ['C08000', 0x100000],
    ['FFFF7F', 0x1fffff],
  ])('reads the delta time %s as %i ticks', (delta, ticks) => {
    const body = `${delta} 903C40 60 803C40 00 FF2F00`;
    const size = hexBytes(body).length.toString(16).padStart(8, '0');
    const bytes = hexBytes(`4D546864 00000006 0000 0001 01E0 4D54726B ${size} ${body}`);
    expect(decoded(bytes).tracks[0]?.notes[0]?.startTick).toBe(ticks);
    expect(hexText(variableLength(ticks))).toBe(delta);
  });

  it.each([
    [0x200000, '81808000'],
    [0x8000000, 'C0808000'],
    [0xfffffff, 'FFFFFF7F'],
  ])('agrees with the test builder on the variable length of %i [SMF]', (value, bytes) => {
    expect(hexText(variableLength(value))).toBe(bytes);
  });

  // Worked out as round(60 000 000 / bpm), reference 1.1.
  it.each([
    [1_500_000, 40],
    [952_381, 63],
    [833_333, 72],
    [750_000, 80],
    [555_556, 108],
    [476_190, 126],
    [451_128, 133],
    [340_909, 176],
    [288_462, 208],
    [250_000, 240],
  ])('reads %i microseconds a quarter as %i bpm', (microseconds, bpm) => {
    expect(decoded(oneNote(tempoOf(microseconds))).tempoMap).toEqual(steadyTempo(bpm));
  });

  it('counts the tempo in the felt beat of the meter', () => {
    const bytes = oneNote(meterOf(6, 8), tempoOf(1_000_000));
    expect(decoded(bytes).tempoMap).toEqual([{ tick: 0, tempo: { bpm: 40, beatTicks: 720 } }]);
  });

  it('takes 4/4 at 120 where the file says nothing', () => {
    const band = decoded(oneNote());
    expect(band.bars[0]?.meter).toEqual(meter('4/4'));
    expect(band.tempoMap).toEqual(steadyTempo(120));
    expect(band.key).toBeUndefined();
  });

  it('starts at 120 where the first tempo comes later [SMF]', () => {
    const bytes = oneNote(tempoOf(1_000_000, 960));
    expect(decoded(bytes).tempoMap.map((mark) => [mark.tick, mark.tempo.bpm])).toEqual([
      [0, 120],
      [960, 60],
    ]);
  });

  it('bars a change of meter', () => {
    const events = [meterOf(3, 4), meterOf(6, 8, 2 * 1440), ...note({ key: 60, at: 5000 })];
    const { bars } = decoded(midiFile({ tracks: [events] }));
    expect(bars.map((bar) => [bar.startTick, bar.meter.beats, bar.meter.unit])).toEqual([
      [0, 3, 4],
      [1440, 3, 4],
      [2880, 6, 8],
      [4320, 6, 8],
    ]);
  });

  it('lets a meter that is set inside a bar hold from the next bar line', () => {
    const events = [meterOf(3, 4, 500), ...note({ key: 60, at: 2000 })];
    const { bars } = decoded(midiFile({ tracks: [events] }));
    expect(bars.map((bar) => [bar.startTick, bar.meter.beats])).toEqual([
      [0, 4],
      [1920, 3],
    ]);
  });

  // Signature bytes computed from the rule sf, mi [SMF].
  it.each([
    [-2, 0, 'B', -1, 'major'],
    [1, 1, 'E', 0, 'minor'],
    [-7, 0, 'C', -1, 'major'],
    [3, 1, 'F', 1, 'minor'],
    [-3, 1, 'C', 0, 'minor'],
    [7, 0, 'C', 1, 'major'],
  ] as const)('reads the key signature %i %i', (fifths, minor, letter, alteration, mode) => {
    const key: Key = { tonic: { letter, alteration }, mode };
    expect(decoded(oneNote(keySignature(fifths, minor))).key).toEqual(key);
  });

  it('finds a program that another track of the file sets for the channel', () => {
    const bytes = midiFile({ tracks: [[program(3, 33)], note({ channel: 3, key: 40, at: 0 })] });
    expect(decoded(bytes).tracks.map((track) => track.program)).toEqual([33]);
  });

  it('reads names as UTF-8, and as Latin-1 where they are not', () => {
    expect(decoded(oneNote(trackName('B♭ – bass'))).tracks[0]?.name).toBe('B♭ – bass');
    const latin = { at: 0, bytes: [0xff, 0x03, 2, 0xe9, 0x21] };
    expect(decoded(oneNote(latin)).tracks[0]?.name).toBe('é!');
  });

  it('lets each end of a key that is struck twice end the older note', () => {
    const on = [0x90, 60, 80];
    const off = [0x80, 60, 0];
    const events = [
      { at: 0, bytes: on },
      { at: 100, bytes: on },
      { at: 150, bytes: off },
      { at: 300, bytes: off },
    ];
    const notes = decoded(midiFile({ tracks: [events] })).tracks[0]?.notes;
    expect(notes?.map((n) => [n.startTick, n.durationTicks])).toEqual([
      [0, 150],
      [100, 200],
    ]);
  });

  it('passes over chunks it does not know and unwraps a RIFF file', () => {
    const plain = oneNote();
    const odd = [...hexBytes('58595A20 00000003 010203')];
    const withOdd = Uint8Array.from([...plain.slice(0, 14), ...odd, ...plain.slice(14)]);
    expect(decodeMidi(withOdd)).toEqual(decodeMidi(plain));
    const size = [plain.length % 256, Math.floor(plain.length / 256), 0, 0];
    const riff = Uint8Array.from([
      ...asciiBytes('RIFF'),
      0,
      0,
      0,
      0,
      ...asciiBytes('RMIDdata'),
      ...size,
      ...plain,
    ]);
    expect(decodeMidi(riff)).toEqual(decodeMidi(plain));
  });
});

describe('refusing', () => {
  it('says what is no MIDI file', () => {
    expect(refusal(hexBytes('FFFB9000'))).toEqual({ kind: 'not-midi', at: 0 });
    expect(refusal(new Uint8Array())).toEqual({ kind: 'not-midi', at: 0 });
  });

  it('says where a file is cut off and in which track', () => {
    const bytes = midiFile({ tracks: [[tempoOf(500_000)], note({ key: 60, at: 0 })] });
    const cut = bytes.slice(0, -5);
    expect(refusal(cut)).toEqual({ kind: 'cut-off', at: cut.length, track: 1 });
    expect(refusal(bytes.slice(0, 10))).toMatchObject({ kind: 'bad-header', at: 10 });
  });

  it('says that a track is missing', () => {
    const bytes = oneNote();
    bytes[11] = 3;
    expect(refusal(bytes)).toEqual({ kind: 'cut-off', at: bytes.length, track: 1 });
  });

  it('refuses SMPTE time, 25 frames of 40 parts', () => {
    const bytes = oneNote();
    bytes.set([0xe7, 0x28], 12);
    expect(refusal(bytes)).toEqual({ kind: 'smpte-division', at: 12, framesPerSecond: 25 });
  });

  it('refuses several pieces in one file and a division of nothing', () => {
    expect(refusal(midiFile({ format: 2, tracks: [note({ key: 60, at: 0 })] }))).toEqual({
      kind: 'independent-sequences',
      at: 8,
    });
    expect(refusal(midiFile({ division: 0, tracks: [] }))).toMatchObject({ kind: 'bad-header' });
  });

  it('says that there are no notes', () => {
    expect(refusal(midiFile({ tracks: [[tempoOf(500_000)]] }))).toEqual({ kind: 'no-notes' });
  });

  it('says at which byte a track stops being MIDI', () => {
    const start = midiFile({ tracks: [[]] }).length - 4;
    const events = [
      { at: 0, bytes: [0x90, 60, 80] },
      { at: 10, bytes: [0xf4] },
    ];
    // Delta, three bytes of the note, delta: the wrong status is the track's byte 5.
    expect(refusal(midiFile({ tracks: [events] }))).toMatchObject({
      kind: 'bad-event',
      at: start + 5,
      track: 0,
    });
  });

  it('refuses values that no MIDI event has', () => {
    const events = [{ at: 0, bytes: [0x90, 200, 80] }];
    expect(refusal(midiFile({ tracks: [events] }))).toMatchObject({
      kind: 'bad-event',
      track: 0,
      text: 'noteOn noteNumber 200',
    });
  });

  it('gives up on days of empty bars', () => {
    const events = note({ key: 60, at: 0xfffffff });
    expect(refusal(midiFile({ division: 24, tracks: [events] }))).toMatchObject({
      kind: 'too-long',
    });
  });

  it('never throws, whatever bytes of a file are changed', () => {
    const random = seededRandom(11);
    const whole = midiFile({
      tracks: [
        [tempoOf(500_000), meterOf(6, 8), keySignature(-3, 1), trackName('Bass')],
        [program(0, 33), ...note({ key: 40, at: 0 }), ...note({ key: 43, at: 240 })],
      ],
    });
    for (let i = 0; i < 4000; i++) {
      const bytes = whole.slice(0, random.uniform() < 0.2 ? random.index(whole.length) : undefined);
      const changes = 1 + random.index(3);
      for (let k = 0; k < changes && bytes.length > 0; k++)
        bytes[random.index(bytes.length)] = random.index(256);
      const band = decodeMidi(bytes);
      if (!band.ok) continue;
      const numbers = band.value.tracks.flatMap((track) =>
        track.notes.flatMap((n) => [n.startTick, n.durationTicks, n.keyNumber, n.velocity]),
      );
      expect(numbers.every((n) => Number.isInteger(n) && n >= 0)).toBe(true);
    }
  });
});
