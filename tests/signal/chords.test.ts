import { describe, expect, it } from 'vitest';
import { chromaOf } from '../../src/core/harmony/pitch.ts';
import { findChords, findHarmony } from '../../src/signal/chords.ts';
import { type MadeKind, type MadeSong, madeSong, soundOf } from '../support/madeSongs.ts';
import { MADE_RATE_HZ, renderInNode } from '../support/madeSound.ts';
import { keyName } from '../support/music.ts';
import { seededRandom } from '../support/random.ts';

function recording(samples: Float32Array) {
  return { samples, sampleRateHz: MADE_RATE_HZ };
}

/** The share of the time in which root and third are those that are played. */
function rightShare({ truth }: MadeSong, chords: ReturnType<typeof findChords>): number {
  const isMinor = (quality: string) => quality.startsWith('minor');
  let right = 0;
  let all = 0;
  for (let sec = 0.05; sec < truth.durationSec; sec += 0.1) {
    const at = ({ fromSec, toSec }: { fromSec: number; toSec: number }) =>
      fromSec <= sec && sec < toSec;
    const played = truth.chords.find(at)?.chord;
    const found = chords.find(at)?.chord;
    if (!played || played === 'no-chord') continue;
    all++;
    if (!found || found === 'no-chord') continue;
    const isSame =
      chromaOf(found.root) === chromaOf(played.root) &&
      isMinor(found.quality) === isMinor(played.quality);
    if (isSame) right++;
  }
  return right / all;
}

describe('the chords of a made song', () => {
  const kinds: readonly (readonly [MadeKind, number])[] = [
    ['piano', 36],
    ['piano and band', 7],
    ['out of tune', 4],
  ];
  it.each(kinds)('are found where they are played: %s', (kind, seed) => {
    const made = madeSong(seed, kind);
    const { chords, key } = findHarmony(recording(soundOf(made)), made.truth.beats);
    expect(rightShare(made, chords)).toBeGreaterThan(0.78);
    expect(key && keyName(key)).toBe(keyName(made.truth.key));
  });

  it('lie end to end from the beginning to the end', () => {
    const made = madeSong(3);
    const chords = findChords(recording(soundOf(made)), made.truth.beats);
    expect(chords[0]!.fromSec).toBe(0);
    expect(chords.at(-1)!.toSec).toBeCloseTo(made.truth.durationSec, 3);
    for (const [i, { fromSec }] of chords.slice(1).entries())
      expect(fromSec).toBe(chords[i]!.toSec);
  });
});

describe('where no chord sounds', () => {
  const NOTHING = { key: undefined, chords: [expect.objectContaining({ chord: 'no-chord' })] };

  it('none is made up of drums', () => {
    const { notes } = madeSong(1);
    const drums = notes.filter(({ part }) => ['kick', 'snare', 'hi-hat', 'cymbal'].includes(part));
    const samples = renderInNode(drums, [], 20, { seed: 1 });
    expect(findHarmony(recording(samples), [])).toMatchObject(NOTHING);
  });

  it('none is made up of noise or of silence', () => {
    const { normal } = seededRandom(5);
    const noise = Float32Array.from({ length: 10 * MADE_RATE_HZ }, () => 0.1 * normal());
    expect(findHarmony(recording(noise), [])).toMatchObject(NOTHING);
    expect(findHarmony(recording(new Float32Array(3 * MADE_RATE_HZ)), [])).toMatchObject(NOTHING);
  });

  it('none is found without samples', () =>
    expect(findHarmony(recording(new Float32Array()), [])).toMatchObject({
      key: undefined,
      chords: [],
    }));
});
