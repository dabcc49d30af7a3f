import { describe, expect, it } from 'vitest';
import type { HandName } from '../../../../src/core/voicing/voicing.ts';
import type { StemDirection } from '../../../../src/ui/parts/notation/stemDirections.ts';
import { lowerVoiceShift } from '../../../../src/ui/parts/notation/voiceShift.ts';
import {
  type EngravedBar,
  type WrittenEvent,
  writtenBars,
} from '../../../../src/ui/parts/notation/writtenBars.ts';
import { keyNamed } from '../../../support/music.ts';
import { pattern } from '../../../support/patterns.ts';
import { notationOf } from '../../../support/sheets.ts';

const SIGNS: Readonly<Record<number, string>> = { [-2]: '𝄫', [-1]: '♭', 0: '♮', 1: '♯', 2: '𝄪' };

/** Heads of one hand with the accidentals written before them, notes by spaces and bars by `|`: `C4E♭4 ♮E4`. */
function headsOver(chart: string, right: string, key = 'C'): string {
  const bars = Math.max(1, chart.split('|').length - 2);
  const notation = notationOf(pattern('4/4', { right: right.repeat(bars) }, { bars }), chart);
  return writtenBars(notation.sheet, keyNamed(key))
    .map((bar) => events(bar, 'right').map(headsText).join(' '))
    .join(' | ');
}

function events(bar: EngravedBar, hand: HandName): readonly WrittenEvent[] {
  return bar.staves[hand].flat();
}

function headsText({ heads }: WrittenEvent): string {
  return heads
    .map(({ note, sign }) => (sign === undefined ? '' : SIGNS[sign]) + note.pitch.letter)
    .join('');
}

describe('accidentals', () => {
  // Common practice: an accidental holds for its bar, and a bar after it is reminded.
  it.each([
    ['| C |', 'C---', 'C', 'CEG'],
    ['| Cm |', 'C---', 'C', 'C♭EG'],
    ['| Cm |', 'CCCC', 'C', 'C♭EG CEG CEG CEG'],
    ['| Cm |', 'C---', 'E♭', 'CEG'],
    ['| C |', 'C---', 'E♭', 'C♮EG'],
    ['| D |', 'C---', 'D', 'DFA'],
    ['| Cm / C / |', 'C-C-', 'C', 'C♭EG C♮EG'],
    ['| Cm | C | C |', 'C---', 'C', 'C♭EG | C♮EG | CEG'],
    ['| Cm | Cm |', 'C---', 'C', 'C♭EG | C♭EG'],
    ['| Faug7 |', 'C---', 'C', 'FA♯C♭E'],
  ])('over %s, %s in %s: %s', (chart, right, key, text) =>
    expect(headsOver(chart, right, key)).toBe(text),
  );

  it('are not written again on a note that is tied over the bar line', () => {
    const tied = pattern('4/4', { right: '....C-----------' }, { bars: 2 });
    const bars = writtenBars(notationOf(tied, '| Cm | Cm |').sheet, keyNamed('C'));
    expect(bars.map((bar) => events(bar, 'right').map(headsText).join(' ').trim())).toEqual([
      'C♭EG',
      'CEG',
    ]);
  });
});

/** Directions of the stems of a hand that plays these tones. */
function stems(hand: HandName, tones: string, chart = '| C |'): StemDirection[] {
  const { sheet } = notationOf(pattern('4/4', { [hand]: tones }), chart);
  return events(writtenBars(sheet, keyNamed('C'))[0]!, hand).map(({ stem }) => stem);
}

describe('stems', () => {
  // Common practice: the head farthest from the middle line decides; on the middle line it goes down.
  it('of single notes go up below the middle line and down from it on', () => {
    expect(stems('left', 'R---')).toEqual(['up']);
    expect(stems('left', '8---')).toEqual(['up']);
    expect(stems('right', 'T---', '| Em |')).toEqual(['down']);
    expect(stems('right', 'T---', '| C |')).toEqual(['up']);
  });

  // Common practice: equally far, the stem goes as the one before.
  it('go on as before where two heads are equally far', () => {
    expect(stems('right', 'B-B-1212', '| F / Am / |')).toEqual(Array(6).fill('up'));
    expect(stems('right', 'T-T-1212', '| B / Am / |')).toEqual(Array(6).fill('down'));
  });

  it('go one way under a beam, as its farthest note wants it', () =>
    expect(stems('right', 'BTBTBTBT', '| Am |')).toEqual(Array(8).fill('down')));

  it('of two voices go apart', () => {
    const p = pattern('4/4', { right: '.1111111' });
    const held = { ...p.right[0]!, at: 0, length: 1920, play: ['voice-2' as const] };
    const { sheet } = notationOf({ ...p, right: [held, ...p.right] }, '| C |');
    const [bar] = writtenBars(sheet, keyNamed('C'));
    const [upper, lower] = bar!.staves.right;
    expect(new Set(upper!.map(({ stem }) => stem))).toEqual(new Set(['up']));
    expect(new Set(lower!.map(({ stem }) => stem))).toEqual(new Set(['down']));
    const [rest] = lower!;
    expect(rest!.heads).toEqual([]);
    expect(rest!.restPlace).toBeLessThanOrEqual(-4);
    expect(upper![0]!.heads[0]!.place - rest!.restPlace).toBeGreaterThanOrEqual(4);
  });
});

/** A note of one head in its place, of which nothing else matters. */
function event(value: 1 | 2 | 4, place: number): WrittenEvent {
  const written = { value, dots: 0 } as const;
  return {
    event: { startTick: 0, durationTicks: 0, written, notes: [], articulations: [] },
    stem: 'up',
    heads: [{ place, note: undefined as never }],
    restPlace: 0,
  };
}

describe('where two voices meet', () => {
  // Common practice.
  it.each([
    ['a third apart', event(4, 2), event(4, 0), 0],
    ['at a second', event(4, 1), event(4, 0), 13],
    ['in unison with like heads', event(4, 0), event(4, 0), 0],
    ['in unison with a half and a quarter', event(2, 0), event(4, 0), 15],
    ['crossed', event(4, 0), event(4, 3), 15],
  ] as const)('%s the lower one moves', (_, upper, lower, shift) =>
    expect(lowerVoiceShift(upper, lower)).toBe(shift),
  );

  it('a rest moves nothing', () =>
    expect(lowerVoiceShift(event(4, 0), { ...event(4, 0), heads: [] })).toBe(0));
});
