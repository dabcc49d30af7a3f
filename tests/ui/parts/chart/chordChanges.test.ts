import * as fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { formatChart, formatChartBars, parseChartBars } from '../../../../src/core/song/chart.ts';
import { sectionTicks } from '../../../../src/core/song/form.ts';
import type { ChordSlot, Section } from '../../../../src/core/song/song.ts';
import {
  withBarAfter,
  withChangeMoved,
  withChordAt,
  withoutBar,
  withoutChordAt,
} from '../../../../src/ui/parts/chart/chordChanges.ts';
import { chord, meter, section, slots, valueOf } from '../../../support/music.ts';

const BEAT = 480;
const text = (list: readonly ChordSlot[]) => formatChart(list, meter('4/4'));
const two = slots('| C | F / G / |');

describe('a chord set on a beat', () => {
  it('divides the chord that sounded there', () => {
    expect(text(withChordAt(two, 2 * BEAT, chord('Am')))).toBe('| C / Am / | F / G / |');
  });

  it('replaces the chord that begins there, with its length', () => {
    expect(text(withChordAt(two, 4 * BEAT, chord('Dm')))).toBe('| C | Dm / G / |');
  });

  it('goes without the voicing pinned for the chord before', () => {
    const pinned = [{ ...two[0]!, fixedKeys: { left: [36], right: [60, 64, 67] } }];
    expect(withChordAt(pinned, 0, chord('G'))).toEqual([
      { chord: chord('G'), durationTicks: 4 * BEAT },
    ]);
  });

  it('is left out beyond the end', () => {
    expect(withChordAt(two, 8 * BEAT, chord('Dm'))).toEqual(two);
  });
});

describe('a change taken away', () => {
  it('lets the chord before go on', () => {
    expect(text(withoutChordAt(two, 4 * BEAT))).toBe('| C | / / G / |');
  });

  it('leaves no chord where it was the first', () => {
    expect(text(withoutChordAt(two, 0))).toBe('| N.C. | F / G / |');
  });

  it('is nothing where no chord begins', () => {
    expect(withoutChordAt(two, BEAT)).toEqual(two);
  });
});

describe('a change moved', () => {
  it('comes a beat earlier or later', () => {
    expect(text(withChangeMoved(two, 4 * BEAT, 3 * BEAT))).toBe('| C / / F | / / G / |');
    expect(text(withChangeMoved(two, 6 * BEAT, 7 * BEAT))).toBe('| C | F / / G |');
  });

  it('stays between its neighbours, and the first stays first', () => {
    expect(withChangeMoved(two, 4 * BEAT, 6 * BEAT)).toEqual(two);
    expect(withChangeMoved(two, 6 * BEAT, 4 * BEAT)).toEqual(two);
    expect(withChangeMoved(two, 6 * BEAT, 8 * BEAT)).toEqual(two);
    expect(withChangeMoved(two, 0, BEAT)).toEqual(two);
  });
});

function charted(chart: string): Section {
  return section('verse', valueOf(parseChartBars(chart, meter('4/4'))));
}
const rewritten = (from: Section, parts: Pick<Section, 'slots' | 'barMeters'>) =>
  formatChartBars(parts, from.meter);

describe('bars', () => {
  const verse = charted('| C | 2/4 G / | F / C / |');

  it('are added with the chord going on, and other meters move along', () => {
    expect(rewritten(verse, withBarAfter(verse, 0))).toBe('| C | / | 2/4 G | F / C / |');
    expect(rewritten(verse, withBarAfter(verse, 2))).toBe('| C | 2/4 G | F / C / | / |');
  });

  it('are taken out with their own meter', () => {
    expect(rewritten(verse, withoutBar(verse, 1))).toBe('| C | F / C / |');
    expect(rewritten(verse, withoutBar(verse, 0))).toBe('| 2/4 G | F / C / |');
  });

  it('leave the rest of a chord that lasts beyond them', () => {
    const held = charted('| C / G / | / | F |');
    expect(rewritten(held, withoutBar(held, 0))).toBe('| G | F |');
    expect(rewritten(held, withoutBar(held, 1))).toBe('| C / G / | F |');
  });

  it('are never none', () => {
    const single = charted('| C |');
    expect(withoutBar(single, 0)).toBe(single);
  });
});

const anyBeat = fc.integer({ min: 0, max: 15 }).map((beat) => beat * BEAT);

describe('the length of a section', () => {
  it('is kept whatever chord is set, taken away or moved', () => {
    fc.assert(
      fc.property(
        fc.array(fc.tuple(anyBeat, anyBeat, fc.constantFrom('set', 'take', 'move')), {
          maxLength: 12,
        }),
        (acts) => {
          let list: readonly ChordSlot[] = slots('| C | F / G / | Am | / / D G |');
          for (const [tick, other, act] of acts) {
            if (act === 'set') list = withChordAt(list, tick, chord('E7'));
            else if (act === 'take') list = withoutChordAt(list, tick);
            else list = withChangeMoved(list, tick, other);
          }
          expect(sectionTicks({ slots: list })).toBe(16 * BEAT);
          expect(list.every((slot) => slot.durationTicks > 0)).toBe(true);
        },
      ),
    );
  });
});
