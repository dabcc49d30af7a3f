import type { MonoRecording } from '../../src/signal/heardRecording.ts';
import { seededRandom } from './random.ts';

/** What a made band plays: one character a step, `x` struck; the string is one bar. */
export type BandParts = {
  readonly kick?: string;
  readonly snare?: string;
  readonly hat?: string;
  /** Bass and chord change with each bar. */
  readonly bass?: string;
  readonly chord?: string;
};

export type BandPlaying = {
  readonly parts: BandParts;
  readonly beatsPerBar: number;
  readonly stepsPerBeat: number;
  /** When each beat is played, in seconds; the first one is a downbeat. */
  readonly beats: readonly number[];
  readonly lengthSec: number;
  readonly sampleRateHz?: number;
};

/** Roots of the bars, in semitones from C: four chords that return. */
const ROOTS = [0, 9, 5, 7];

/** Beats of one tempo from `fromSec` on. */
export function steadyBeats(bpm: number, lengthSec: number, fromSec = 0): number[] {
  const count = Math.floor(((lengthSec - fromSec) * bpm) / 60);
  return Array.from({ length: count }, (_, k) => fromSec + (60 * k) / bpm);
}

/** A band made of decaying noises and tones: exact times, no room, no players. */
export function madeBand(playing: BandPlaying): MonoRecording {
  const { parts, beatsPerBar, stepsPerBeat, beats, lengthSec, sampleRateHz = 22050 } = playing;
  const samples = new Float32Array(Math.round(lengthSec * sampleRateHz));
  const random = seededRandom(5).uniform;
  const add = (sec: number, lasts: number, wave: (t: number) => number) => {
    const from = Math.round(sec * sampleRateHz);
    const end = Math.min(samples.length, from + Math.round(lasts * sampleRateHz));
    for (let i = Math.max(0, from); i < end; i++) {
      const t = (i - from) / sampleRateHz;
      // Faded to nothing, since a sound that is cut off is an attack as well.
      samples[i]! += wave(t) * (1 - t / lasts);
    }
  };
  const noise = () => 2 * random() - 1;
  const sine = (freqHz: number, t: number) => Math.sin(2 * Math.PI * freqHz * t);
  const tone = (key: number, t: number) => {
    const freqHz = 440 * 2 ** ((key - 69) / 12);
    return sine(freqHz, t) + 0.5 * sine(2 * freqHz, t) + 0.25 * sine(3 * freqHz, t);
  };
  beats.forEach((beat, k) => {
    // After the last beat before a pause the steps go on as before it.
    const before = beat - (beats[k - 1] ?? beat - 1);
    const after = (beats[k + 1] ?? beat + before) - beat;
    const length = k > 0 && after > 1.5 * before ? before : after;
    const root = ROOTS[Math.floor(k / beatsPerBar) % ROOTS.length]!;
    for (let step = 0; step < stepsPerBeat; step++) {
      const sec = beat + (length * step) / stepsPerBeat;
      const struck = (part: string | undefined) =>
        part?.[(k % beatsPerBar) * stepsPerBeat + step] === 'x';
      if (struck(parts.kick)) add(sec, 0.2, (t) => 0.5 * sine(55, t) * Math.exp(-t / 0.05));
      if (struck(parts.snare))
        add(sec, 0.15, (t) => (0.25 * noise() + 0.2 * sine(190, t)) * Math.exp(-t / 0.04));
      if (struck(parts.hat)) {
        let last = 0;
        add(sec, 0.06, (t) => {
          const now = noise();
          const high = now - last;
          last = now;
          return 0.1 * high * Math.exp(-t / 0.015);
        });
      }
      if (struck(parts.bass)) add(sec, 0.3, (t) => 0.2 * tone(36 + root, t) * Math.exp(-t / 0.15));
      if (struck(parts.chord))
        for (const third of [0, 4, 7])
          add(sec, 0.4, (t) => 0.06 * tone(60 + root + third, t) * Math.exp(-t / 0.2));
    }
  });
  return { samples, sampleRateHz };
}

/** A plain song in 4/4: eighths on the hat, kick on 1 and 3, back-beat, bass and chords on every beat. */
export const PLAIN_FOUR: Pick<BandPlaying, 'parts' | 'beatsPerBar' | 'stepsPerBeat'> = {
  parts: {
    kick: 'x...x...',
    snare: '..x...x.',
    hat: 'xxxxxxxx',
    bass: 'x.x.x.x.',
    chord: 'x.x.x.x.',
  },
  beatsPerBar: 4,
  stepsPerBeat: 2,
};

/** Share of `expected` with a found one within 70 ms (the tolerance of beat evaluation, Davies and others 2009), as an F-measure. */
export function beatAgreement(expected: readonly number[], found: readonly number[]): number {
  const hits = expected.filter((sec) =>
    found.some((other) => Math.abs(other - sec) <= 0.07),
  ).length;
  return (2 * hits) / Math.max(1, expected.length + found.length);
}
