import { describe, expect, it } from 'vitest';
import { findBassNotes } from '../../src/signal/bassLine.ts';
import { lowPitches } from '../../src/signal/lowPitches.ts';
import { strikesIn } from '../../src/signal/strikeLooks.ts';
import { struckBandFrames } from '../../src/signal/struckBands.ts';
import { pluckedLine, whiteNoise } from '../support/bandSounds.ts';

const notesOf = (samples: Float32Array) =>
  findBassNotes(strikesIn(struckBandFrames(samples)), lowPitches(samples));

describe('bass line', () => {
  // A walk from E1 up and down, two notes a second.
  const keys = [28, 31, 33, 35, 36, 40, 43, 40, 36, 33, 31, 28, 31, 33, 36, 40];
  const stepSec = 0.5;
  const line = pluckedLine(keys, { stepSec, centsHigh: 0 });

  const rightNotes = (samples: Float32Array) => {
    const found = notesOf(samples);
    const right = keys.filter((key, i) =>
      found.some((n) => Math.abs(n.sec - i * stepSec) <= 0.05 && n.keyNumber === key),
    );
    return { found: found.length, right: right.length };
  };

  it('finds most notes of a plucked line in their octaves, and few others', () => {
    const { found, right } = rightNotes(line);
    expect(right / keys.length).toBeGreaterThanOrEqual(0.8);
    expect(right / found).toBeGreaterThanOrEqual(0.7);
  });

  it.each([-35, 35])('finds them %i cents off as well', (centsHigh) => {
    const { right } = rightNotes(pluckedLine(keys, { stepSec, centsHigh }));
    expect(right / keys.length).toBeGreaterThanOrEqual(0.7);
  });

  it('lets no note last into the next one', () => {
    const notes = notesOf(line);
    for (const [i, { sec, durationSec }] of notes.entries()) {
      expect(durationSec).toBeGreaterThan(0);
      if (notes[i + 1]) expect(sec + durationSec).toBeLessThanOrEqual(notes[i + 1]!.sec + 1e-9);
    }
  });

  it('hears no bass in silence, in nothing and in noise', () => {
    expect(notesOf(new Float32Array(22050))).toEqual([]);
    expect(notesOf(new Float32Array(0))).toEqual([]);
    expect(notesOf(whiteNoise(6))).toEqual([]);
  });
});
