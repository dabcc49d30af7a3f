import * as fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import type { Pattern } from '../../../src/core/rhythm/pattern.ts';
import { PEDAL_LAG, pedalled, pedalSpans, pedalsWithin } from '../../../src/core/rhythm/pedal.ts';
import type { Timeline } from '../../../src/core/song/timeline.ts';
import { chartTimeline, noteLines, pattern, sectionsTimeline } from '../../support/patterns.ts';
import { played } from '../../support/playing.ts';

const WITH_PEDAL = { pedal: 'by-chord' } as const;

/** An arpeggio of eighths in both hands, the bass on one. */
const ARPEGGIO = pattern('4/4', { left: 'R-----5-', right: '..1.2.3.' }, WITH_PEDAL);

function spans(timeline: Timeline, p: Pattern | undefined): string[] {
  return pedalSpans(timeline, () => p, played(timeline, p)).map(
    ({ downTick, upTick }) => `${downTick}–${upTick}`,
  );
}

const D = PEDAL_LAG;

describe('the pedal', () => {
  it('is changed with each chord, down a little after the keys', () => {
    expect(spans(chartTimeline('| C / F / | G |'), ARPEGGIO)).toEqual([
      `${D}–960`,
      `${960 + D}–1920`,
      `${1920 + D}–3840`,
    ]);
  });

  it('is not used by a pattern that does not ask for it', () => {
    const { pedal: _, ...dry } = ARPEGGIO;
    expect(spans(chartTimeline('| C | F |'), dry)).toEqual([]);
  });

  it('is changed where the bass is struck again at a bar line, and held where it is not', () => {
    const everyBar = spans(chartTimeline('| C | % |'), ARPEGGIO);
    expect(everyBar).toEqual([`${D}–1920`, `${1920 + D}–3840`]);
    const long = pattern(
      '4/4',
      { left: 'R---------------', right: '..1.2.3.1.2.3.1.' },
      { ...WITH_PEDAL, bars: 2 },
    );
    const held = chartTimeline('| C | % |').chords.slice(0, 1);
    const oneChord = { ...chartTimeline('| C | % |'), chords: [{ ...held[0]!, endTick: 3840 }] };
    expect(spans(oneChord, long)).toEqual([`${D}–3840`]);
  });

  it('stays up in a bar without a chord', () => {
    expect(spans(chartTimeline('| C | N.C. | F |'), ARPEGGIO)).toEqual([
      `${D}–1920`,
      `${3840 + D}–5760`,
    ]);
  });

  it('goes up in a rest of both hands that is longer than a beat, and down after what ends it', () => {
    const resting = pattern('4/4', { left: 'R.....5.', right: 'C.......' }, WITH_PEDAL);
    expect(spans(chartTimeline('| C |'), resting)).toEqual([`${D}–240`, `${1440 + D}–1920`]);
  });

  it('stays down through a rest of a beat', () => {
    const broken = pattern('4/4', { left: 'R-..5---', right: 'C-..C---' }, WITH_PEDAL);
    expect(spans(chartTimeline('| C |'), broken)).toEqual([`${D}–1920`]);
  });

  it('is changed with the hit that anticipates a chord', () => {
    const pushed = pattern('4/4', { left: 'R-------', right: 'C------C' }, WITH_PEDAL);
    const anticipating = {
      ...pushed,
      right: pushed.right.map((hit) => (hit.at === 1680 ? { ...hit, anticipates: true } : hit)),
    };
    expect(spans(chartTimeline('| C | F |'), anticipating).slice(0, 2)).toEqual([
      `${D}–1680`,
      `${1680 + D}–1920`,
    ]);
  });

  it('is changed with a bass that approaches the next chord', () => {
    const approaching = pattern('4/4', { left: 'R-----a-', right: 'C-------' }, WITH_PEDAL);
    expect(spans(chartTimeline('| C | F |'), approaching).slice(0, 2)).toEqual([
      `${D}–1440`,
      `${1440 + D}–1920`,
    ]);
  });

  it('is up at the end of a section', () => {
    const ups = pedalSpans(
      sectionsTimeline('| C |', '| C |'),
      () => ARPEGGIO,
      played(sectionsTimeline('| C |', '| C |'), ARPEGGIO),
    ).map(({ upTick }) => upTick);
    expect(ups).toEqual([1920, 3840]);
  });

  it('waits for the first keys of a bar', () => {
    const late = pattern('4/4', { left: '..R-5---', right: '..C-C---' }, WITH_PEDAL);
    expect(spans(chartTimeline('| C |'), late)).toEqual([`${480 + D}–1920`]);
  });
});

describe('notes under the pedal', () => {
  it('sound until it is let up', () => {
    const timeline = chartTimeline('| C / F / |');
    const notes = played(timeline, ARPEGGIO);
    const sounding = pedalled(
      notes,
      pedalSpans(timeline, () => ARPEGGIO, notes),
    );
    expect(noteLines(sounding, 'left')).toEqual(['0+960 36', '960+960 41', '1440+480 48']);
    expect(noteLines(sounding, 'right')).toEqual(['480+480 60', '960+960 69', '1440+480 72']);
  });

  it('keep their length where they are let go before it is down', () => {
    const [note] = played(chartTimeline('| C |'), pattern('4/4', { left: 'R---' }));
    const short = { ...note!, durationTicks: 40 };
    expect(pedalled([short], [{ downTick: 60, upTick: 1920 }])).toEqual([short]);
  });

  it('are those of the hands alone', () => {
    const [note] = played(chartTimeline('| C |'), pattern('4/4', { left: 'R.......' }));
    const bass = { ...note!, part: 'bass' } as const;
    expect(pedalled([bass], [{ downTick: 60, upTick: 1920 }])).toEqual([bass]);
  });
});

it('is down again after the first keys where play begins under it, and up where play ends', () => {
  const pedals = [
    { downTick: 60, upTick: 1920 },
    { downTick: 1980, upTick: 5760 },
    { downTick: 5820, upTick: 7680 },
  ];
  expect(pedalsWithin(pedals, 3840, 5800)).toEqual([{ downTick: 3900, upTick: 5760 }]);
  expect(pedalsWithin(pedals, 0, 1200)).toEqual([{ downTick: 60, upTick: 1200 }]);
});

it('never overlaps itself, lasts, and only ever lengthens a note, up to where it is let up', () => {
  const chart = fc
    .array(fc.constantFrom('C', 'F / G /', '%', 'N.C.', 'Am'), { minLength: 1, maxLength: 6 })
    .map((bars) => `| ${['C', ...bars].join(' | ')} |`);
  const hand = (signs: string) =>
    fc
      .array(fc.constantFrom(...signs.split(''), '-', '.'), { minLength: 8, maxLength: 8 })
      .map((s) => s.join(''));
  fc.assert(
    fc.property(chart, hand('R5'), hand('C12'), (text, left, right) => {
      const timeline = chartTimeline(text);
      const p = pattern('4/4', { left, right }, WITH_PEDAL);
      const notes = played(timeline, p);
      const pedals = pedalSpans(timeline, () => p, notes);
      let before = 0;
      for (const { downTick, upTick } of pedals) {
        expect(downTick).toBeGreaterThanOrEqual(before);
        expect(upTick).toBeGreaterThan(downTick);
        before = upTick;
      }
      expect(before).toBeLessThanOrEqual(timeline.lengthTicks);
      const ends = new Set(pedals.map(({ upTick }) => upTick));
      pedalled(notes, pedals).forEach((sounding, i) => {
        const written = notes[i]!;
        const isSame = sounding.durationTicks === written.durationTicks;
        expect(isSame || ends.has(sounding.startTick + sounding.durationTicks)).toBe(true);
        expect(sounding.durationTicks).toBeGreaterThanOrEqual(written.durationTicks);
      });
    }),
  );
});
