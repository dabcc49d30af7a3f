import * as fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { clickTrack } from '../../../src/core/rhythm/click.ts';
import { restsLeft, withClickRests } from '../../../src/core/rhythm/clickRests.ts';
import { chartTimeline } from '../../support/patterns.ts';

const bars = (count: number) => Array.from({ length: count }, (_, bar) => bar);

describe('a click that rests', () => {
  it('sounds first, then rests, round and round, and tells when it comes back', () =>
    expect(bars(8).map((bar) => restsLeft({ sounding: 2, resting: 2 }, bar))).toEqual([
      0, 0, 2, 1, 0, 0, 2, 1,
    ]));

  it('rests for so many bars of every round, whatever the bars', () =>
    fc.assert(
      fc.property(
        fc.integer({ min: 1, max: 64 }),
        fc.integer({ min: 1, max: 64 }),
        fc.nat(200),
        (sounding, resting, from) => {
          const round = bars(sounding + resting).map((bar) =>
            restsLeft({ sounding, resting }, from + bar),
          );
          expect(round.filter((left) => left > 0)).toHaveLength(resting);
          expect(Math.max(...round)).toBeLessThanOrEqual(resting);
        },
      ),
    ));

  const timeline = chartTimeline('| C | F | G |');
  const clickingBars = (barsBefore: number) => {
    const notes = withClickRests(
      clickTrack(timeline),
      timeline.bars,
      { sounding: 1, resting: 1 },
      barsBefore,
    );
    return [...new Set(notes.map(({ startTick }) => startTick / 1920).map(Math.floor))];
  };

  it('goes on with its round where an odd number of bars is played again and again', () => {
    expect(clickingBars(0)).toEqual([0, 2]);
    expect(clickingBars(3)).toEqual([1]);
    expect(clickingBars(6)).toEqual([0, 2]);
  });

  it('leaves all that is not the click', () => {
    const hands = clickTrack(timeline).map((note) => ({ ...note, part: 'left' }) as const);
    expect(withClickRests(hands, timeline.bars, { sounding: 1, resting: 2 }, 0)).toEqual(hands);
  });
});
