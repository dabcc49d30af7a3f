import { describe, expect, it } from 'vitest';
import { exportWav, type TrackRequest } from '../../src/app/exports.ts';
import { section, slots, song, valueOf } from '../support/music.ts';
import { pattern } from '../support/patterns.ts';
import { project } from '../support/project.ts';
import { attacksOf } from '../support/sound.ts';

/** Two bars of 4/4; the left hand strikes on 2, the right hand on 3 and on the half beat after 4. */
const PROJECT = project({
  patterns: [pattern('4/4', { left: '..R.....', right: '....C..C' })],
  song: song([section('verse', { slots: slots('| C | F |'), patternId: 'p' })], 'verse'),
});

const TRACK: TrackRequest = {
  passage: { kind: 'song', bpm: 100 },
  hands: 'both',
  band: false,
  click: false,
  countInBars: 0,
};

/** Frames of one beat at 100 beats a minute. */
const BEAT = 0.6 * 44_100;

const TAIL = 2 * 44_100;

async function track(request: TrackRequest) {
  const bytes = await valueOf(await exportWav(PROJECT, request)).arrayBuffer();
  const view = new DataView(bytes);
  // Offsets of the canonical header and what stands there: reference 1.4.
  const header = {
    channels: view.getUint16(22, true),
    sampleRate: view.getUint32(24, true),
    bits: view.getUint16(34, true),
    dataBytes: view.getUint32(40, true),
  };
  const left = Float32Array.from(
    { length: header.dataBytes / 4 },
    (_, i) => view.getInt16(44 + 4 * i, true) / 32_768,
  );
  return { header, left, bytes };
}

/** The first frame that is not silent. */
function firstAttack(samples: Float32Array): number {
  return samples.findIndex((sample) => sample !== 0);
}

describe('a practice track', () => {
  it('of the song is as long as its bars at the tempo, and its first hit stands in time', async () => {
    const { header, left, bytes } = await track(TRACK);
    expect(header).toEqual({
      channels: 2,
      sampleRate: 44_100,
      bits: 16,
      dataBytes: 4 * (8 * BEAT + TAIL),
    });
    expect(bytes.byteLength).toBe(44 + header.dataBytes);
    // A sample that begins softly may round to 0 for its first frames.
    expect(firstAttack(left)).toBeGreaterThanOrEqual(BEAT);
    expect(firstAttack(left)).toBeLessThan(BEAT + 10);
  });

  it('begins with the count-in, even without a click, and is longer by it', async () => {
    const { header, left } = await track({ ...TRACK, hands: 'none', countInBars: 1 });
    expect(header.dataBytes).toBe(4 * (12 * BEAT + TAIL));
    const starts = attacksOf(left, 0.001, BEAT / 2);
    expect(starts.map((at) => Math.round((at / BEAT) * 100) / 100)).toEqual([0, 1, 2, 3]);
  });

  it('sounds the hands that are chosen', async () => {
    const { left } = await track({ ...TRACK, hands: 'right' });
    expect(firstAttack(left) / BEAT).toBeCloseTo(2, 2);
    const { left: none } = await track({ ...TRACK, hands: 'none' });
    expect(firstAttack(none)).toBe(-1);
  });

  it('of the drill holds its chord for the bars at the tempo', async () => {
    const passage = { kind: 'drill', bpm: 200, bars: 3 } as const;
    const { header, left } = await track({ ...TRACK, passage, hands: 'none', click: true });
    expect(header.dataBytes).toBe(4 * (6 * BEAT + TAIL));
    expect(attacksOf(left, 0.001, BEAT / 4)).toHaveLength(12);
  });

  it('tells how far it is, always further', async () => {
    const shares: number[] = [];
    await exportWav(PROJECT, TRACK, { onProgress: (share) => shares.push(share) });
    expect(shares.length).toBeGreaterThan(3);
    expect(shares).toEqual(shares.toSorted((a, b) => a - b));
    expect(shares.every((share) => share > 0 && share < 1)).toBe(true);
  });

  it('can be given up', async () => {
    const giveUp = new AbortController();
    const made = await exportWav(PROJECT, TRACK, {
      signal: giveUp.signal,
      onProgress: () => giveUp.abort(),
    });
    expect(made).toEqual({ ok: false, error: { kind: 'given-up' } });
  });

  it('of a song with nothing to play is none', async () => {
    const empty = project({ song: song([section('verse')], '') });
    expect(await exportWav(empty, TRACK)).toEqual({
      ok: false,
      error: { kind: 'nothing-to-play' },
    });
  });
});
