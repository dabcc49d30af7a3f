import { spawnSync } from 'node:child_process';
import { existsSync, readdirSync } from 'node:fs';
import { join, resolve } from 'node:path';
import { expect, it } from 'vitest';
import type { HeardRecording } from '../../src/signal/heardRecording.ts';
import { hearRecording } from '../../src/signal/hearRecording.ts';

/** Recordings with their truth, and the scorer with mir_eval's definitions, beside the repository where somebody put them. */
const MATERIAL = resolve(import.meta.dirname, '../../../shared/listening');
const AUDIO = join(MATERIAL, 'audio');
const RATE_HZ = 44100;

/** What the scorer reads of one recording; lists in seconds. */
type Heard = Readonly<Record<string, unknown>>;

/** One recording's figures by name, as the scorer gives them. */
type Figures = Readonly<Record<string, number | null>>;

type Scorer = {
  readonly truth: () => Readonly<Record<string, { readonly kind: string }>>;
  readonly scoreOne: (truth: unknown, heard: Heard) => Figures;
};

/** Decoded by ffmpeg, which must be there; mono. */
function decoded(file: string): Float32Array {
  const options = ['-v', 'error', '-i', file, '-ac', '1', '-ar', `${RATE_HZ}`, '-f', 'f32le', '-'];
  const { stdout } = spawnSync('ffmpeg', options, { maxBuffer: 2 ** 30 });
  return new Float32Array(
    stdout.buffer.slice(stdout.byteOffset, stdout.byteOffset + stdout.length),
  );
}

const LOW_E = 28;

const PIECES = ['kick', 'snare', 'hat'] as const;

function asHeard(heard: HeardRecording, sec: number): Heard {
  return {
    tempo: heard.tempoBpm,
    beats: heard.beats.map((beat) => beat.sec),
    downbeats: heard.beats.filter((beat) => beat.positionInBar === 0).map((beat) => beat.sec),
    onsets: heard.onsets.map((onset) => onset.sec),
    drums: Object.fromEntries(
      PIECES.map((piece) => [
        piece,
        heard.drums.filter((hit) => hit.piece === piece).map((hit) => hit.sec),
      ]),
    ),
    bass: heard.bass.map(({ sec: at, keyNumber }) => [at, keyNumber]),
    sec,
  };
}

/**
 * A plain baseline: 120 to the minute from the first loud sample on, a bar of four; every attack that was
 * heard is a kick, a snare, a hat and a bass note on E.
 */
function baseline(samples: Float32Array, attacks: readonly number[]): Heard {
  const peak = samples.reduce((most, sample) => Math.max(most, Math.abs(sample)), 0);
  const start = samples.findIndex((sample) => Math.abs(sample) > 0.3 * peak) / RATE_HZ;
  const count = Math.floor((samples.length / RATE_HZ - start) / 0.5);
  const beats = Array.from({ length: count }, (_, k) => start + 0.5 * k);
  return {
    tempo: 120,
    beats,
    downbeats: beats.filter((_, k) => k % 4 === 0),
    drums: Object.fromEntries(PIECES.map((piece) => [piece, attacks])),
    bass: attacks.map((sec) => [sec, LOW_E]),
  };
}

function meanOf(rows: readonly Figures[], name: string): string {
  const values = rows.map((row) => row[name]).filter((value) => typeof value === 'number');
  if (values.length === 0) return '-';
  return (values.reduce((a, b) => a + b, 0) / values.length).toFixed(name === 'xRealtime' ? 0 : 2);
}

function table(title: string, rows: readonly Figures[], kinds: readonly string[]): string {
  const names = [...new Set(rows.flatMap((row) => Object.keys(row)))];
  const groups = [...new Set(kinds)].map(
    (kind) => [kind, rows.filter((_, i) => kinds[i] === kind)] as const,
  );
  const lines = [['all', rows] as const, ...groups].map(([kind, group]) => {
    const bad = group.filter((row) => (row['beatF'] ?? 1) < 0.5).length;
    const figures = names.map((name) => meanOf(group, name).padStart(Math.max(6, name.length)));
    return `${kind.padEnd(20)}${String(group.length).padStart(4)} ${figures.join(' ')}  ${((100 * bad) / group.length).toFixed(0)} % of beats fail`;
  });
  const head = `${title.padEnd(20)}   n ${names.map((name) => name.padStart(6)).join(' ')}`;
  return ['', head, ...lines].join('\n');
}

const FILES = existsSync(AUDIO) ? readdirSync(AUDIO).filter((file) => file.endsWith('.ogg')) : [];

it.skipIf(FILES.length === 0)('hears the listening material', async () => {
  const scorer = (await import(join(MATERIAL, 'score.mjs'))) as Scorer;
  const truth = scorer.truth();
  const ours: Figures[] = [];
  const plain: Figures[] = [];
  const kinds: string[] = [];
  for (const file of FILES) {
    const expected = truth[file.replace('.ogg', '')]!;
    const samples = decoded(join(AUDIO, file));
    const start = performance.now();
    const heard = hearRecording({ samples, sampleRateHz: RATE_HZ });
    const sec = (performance.now() - start) / 1000;
    ours.push(scorer.scoreOne(expected, asHeard(heard, sec)));
    const attacks = heard.onsets.map((onset) => onset.sec);
    plain.push(scorer.scoreOne(expected, baseline(samples, attacks)));
    kinds.push(expected.kind);
  }
  console.log(table('heard', ours, kinds));
  console.log(table('120 from the start', plain, kinds));
  expect(Number(meanOf(ours, 'beatF'))).toBeGreaterThan(Number(meanOf(plain, 'beatF')));
});
