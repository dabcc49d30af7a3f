import { describe, expect, it } from 'vitest';
import { HAND_LIMITS, handShift } from '../../../src/core/rhythm/handLimits.ts';
import type { Note } from '../../../src/core/rhythm/note.ts';
import { handLoad } from '../../../src/core/rhythm/playable.ts';

/** Notes of one hand from lines such as `0 60+64+67`, a start tick and the keys struck. */
function struck(part: Note['part'], ...lines: readonly string[]): Note[] {
  return lines.flatMap((line) => {
    const [start = '', keys = ''] = line.split(' ');
    return keys.split('+').map((key) => ({
      part,
      keyNumber: Number(key),
      startTick: Number(start),
      durationTicks: 60,
      velocity: 70,
    }));
  });
}

const kinds = (load: { strains: readonly { kind: string; startTick: number }[] }) =>
  load.strains.map((strain) => `${strain.kind} ${strain.startTick}`);

describe('the load of a hand', () => {
  it('is the rate of its hits at the tempo', () => {
    const notes = struck('right', '0 60', '240 62', '480 64');
    expect(handLoad(notes, 120).right.fastestRate).toBeCloseTo(4, 9);
    expect(handLoad(notes, 60).right.fastestRate).toBeCloseTo(2, 9);
    expect(handLoad(notes, 60, 720).right.fastestRate).toBeCloseTo(3, 9);
  });

  it('tells repeating a key from playing others', () => {
    const load = handLoad(struck('left', '0 36', '240 43', '480 36'), 120).left;
    expect(load.fastestRate).toBeCloseTo(4, 9);
    expect(load.fastestRepeat).toBeCloseTo(2, 9);
  });

  it('is the way the hand must move in the time there is', () => {
    const load = handLoad(struck('left', '0 36', '480 60'), 120).left;
    expect(load.biggestLeap).toBeCloseTo((24 - 12) / 0.5, 9);
    expect(handLoad(struck('left', '0 36', '480 48'), 120).left.biggestLeap).toBe(0);
  });

  it('is the widest span that is struck at once', () => {
    const load = handLoad(struck('right', '0 60+64+67', '480 60+76'), 100).right;
    expect(load.widestSpan).toBe(16);
    expect(kinds(load)).toEqual(['span 480']);
  });

  it('keeps the hands apart and leaves out all other parts', () => {
    const notes = [
      ...struck('left', '0 36'),
      ...struck('right', '30 60'),
      ...struck('bass', '1 30'),
    ];
    expect(handLoad(notes, 120).left.fastestRate).toBe(0);
    expect(handLoad(notes, 120).right.fastestRate).toBe(0);
  });

  it('marks what exceeds a limit, and where', () => {
    const sixteenths = struck('right', '0 60', '120 60', '240 64', '360 60', '480 90');
    const load = handLoad(sixteenths, 200).right;
    expect(kinds(load)).toEqual([
      'rate 120',
      'repeat 120',
      'rate 240',
      'rate 360',
      'rate 480',
      'leap 480',
    ]);
  });

  it('takes other limits for another player', () => {
    const notes = struck('right', '0 60+76');
    const wide = { ...HAND_LIMITS, spanSemitones: 16 };
    expect(kinds(handLoad(notes, 120, 480, wide).right)).toEqual([]);
  });

  it('says up to which tempo it is comfortable', () => {
    const notes = struck('right', '0 60', '240 60', '480 60');
    const load = handLoad(notes, 120).right;
    expect(load.comfortableBpm).toBeCloseTo(210, 9);
    expect(kinds(handLoad(notes, 209).right)).toEqual([]);
    expect(kinds(handLoad(notes, 211).right)).not.toEqual([]);
  });

  it('has no tempo limit with a hit or none', () => {
    expect(handLoad(struck('left', '0 36'), 100).left.comfortableBpm).toBeUndefined();
    expect(handLoad([], 100).left).toEqual({
      fastestRate: 0,
      fastestRepeat: 0,
      biggestLeap: 0,
      widestSpan: 0,
      strains: [],
      comfortableBpm: undefined,
    });
  });
});

describe('the way a hand moves', () => {
  it.each([
    [60, 60, 72, 72, 0],
    [60, 60, 73, 73, 1],
    [60, 67, 71, 79, 7],
    [60, 67, 48, 55, 7],
    [60, 72, 62, 62, 0],
  ])('from %i–%i to %i–%i is %i semitones', (low, high, nextLow, nextHigh, shift) =>
    expect(
      handShift({ lowest: low, highest: high }, { lowest: nextLow, highest: nextHigh }, 12),
    ).toBe(shift),
  );
});
