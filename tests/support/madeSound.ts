import { type SoundId, STORED_SOUNDS } from '../../src/audio/soundCatalogue.ts';
import { soundOfNote } from '../../src/audio/soundOfNote.ts';
import { overtoneTone } from '../../src/audio/synth/overtones.ts';
import type { TimedNote } from '../../src/core/rhythm/note.ts';
import type { Seconds } from '../../src/core/time/ticks.ts';
import { seededRandom } from './random.ts';

export const MADE_RATE_HZ = 22050;

/** What stands between the players and who hears them. `noiseDb` against amplitude 1; `phone` keeps 300 to 3400 Hz. */
export type RoomOptions = {
  readonly seed: number;
  readonly detuneCents?: number;
  readonly phone?: boolean;
  readonly noiseDb?: number;
};

export type SungNote = {
  readonly startSec: Seconds;
  readonly durationSec: Seconds;
  readonly keyNumber: number;
};

type Stored = { readonly samples: Float32Array };

/** The key of a piano sample by its name. */
function keyOfFile(file: string): number {
  const match = /^(C|Ds|Fs|A)(\d)v/.exec(file)!;
  return { C: 0, Ds: 3, Fs: 6, A: 9 }[match[1]!]! + 12 * (Number(match[2]) + 1);
}

/** A struck string: overtones a little sharp of their multiples, the high ones dying away first. */
function pianoTone(keyNumber: number): Float32Array {
  const freqHz = 440 * 2 ** ((keyNumber - 69) / 12);
  const stiffness = 0.0003 * 2 ** ((keyNumber - 60) / 10);
  const overtones = Array.from({ length: 16 }, (_, i) => {
    const n = i + 1;
    return {
      multiple: n * Math.sqrt(1 + stiffness * n * n),
      level: 0.8 ** i / n ** 0.4,
      fallSec: (2.5 * 2 ** ((60 - keyNumber) / 18)) / (1 + 0.25 * i),
    };
  });
  return overtoneTone({ overtones, riseSec: 0.002, lengthSec: 5 }, freqHz, MADE_RATE_HZ);
}

/** Sounds by identity where they come from elsewhere than this file (recorded ones are not read in Node). */
export type SoundSource = (id: SoundId) => Float32Array | undefined;

const known = new Map<SoundId, Stored>();

function rmsOf(samples: Float32Array): number {
  const heard = samples.subarray(0, Math.round(MADE_RATE_HZ / 4));
  return Math.sqrt(heard.reduce((sum, x) => sum + x * x, 0) / heard.length);
}

function storedSound(id: SoundId, source?: SoundSource): Stored {
  const before = known.get(id);
  if (before) return before;
  const sound = STORED_SOUNDS.find((each) => each.id === id)!;
  const { origin, loudness } = sound;
  const samples =
    source?.(id) ??
    (origin.kind === 'synthesised'
      ? origin.samples(MADE_RATE_HZ)
      : pianoTone(keyOfFile(id.replace('piano/', ''))));
  const measured =
    loudness.measure === 'peak'
      ? samples.reduce((most, x) => Math.max(most, Math.abs(x)), 0)
      : rmsOf(samples);
  const scale = loudness.value / measured;
  const stored = { samples: samples.map((x) => x * scale) };
  known.set(id, stored);
  return stored;
}

/** Adds a note at its place, faster or slower as it is struck, damped where it ends or where its group is struck again. */
function addNote(
  out: Float32Array,
  note: TimedNote,
  untilSec: Seconds,
  tuning: number,
  source?: SoundSource,
) {
  const struck = soundOfNote(note);
  const { samples } = storedSound(struck.id, source);
  const step = struck.playbackRate * tuning;
  const from = Math.max(0, Math.round(note.startSec * MADE_RATE_HZ));
  const dampSec = struck.dampSec ?? 0.012;
  const endSec =
    struck.dampSec === undefined
      ? untilSec
      : Math.min(untilSec, note.startSec + Math.max(0.02, note.durationSec));
  const end = endSec * MADE_RATE_HZ;
  const last = Math.min(out.length, end + 8 * dampSec * MADE_RATE_HZ);
  const fall = Math.exp(-1 / (dampSec * MADE_RATE_HZ));
  let gain = struck.gain;
  for (let i = from, at = 0; i < last && at < samples.length - 1; i++, at += step) {
    const whole = Math.floor(at);
    const rest = at - whole;
    if (i > end) gain *= fall;
    out[i]! += gain * ((1 - rest) * samples[whole]! + rest * samples[whole + 1]!);
  }
}

/** A voice: overtones under two formants, a vibrato that comes in after a while. */
function addSung(
  out: Float32Array,
  { startSec, durationSec, keyNumber }: SungNote,
  tuning: number,
) {
  const from = Math.round(startSec * MADE_RATE_HZ);
  const count = Math.round(durationSec * MADE_RATE_HZ);
  const hz = 440 * 2 ** ((keyNumber - 69) / 12) * tuning;
  const levels = Array.from({ length: 12 }, (_, i) => {
    const f = hz * (i + 1);
    return (
      (0.08 / (i + 1)) *
      (0.3 + Math.exp(-(((f - 650) / 250) ** 2)) + 0.6 * Math.exp(-(((f - 1500) / 350) ** 2)))
    );
  });
  let phase = 0;
  for (let i = 0; i < count && from + i < out.length; i++) {
    const sec = i / MADE_RATE_HZ;
    const depth = 0.012 * Math.min(1, sec / 0.3);
    phase += (2 * Math.PI * hz * (1 + depth * Math.sin(2 * Math.PI * 5.5 * sec))) / MADE_RATE_HZ;
    const swell = Math.min(1, sec / 0.05, (count - i) / (0.05 * MADE_RATE_HZ));
    let sum = 0;
    for (let k = 0; k < levels.length; k++) sum += levels[k]! * Math.sin((k + 1) * phase);
    out[from + i]! += swell * sum;
  }
}

/** One pole each way, twice: what a small microphone and loudspeaker leave. */
function phoneBand(samples: Float32Array): Float32Array {
  let out = samples;
  for (let round = 0; round < 2; round++) {
    const low = 1 - Math.exp((-2 * Math.PI * 300) / MADE_RATE_HZ);
    const high = 1 - Math.exp((-2 * Math.PI * 3400) / MADE_RATE_HZ);
    let under = 0;
    let upper = 0;
    out = out.map((x) => {
      under += low * (x - under);
      upper += high * (x - under - upper);
      return upper;
    });
  }
  return out;
}

/**
 * Notes as the app's own instruments sound them, mixed to one channel, so nearly as can be without Web Audio; the
 * piano is computed unless `source` has its samples. The loudest sample is 0.7.
 */
export function renderInNode(
  notes: readonly TimedNote[],
  sung: readonly SungNote[],
  durationSec: Seconds,
  { seed, detuneCents = 0, phone = false, noiseDb }: RoomOptions,
  source?: SoundSource,
): Float32Array {
  const out = new Float32Array(Math.ceil(durationSec * MADE_RATE_HZ));
  const tuning = 2 ** (detuneCents / 1200);
  const nextInGroup = new Map<string, Seconds>();
  for (const note of notes.toReversed()) {
    const { dampGroup } = soundOfNote(note);
    const untilSec = (dampGroup !== undefined && nextInGroup.get(dampGroup)) || durationSec;
    addNote(out, note, untilSec > note.startSec ? untilSec : durationSec, tuning, source);
    if (dampGroup !== undefined) nextInGroup.set(dampGroup, note.startSec);
  }
  for (const note of sung) addSung(out, note, tuning);
  const heard = phone ? phoneBand(out) : out;
  const peak = heard.reduce((most, x) => Math.max(most, Math.abs(x)), 1e-9);
  const random = seededRandom(seed);
  const noise = noiseDb === undefined ? 0 : 10 ** (noiseDb / 20);
  return heard.map((x) => (0.7 * x) / peak + noise * random.normal());
}
