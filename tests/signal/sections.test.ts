import { describe, expect, it } from 'vitest';
import { findSections, sectionsOf } from '../../src/signal/sections.ts';
import { madeSong, soundOf } from '../support/madeSongs.ts';
import { MADE_RATE_HZ } from '../support/madeSound.ts';
import { seededRandom } from '../support/random.ts';

/** Beats half a second apart in bars of four. */
function evenBeats(bars: number) {
  return Array.from({ length: 4 * bars }, (_, i) => ({ sec: i / 2, positionInBar: i % 4 }));
}

/** A slice for each beat, each with notes of its own. */
function unlikeSlices(bars: number) {
  const { uniform } = seededRandom(8);
  return evenBeats(bars).map(({ sec }) => ({
    fromSec: sec,
    toSec: sec + 0.5,
    durationSec: 0.5,
    starts: 'beat' as const,
    isSilent: false,
    level: 1,
    chroma: Float32Array.from({ length: 12 }, () => uniform() ** 3 / 3),
    bass: Float32Array.from({ length: 12 }, () => uniform() ** 3 / 3),
  }));
}

describe('the sections of a recording', () => {
  it('are those that were played: what comes again has the same label', () => {
    const { truth, ...made } = madeSong(7);
    const samples = soundOf({ truth, ...made });
    const found = findSections({ samples, sampleRateHz: MADE_RATE_HZ }, truth.beats);
    expect(found.map(({ label }) => label)).toEqual(truth.sections.map(({ label }) => label));
    for (const [i, { fromSec }] of found.entries())
      expect(fromSec).toBeCloseTo(truth.sections[i]!.fromSec, 1);
  });

  it('are one where nothing comes again', () => {
    const found = sectionsOf({ slices: unlikeSlices(24), chords: [] }, evenBeats(24));
    expect(found).toEqual([{ fromSec: 0, toSec: 48, label: 'A' }]);
  });

  it('are two where nothing comes again but the loudness changes', () => {
    const slices = unlikeSlices(16).map((slice, i) => ({ ...slice, level: i < 32 ? 1 : 3 }));
    const found = sectionsOf({ slices, chords: [] }, evenBeats(16));
    expect(found.map(({ fromSec }) => fromSec)).toEqual([0, 16]);
  });

  it('are none without beats or with fewer than four bars', () => {
    expect(sectionsOf({ slices: unlikeSlices(8), chords: [] }, [])).toEqual([]);
    expect(sectionsOf({ slices: unlikeSlices(3), chords: [] }, evenBeats(3))).toEqual([]);
  });
});
