import { describe, expect, it } from 'vitest';
import { bassKeys, voiceKeys } from '../../../src/core/rhythm/toneKeys.ts';
import type { BassTone, VoiceTone } from '../../../src/core/rhythm/tones.ts';
import { chord } from '../../support/music.ts';

/** What a tone plays over one bass key; the next bass is F2. */
function over(symbol: string, bass: number, tone: BassTone): number[] {
  return bassKeys(tone, chord(symbol), [bass], 41);
}

describe('bass tones', () => {
  // Degrees of the chords: docs/sources.md#chord-formulae; where a chord lacks the degree: common practice.
  it.each([
    ['C', 4, 7, 9, 10],
    ['Cm', 3, 7, 9, 10],
    ['Cdim', 3, 6, 9, 9],
    ['Caug', 4, 8, 9, 10],
    ['C7', 4, 7, 9, 10],
    ['Cmaj7', 4, 7, 9, 11],
    ['Cm7', 3, 7, 9, 10],
    ['Cm7b5', 3, 6, 8, 10],
    ['Cdim7', 3, 6, 9, 9],
    ['C6', 4, 7, 9, 9],
    ['CmM7', 3, 7, 9, 11],
    ['Csus4', 5, 7, 9, 10],
    ['Csus2', 2, 7, 9, 10],
    ['C5', 12, 7, 9, 10],
  ])('over %s are third %i, fifth %i, sixth %i, seventh %i semitones up', (symbol, ...steps) => {
    const tones = ['third', 'fifth', 'sixth', 'seventh'] as const;
    expect(tones.map((tone) => over(symbol, 36, tone))).toEqual(steps.map((step) => [36 + step]));
  });

  it('take the root from everything the hand holds', () =>
    expect(bassKeys('root', chord('C'), [36, 48], 41)).toEqual([36, 48]));

  it('put the octave and the tenth over the lowest key', () => {
    expect(over('Am', 45, 'octave')).toEqual([57]);
    expect(over('Am', 45, 'tenth')).toEqual([60]);
    expect(over('C', 36, 'tenth')).toEqual([52]);
  });

  it('count from the root of a slash chord but lie above its bass', () => {
    expect(over('C/E', 40, 'root')).toEqual([40]);
    expect(over('C/E', 40, 'fifth')).toEqual([43]);
    expect(over('C/E', 40, 'third')).toEqual([52]);
    expect(over('C/E', 40, 'tenth')).toEqual([52]);
    expect(over('D/C', 36, 'third')).toEqual([42]);
  });

  it('take the fifth below down to E1 and otherwise above', () => {
    expect(over('C', 36, 'fifth-below')).toEqual([31]);
    expect(over('A', 33, 'fifth-below')).toEqual([28]);
    expect(over('G', 31, 'fifth-below')).toEqual([38]);
    expect(over('Cdim', 36, 'fifth-below')).toEqual([30]);
  });

  it('approach the next bass from a semitone under it', () =>
    expect(over('C', 36, 'approach')).toEqual([40]));

  it('are silent where the hand holds nothing', () =>
    expect(bassKeys('fifth', chord('C'), [], 41)).toEqual([]));
});

describe('voice tones', () => {
  const triad = [60, 64, 67];

  it.each<[VoiceTone, number[]]>([
    ['all', [60, 64, 67]],
    ['top', [67]],
    ['middle', [64]],
    ['bottom', [60]],
    ['upper', [64, 67]],
    ['voice-1', [60]],
    ['voice-2', [64]],
    ['voice-3', [67]],
    ['voice-4', [72]],
    ['voice-5', [76]],
    ['voice-6', [79]],
  ])('take %s from a triad', (tone, keys) => expect(voiceKeys(tone, triad)).toEqual(keys));

  it('have two middle voices in a chord of four', () =>
    expect(voiceKeys('middle', [60, 64, 67, 71])).toEqual([64, 67]));

  it('let the lowest note stand for voices that a small chord lacks', () => {
    expect(voiceKeys('middle', [60, 67])).toEqual([60]);
    expect(voiceKeys('upper', [60])).toEqual([60]);
    expect(voiceKeys('voice-3', [60, 67])).toEqual([72]);
  });

  it('stay on the keyboard', () => expect(voiceKeys('voice-6', [107])).toEqual([107]));

  it('are silent where the hand holds nothing', () => {
    expect(voiceKeys('all', [])).toEqual([]);
    expect(voiceKeys('voice-3', [])).toEqual([]);
  });
});
