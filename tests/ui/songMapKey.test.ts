import { describe, expect, it } from 'vitest';
import { formatChordSymbol } from '../../src/core/harmony/chordSymbol.ts';
import { diatonicTriads } from '../../src/core/harmony/keyChords.ts';
import { circlePlaces, circlePoint, keyFrame } from '../../src/ui/songMap/circleLayout.ts';
import { scaleSteps } from '../../src/ui/songMap/scaleSteps.ts';
import { KEYS } from '../support/keys.ts';
import { majorKey, minorKey } from '../support/music.ts';

describe('the circle of fifths', () => {
  it('has C at the top and goes up a fifth each hour (common practice)', () => {
    const names = circlePlaces(majorKey('C'))
      .filter((place) => place.ring === 'major')
      .toSorted((a, b) => a.hour - b.hour)
      .map((place) => formatChordSymbol(place.chord));
    expect(names.join(' ')).toBe('C G D A E B F♯ D♭ A♭ E♭ B♭ F');
  });

  it('has each relative minor at the hour of its major', () => {
    const places = circlePlaces(majorKey('C'));
    const at = (hour: number, ring: 'major' | 'minor') =>
      formatChordSymbol(places.find((p) => p.hour === hour && p.ring === ring)!.chord);
    expect([at(0, 'minor'), at(1, 'minor'), at(9, 'minor')]).toEqual(['Am', 'Em', 'Cm']);
  });

  it('holds together the major and minor triads of every key', () => {
    for (const key of KEYS) {
      const own = circlePlaces(key)
        .filter((place) => place.isInKey)
        .map((place) => formatChordSymbol(place.chord));
      const triads = diatonicTriads(key)
        .map(({ chord }) => chord)
        .filter(({ quality }) => quality === 'major' || quality === 'minor')
        .map(formatChordSymbol);
      expect(own.toSorted()).toEqual(triads.toSorted());
    }
  });

  it('is drawn clockwise from the top', () => {
    expect(circlePoint(0, 0.5)).toEqual({ x: 0.5, y: 0 });
    expect(circlePoint(3, 0.5).x).toBeCloseTo(1, 9);
    expect(circlePoint(6, 0.5).y).toBeCloseTo(1, 9);
  });

  it('frames the key around its own hour', () => {
    expect(keyFrame(majorKey('C'))).toBe(keyFrame(minorKey('A')));
    expect(keyFrame(majorKey('C'))).not.toBe(keyFrame(majorKey('G')));
  });
});

const steps = (key: Parameters<typeof scaleSteps>[0], form: 'natural' | 'harmonic' | 'melodic') =>
  scaleSteps(key, form)
    .map(({ toNext }) => toNext ?? '')
    .join('');

describe('the scale in a line', () => {
  // Whole and half steps of the scales: docs/sources.md#key-signatures (computed).
  it('has the whole and half steps of major and the three minors', () => {
    expect(steps(majorKey('E♭'), 'natural')).toBe('2212221');
    expect(steps(minorKey('A'), 'natural')).toBe('2122122');
    expect(steps(minorKey('A'), 'harmonic')).toBe('2122131');
    expect(steps(minorKey('A'), 'melodic')).toBe('2122221');
  });

  it('ends on the octave', () => {
    expect(scaleSteps(majorKey('D'), 'natural').at(-1)).toEqual({
      note: { letter: 'D', alteration: 0 },
      above: 12,
      toNext: undefined,
    });
  });
});
