import { describe, expect, it } from 'vitest';
import { formatPitchClass } from '../../../../src/core/harmony/pitch.ts';
import {
  circleChord,
  circleNotes,
  placeOnCircle,
} from '../../../../src/ui/map/key/circleDrawing.ts';
import { KEYS } from '../../../support/keys.ts';
import { chord, majorKey, minorKey } from '../../../support/music.ts';

describe('the scale in a circle', () => {
  it('has the tonic at the top and goes round clockwise by semitones', () => {
    expect(placeOnCircle(0, 0.4)).toMatchObject({ x: 0.5 });
    expect(placeOnCircle(0, 0.4).y).toBeCloseTo(0.1, 9);
    expect(placeOnCircle(3, 0.4).x).toBeCloseTo(0.9, 9);
    expect(placeOnCircle(6, 0.4).y).toBeCloseTo(0.9, 9);
  });

  // Whole and half steps of the scales: docs/sources.md#key-signatures (computed).
  it.each([
    ['major', majorKey('E♭'), 'natural', '2212221'],
    ['natural minor', minorKey('A'), 'natural', '2122122'],
    ['harmonic minor', minorKey('A'), 'harmonic', '2122131'],
    ['melodic minor', minorKey('A'), 'melodic', '2122221'],
  ] as const)('has steps as long as they sound: %s', (_, key, form, steps) =>
    expect(
      circleNotes(key, form)
        .map(({ toNext }) => toNext)
        .join(''),
    ).toBe(steps),
  );

  it('closes after twelve semitones in every key', () => {
    for (const key of KEYS) {
      const notes = circleNotes(key, 'harmonic');
      expect(notes.reduce((sum, { toNext }) => sum + toNext, 0)).toBe(12);
      expect(notes[0]?.note).toEqual(key.tonic);
    }
  });
});

/** The notes of a chord that C major does not have. */
function foreignOf(symbol: string): string[] {
  return circleChord(chord(symbol), majorKey('C'), 'natural').foreign.map(({ note }) =>
    formatPitchClass(note),
  );
}

describe('a chord in the circle', () => {
  it('has a corner for each of its notes', () => {
    const { outline } = circleChord(chord('G7'), majorKey('C'), 'natural');
    expect(outline.split(' ')).toHaveLength(8);
  });

  it('names its notes that the scale does not have', () => {
    expect(foreignOf('G7')).toEqual([]);
    expect(foreignOf('A7')).toEqual(['C♯']);
    expect(foreignOf('D♭7')).toEqual(['D♭', 'A♭']);
  });
});
