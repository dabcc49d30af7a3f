import { describe, expect, it } from 'vitest';
import type { Key } from '../../../src/core/harmony/key.ts';
import { suggestKeys } from '../../../src/core/harmony/keyGuess.ts';
import { formatPitchClass } from '../../../src/core/harmony/pitch.ts';
import { parseChart } from '../../../src/core/song/chart.ts';
import { KEYS } from '../../support/keys.ts';
import { majorKey, meter, minorKey, slots, valueOf } from '../../support/music.ts';

function nameOf({ tonic, mode }: Key): string {
  return `${formatPitchClass(tonic)} ${mode}`;
}

function guessed(chart: string): string {
  return nameOf(suggestKeys(slots(chart))[0]!.key);
}

/** Progressions that are in one key beyond doubt (common practice), as numerals. */
const MAJOR = [
  '| I | V | vi | IV |',
  '| I | IV | V | I |',
  '| ii7 | V7 | Imaj7 |',
  '| I | ♭VII | IV | I |',
  '| I7 | IV7 | I7 | % | IV7 | % | I7 | % | V7 | IV7 | I7 | V7 |',
  '| Imaj7 | V7/ii | ii7 | V7 |',
  '| I | IV | iv | I |',
  '| iii7 | V7/ii | ii7 | V7 | Imaj7 |',
  '| I | ♭VI | ♭VII | I |',
];
const MINOR = [
  '| i | iv | V7 | i |',
  '| i | VII | VI | V7 |',
  '| iiø7 | V7 | i |',
  '| i | VI | VII | i |',
  '| i | iv | VII | III | VI | iiø7 | V7 | i |',
  '| i7 | % | iv7 | i7 | VI7 | V7 | i7 |',
];

describe('the suggested key', () => {
  it.each(KEYS.map((key) => [nameOf(key), key] as const))('is found in %s', (name, key) => {
    for (const chart of key.mode === 'major' ? MAJOR : MINOR) {
      const inKey = valueOf(parseChart(chart, meter('4/4'), key));
      expect(nameOf(suggestKeys(inKey)[0]!.key)).toBe(name);
    }
  });

  it('follows the spelling of the chart', () => {
    expect(guessed('| G♭ | C♭ | D♭ | G♭ |')).toBe('G♭ major');
    expect(guessed('| F♯ | B | C♯ | F♯ |')).toBe('F♯ major');
  });

  it('is not much surer of one relative key than of the other where the chart is not', () => {
    const [first, second] = suggestKeys(slots('| Am | F | C | G |'));
    expect([nameOf(first!.key), nameOf(second!.key)].toSorted()).toEqual(['A minor', 'C major']);
    expect(first!.confidence).toBeLessThan(0.6);
  });

  it('is surer the more the chart says', () => {
    const sure = suggestKeys(slots('| C | F | G7 | C |'))[0]!.confidence;
    const unsure = suggestKeys(slots('| C |'))[0]!.confidence;
    expect(sure).toBeGreaterThan(0.85);
    expect(unsure).toBeLessThan(sure);
  });

  it('is one of all 24, whose confidences sum to 1', () => {
    const all = suggestKeys(slots('| Dm7 | G7 | N.C. | E♭ |'));
    expect(all).toHaveLength(24);
    expect(all.reduce((total, s) => total + s.confidence, 0)).toBeCloseTo(1, 9);
    expect(new Set(all.map((s) => nameOf(s.key))).size).toBe(24);
  });

  it('does not exist without chords', () => {
    expect(suggestKeys([])).toEqual([]);
    expect(suggestKeys(slots('| N.C. |'))).toEqual([]);
  });
});

it('hears C minor and C major apart by their thirds', () => {
  expect(guessed('| Cm | G7 | Cm |')).toBe(nameOf(minorKey('C')));
  expect(guessed('| C | G7 | C |')).toBe(nameOf(majorKey('C')));
});
