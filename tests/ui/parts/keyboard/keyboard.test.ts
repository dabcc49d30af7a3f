import * as fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { motion } from '../../../../src/core/voicing/motion.ts';
import {
  isBlackKey,
  keyBox,
  keyBoxes,
  keyboardsInLine,
  keyMiddle,
  spanAround,
  spreadApart,
  whiteCount,
} from '../../../../src/ui/parts/keyboard/keyboardGeometry.ts';
import { leads } from '../../../../src/ui/parts/keyboard/leads.ts';
import { noteName, plainKeyName } from '../../../../src/ui/parts/keyboard/noteNames.ts';
import { chord } from '../../../support/music.ts';

const octave = { lowest: 60, highest: 71 };

describe('a drawn keyboard', () => {
  // 88 keys, 52 of them white: reference of the piano's range, MIDI 1.0 (from memory).
  it('has 52 white keys on a whole piano', () => {
    expect(whiteCount({ lowest: 21, highest: 108 })).toBe(52);
    expect(keyBoxes({ lowest: 21, highest: 108 }).filter((box) => box.isBlack)).toHaveLength(36);
  });

  it('has white keys side by side and black ones on the lines between them', () => {
    expect(keyBox(60, octave)).toMatchObject({ x: 0, width: 1 });
    expect(keyBox(71, octave)).toMatchObject({ x: 6, width: 1 });
    expect(keyMiddle(61, octave)).toBe(1);
    expect(keyMiddle(63, octave)).toBe(2);
    expect(keyMiddle(66, octave)).toBe(4);
    expect(keyMiddle(70, octave)).toBe(6);
  });

  it('rises from left to right', () => {
    const middles = keyBoxes({ lowest: 21, highest: 108 })
      .toSorted((a, b) => a.key - b.key)
      .map((box) => box.x + box.width / 2);
    expect(middles.every((x, i) => i === 0 || x > middles[i - 1]!)).toBe(true);
  });

  it('shows all keys, from a C or F to an E or B', () => {
    expect(spanAround([62, 66, 69])).toEqual({ lowest: 60, highest: 71 });
    expect(spanAround([43, 64])).toEqual({ lowest: 41, highest: 64 });
    expect(spanAround([])).toEqual({ lowest: 60, highest: 71 });
    fc.assert(
      fc.property(fc.array(fc.integer({ min: 24, max: 100 }), { minLength: 1 }), (keys) => {
        const { lowest, highest } = spanAround(keys);
        expect(lowest).toBeLessThanOrEqual(Math.min(...keys));
        expect(highest).toBeGreaterThanOrEqual(Math.max(...keys));
        expect(isBlackKey(lowest) || isBlackKey(highest)).toBe(false);
      }),
    );
  });

  it('stands beside as many as there is room for, four at the most', () => {
    const span = { lowest: 36, highest: 76 };
    expect(whiteCount(span)).toBe(24);
    expect(keyboardsInLine(span, 984, 20).count).toBe(3);
    expect(keyboardsInLine(span, 744, 20).count).toBe(2);
    expect(keyboardsInLine(span, 250, 20).count).toBe(1);
    expect(keyboardsInLine(octave, 2000, 20).count).toBe(4);
  });
});

describe('figures over the keys', () => {
  it('stand where their keys are unless they would run into each other', () => {
    expect(spreadApart([0, 20, 40], 10)).toEqual([0, 20, 40]);
    expect(spreadApart([0, 6, 40], 10)).toEqual([-2, 8, 40]);
    expect(spreadApart([], 10)).toEqual([]);
  });
});

describe('notes on their way', () => {
  it('stay or move to their pair', () => {
    expect(leads([60, 64, 67], [60, 65, 69])).toEqual([
      { from: 60, to: 60 },
      { from: 64, to: 65 },
      { from: 67, to: 69 },
    ]);
  });

  it('divide where the next chord has more notes, and meet where it has fewer', () => {
    expect(leads([60, 64, 67], [60, 64, 67, 70])).toEqual([
      { from: 60, to: 60 },
      { from: 64, to: 64 },
      { from: 67, to: 67 },
      { from: 67, to: 70 },
    ]);
    expect(leads([60, 64, 67, 70], [60, 64, 67])).toContainEqual({ from: 70, to: 67 });
  });

  it('are none from or to a free hand', () => {
    expect(leads([], [60])).toEqual([]);
    expect(leads([60], [])).toEqual([]);
  });

  it('go as far together as the hand moves', () => {
    const hand = fc.uniqueArray(fc.integer({ min: 48, max: 84 }), { minLength: 1, maxLength: 5 });
    fc.assert(
      fc.property(hand, hand, (from, to) => {
        const total = leads(from, to).reduce((sum, lead) => sum + Math.abs(lead.from - lead.to), 0);
        expect(total).toBe(motion(from, to));
      }),
    );
  });
});

describe('names of keys', () => {
  it('are spelled as the chord spells them', () => {
    expect([61, 65, 68].map((key) => noteName(key, chord('C♯')))).toEqual(['C♯', 'E♯', 'G♯']);
    expect(noteName(52, chord('C/E'))).toBe('E');
    expect(noteName(63, chord('C'))).toBe('E♭');
  });

  it('have middle C as C4', () => {
    expect([60, 21, 70].map(plainKeyName)).toEqual(['C4', 'A0', 'B♭4']);
  });
});
