import { describe, expect, it } from 'vitest';
import type { HeardRecording } from '../../src/signal/heardRecording.ts';
import { hearRecording } from '../../src/signal/hearRecording.ts';
import { beatAgreement, madeBand, PLAIN_FOUR, steadyBeats } from '../support/clickBands.ts';
import { seededRandom } from '../support/random.ts';

const RATE_HZ = 22050;
const secsOf = ({ beats }: HeardRecording) => beats.map(({ sec }) => sec);

/** A plain song as it was recorded by something bad. */
function plainSong(spoil: (sample: number) => number) {
  const beats = steadyBeats(108, 15, 0.2);
  const { samples, sampleRateHz } = madeBand({ ...PLAIN_FOUR, beats, lengthSec: 15 });
  return { beats, recording: { samples: samples.map(spoil), sampleRateHz } };
}

/** Syllables of a buzz, of uneven length and pitch, with pauses, as somebody speaks. */
function speech(lengthSec: number): Float32Array {
  const { uniform } = seededRandom(8);
  const samples = new Float32Array(lengthSec * RATE_HZ);
  for (let at = 0; at < samples.length; ) {
    const length = Math.round(RATE_HZ * (0.08 + 0.3 * uniform()));
    const freqHz = 100 + 80 * uniform();
    for (let i = 0; i < length && at + i < samples.length; i++) {
      const buzz = ((i * freqHz) / RATE_HZ) % 1;
      const loud = Math.sqrt(Math.sin((Math.PI * i) / length));
      samples[at + i] = 0.3 * loud * (buzz - 0.5 + 0.1 * (uniform() - 0.5));
    }
    at += length + Math.round(RATE_HZ * (uniform() < 0.3 ? 0.4 : 0.02));
  }
  return samples;
}

it('tells how far it is, from 0 to 1', () => {
  const shares: number[] = [];
  hearRecording(plainSong((sample) => sample).recording, {
    onProgress: (share) => shares.push(share),
  });
  expect(shares[0]).toBe(0);
  expect(shares.at(-1)).toBe(1);
  expect(shares).toEqual(shares.toSorted((a, b) => a - b));
});

it('finds the attacks of a song', () => {
  const { beats, recording } = plainSong((sample) => sample);
  const onsets = hearRecording(recording).onsets.map(({ sec }) => sec);
  const eighths = beats.flatMap((beat) => [beat, beat + 30 / 108]);
  expect(beatAgreement(eighths, onsets)).toBeGreaterThan(0.95);
});

describe('recorded badly', () => {
  it.each<[string, (sample: number) => number]>([
    ['clipped', (sample) => Math.max(-0.1, Math.min(0.1, sample))],
    ['in 8 bits', (sample) => Math.round(127 * sample) / 127],
    ['very quietly', (sample) => 0.003 * sample],
    ['with a constant on top', (sample) => sample + 0.3],
  ])('%s it is the same song', (_, spoil) => {
    const { beats, recording } = plainSong(spoil);
    expect(beatAgreement(beats, secsOf(hearRecording(recording)))).toBeGreaterThan(0.9);
  });

  it('in noise it is the same song', () => {
    const { normal } = seededRandom(2);
    const { beats, recording } = plainSong((sample) => sample + 0.03 * normal());
    expect(beatAgreement(beats, secsOf(hearRecording(recording)))).toBeGreaterThan(0.9);
  });
});

describe('what is no music in time', () => {
  it('is nothing where there is nothing', () => {
    const heard = hearRecording({ samples: new Float32Array(5 * RATE_HZ), sampleRateHz: RATE_HZ });
    expect(heard.beats).toEqual([]);
    expect(heard.onsets).toEqual([]);
    expect(heard.beatConfidence).toBe(0);
  });

  it('gives no beats where it is noise', () => {
    const { normal } = seededRandom(3);
    const samples = Float32Array.from({ length: 15 * RATE_HZ }, () => 0.1 * normal());
    const heard = hearRecording({ samples, sampleRateHz: RATE_HZ });
    expect(heard.beats).toEqual([]);
    expect(heard.beatConfidence).toBe(0);
  });

  it('is not sure of the beats of speech, but of those of a band', () => {
    const spoken = hearRecording({ samples: speech(20), sampleRateHz: RATE_HZ });
    expect(spoken.beatConfidence).toBeLessThan(0.55);
    const played = hearRecording(plainSong((sample) => sample).recording);
    expect(played.beatConfidence).toBeGreaterThan(0.8);
  });

  it('is not sure of a voice that sings freely', () => {
    const { uniform } = seededRandom(4);
    const samples = new Float32Array(25 * RATE_HZ);
    let turn = 0;
    for (let at = 0; at < samples.length; ) {
      const length = Math.round(RATE_HZ * (0.3 + 1.2 * uniform()));
      const freqHz = 220 * 2 ** (Math.floor(12 * uniform()) / 12);
      for (let i = 0; i < length && at + i < samples.length; i++) {
        const wavers = 1 + 0.01 * Math.sin((2 * Math.PI * 5.5 * i) / RATE_HZ);
        turn += (2 * Math.PI * freqHz * wavers) / RATE_HZ;
        const loud = Math.min(1, i / 1500, (length - i) / 3000);
        samples[at + i] = 0.2 * loud * (Math.sin(turn) + 0.5 * Math.sin(2 * turn));
      }
      at += length;
    }
    expect(hearRecording({ samples, sampleRateHz: RATE_HZ }).beatConfidence).toBeLessThan(0.5);
  });
});

it('hears a click track', () => {
  const beats = steadyBeats(90, 15, 0.4);
  const samples = new Float32Array(15 * RATE_HZ);
  for (const beat of beats)
    for (let i = 0; i < 400; i++)
      samples[Math.round(beat * RATE_HZ) + i] = 0.5 * Math.sin(0.3 * i) * Math.exp(-i / 80);
  const heard = hearRecording({ samples, sampleRateHz: RATE_HZ });
  expect(beatAgreement(beats, secsOf(heard))).toBeGreaterThan(0.95);
});

it.each<[string, number, number, number, Record<string, string>]>([
  [
    'six-eight',
    2,
    3,
    54,
    { kick: 'x.....', snare: '...x..', hat: 'xxxxxx', bass: 'x....x', chord: 'x..x..' },
  ],
  [
    'five-four',
    5,
    2,
    140,
    {
      kick: 'x.....x...',
      snare: '...x....x.',
      hat: 'x.x.x.x.x.',
      bass: 'x.....x...',
      chord: 'x.....x...',
    },
  ],
])('finds a pulse of %s among its tempi', (_, beatsPerBar, stepsPerBeat, bpm, parts) => {
  const beats = steadyBeats(bpm, 24, 0.2);
  const { tempi } = hearRecording(
    madeBand({ parts, beatsPerBar, stepsPerBeat, beats, lengthSec: 24 }),
  );
  expect(tempi.some((tempo) => Math.abs(tempo.bpm / bpm - 1) < 0.04)).toBe(true);
});
