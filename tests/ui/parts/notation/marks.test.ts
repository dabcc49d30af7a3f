import { describe, expect, it } from 'vitest';
import type { Pattern } from '../../../../src/core/rhythm/pattern.ts';
import type { Articulation } from '../../../../src/core/rhythm/sheet.ts';
import { type InkReach, inkReach } from '../../../../src/ui/parts/notation/inkReach.ts';
import { markSide, marksOf, marksReach } from '../../../../src/ui/parts/notation/marks.ts';
import { beamedRuns, tupletRuns } from '../../../../src/ui/parts/notation/stemDirections.ts';
import { type WrittenEvent, writtenBars } from '../../../../src/ui/parts/notation/writtenBars.ts';
import { keyNamed } from '../../../support/music.ts';
import { pattern } from '../../../support/patterns.ts';
import { notationOf } from '../../../support/sheets.ts';

function marked(...articulations: readonly Articulation[]): WrittenEvent {
  return {
    event: {
      startTick: 0,
      durationTicks: 480,
      written: { value: 4, dots: 0 },
      notes: [],
      articulations,
    },
    stem: 'up',
    heads: [],
    restPlace: 0,
  };
}

describe('marks of a note', () => {
  it('stand by the heads with one voice and outside with two (common practice)', () => {
    const up = marked('staccato');
    expect(markSide(up, 1)).toBe('below');
    expect(markSide(up, 2)).toBe('above');
    expect(markSide({ ...up, stem: 'down' }, 1)).toBe('above');
  });

  // Common practice: the dot in the middle of a space; edges are those of heads from −10 to 20.
  it.each([-16, -11, -6, 4, 9, 14, 19])('a dot over an edge at %i is never on a line', (edge) => {
    const [dot] = marksOf(marked('staccato'), 'above', edge);
    const centre = dot!.y + 2;
    expect(centre).toBeGreaterThan(edge + 2);
    expect(centre <= 20 && centre % 10 === 0).toBe(false);
  });

  it('an accent stands outside the staff and beyond the dot', () => {
    const [dot, accent] = marksOf(marked('staccato', 'accent'), 'below', -6);
    expect(accent!.y).toBeLessThanOrEqual(-24);
    expect(accent!.y).toBeLessThan(dot!.y - dot!.height);
    expect(marksReach([dot!, accent!], 0)).toBe(-accent!.y + accent!.height);
  });

  it('none are written for a plain note', () => expect(marksOf(marked(), 'above', 0)).toEqual([]));
});

/** How far the ink of a bar reaches in which the right hand plays these tones. */
function reach(tones: string, chart: string, parts: Partial<Pattern> = {}): InkReach {
  const { sheet } = notationOf(pattern('4/4', { right: tones }, parts), chart);
  return inkReach(writtenBars(sheet, keyNamed('C'))[0]!, 'right');
}

describe('the ink of a staff', () => {
  it('is at least the staff itself', () =>
    expect(reach('....', '| C |')).toEqual({ above: 20, below: 20 }));

  it('holds heads on ledger lines, stems and accidentals', () => {
    expect(reach('B---', '| C |').below).toBe(36);
    expect(reach('C---', '| B |').above).toBeGreaterThan(20);
    expect(reach('B-B-', '| C |').below).toBe(36);
    expect(reach('C---', '| C♯ |').below).toBeGreaterThan(reach('C---', '| C |').below);
  });

  it('has room for tuplets', () => {
    const triplets = reach('CCCC--', '| C |', { divisions: [3, 1, 1, 1] });
    expect(triplets.above).toBeGreaterThan(reach('CCCC----', '| C |').above);
  });
});

describe('groups of a voice', () => {
  it('are what stands under one beam, anything else alone', () =>
    expect(
      beamedRuns([
        { beam: 'begin' },
        { beam: 'continue' },
        { beam: 'end' },
        {},
        { beam: 'begin' },
        { beam: 'end' },
      ]),
    ).toEqual([[0, 1, 2], [3], [4, 5]]));

  it('are tuplets from their first to their last event', () => {
    const written = { value: 8, dots: 0, tuplet: { actual: 3, normal: 2 } } as const;
    const plain = { value: 4, dots: 0 } as const;
    expect(
      tupletRuns([
        { written: plain },
        { written, tupletEdge: 'start' },
        { written },
        { written, tupletEdge: 'stop' },
        { written, tupletEdge: 'start' },
        { written, tupletEdge: 'stop' },
      ]),
    ).toEqual([
      [1, 2, 3],
      [4, 5],
    ]);
  });
});
