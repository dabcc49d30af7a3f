import * as fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import {
  historyPlot,
  linePath,
  type PlotSize,
  roundValues,
  signPath,
} from '../../../../src/ui/parts/takes/historyPlot.ts';

const SIZE: PlotSize = { width: 300, height: 150, left: 40, right: 10, top: 10, bottom: 30 };

describe('round values of an axis', () => {
  it.each([
    [72, 96, [70, 80, 90, 100]],
    [0, 38, [0, 10, 20, 30, 40]],
    [59.2, 62, [59, 60, 61, 62]],
  ])('from %d to %d', (low, high, values) => expect(roundValues(low, high, 4)).toEqual(values));

  it('enclose what is to be seen with at most four steps', () =>
    fc.assert(
      fc.property(
        fc.double({ min: 0, max: 300, noNaN: true }),
        fc.double({ min: 1, max: 300, noNaN: true }),
        (low, span) => {
          const values = roundValues(low, low + span, 4);
          expect(values[0]).toBeLessThanOrEqual(low + 1e-6);
          expect(values.at(-1)).toBeGreaterThanOrEqual(low + span - 1e-6);
          expect(values.length).toBeLessThanOrEqual(5);
        },
      ),
    ));
});

describe('the plot of a history', () => {
  it('lays days as far apart as they are, and values between round ones', () => {
    const plot = historyPlot(
      [
        { day: '2026-02-27', values: { both: 70 } },
        { day: '2026-03-01', values: { left: 80, both: 80 } },
        { day: '2026-03-07', values: { both: 90 } },
      ],
      SIZE,
    )!;
    // 2026 is no leap year: two days, then six, over 250 pixels.
    expect(plot.lines).toEqual([
      { hand: 'left', points: [{ day: '2026-03-01', x: 102.5, y: 65 }] },
      {
        hand: 'both',
        points: [
          { day: '2026-02-27', x: 40, y: 120 },
          { day: '2026-03-01', x: 102.5, y: 65 },
          { day: '2026-03-07', x: 290, y: 10 },
        ],
      },
    ]);
    expect(plot.values.map(({ value }) => value)).toEqual([70, 75, 80, 85, 90]);
    expect(plot.days.map(({ day }) => day)).toEqual(['2026-02-27', '2026-03-01', '2026-03-07']);
  });

  it('goes over all days, also those without a value, so that two plots of one history lie alike', () => {
    const plot = historyPlot(
      [
        { day: '2026-03-01', values: {} },
        { day: '2026-03-02', values: { both: 70 } },
        { day: '2026-03-03', values: {} },
      ],
      SIZE,
    )!;
    expect(plot.lines[0]!.points.map(({ x }) => x)).toEqual([165]);
    expect(plot.days.map(({ at }) => at)).toEqual([40, 165, 290]);
  });

  it('puts a single day in the middle, and keeps the goal in sight', () => {
    const plot = historyPlot([{ day: '2026-02-27', values: { both: 70 } }], SIZE, { goal: 120 })!;
    expect(plot.lines[0]!.points[0]!.x).toBe(165);
    const alone = historyPlot([{ day: '2026-02-27', values: { both: 70 } }], SIZE)!;
    expect(alone.values.map(({ value }) => value)).toEqual([66, 68, 70, 72, 74]);
    expect(plot.goalAt).toBeGreaterThanOrEqual(SIZE.top);
    expect(plot.goalAt).toBeLessThan(plot.lines[0]!.points[0]!.y);
  });

  it('begins at 0 where that means something', () =>
    expect(
      historyPlot([{ day: '2026-02-27', values: { left: 30 } }], SIZE, { fromZero: true })!
        .values[0],
    ).toEqual({ value: 0, at: 120 }));

  it('labels few days, none so near to another that they would meet', () => {
    const days = Array.from({ length: 30 }, (_, i) => ({
      day: new Date(Date.UTC(2026, 0, 1 + i)).toISOString().slice(0, 10),
      values: { both: 60 + i },
    }));
    expect(historyPlot(days, SIZE)!.days.map(({ day }) => day)).toEqual([
      '2026-01-01',
      '2026-01-15',
      '2026-01-30',
    ]);
    const near = historyPlot([days[0]!, days[1]!, days[29]!], SIZE)!;
    expect(near.days.map(({ day }) => day)).toEqual(['2026-01-01', '2026-01-30']);
  });

  it('is none without a value', () => {
    expect(historyPlot([], SIZE)).toBeUndefined();
    expect(historyPlot([{ day: '2026-02-27', values: {} }], SIZE)).toBeUndefined();
  });

  it('lies within its field, whatever is plotted', () => {
    const days = fc
      .uniqueArray(fc.nat(4000), { minLength: 1, maxLength: 12 })
      .map((all) => all.toSorted((a, b) => a - b));
    fc.assert(
      fc.property(
        days,
        fc.infiniteStream(fc.double({ min: 0, max: 300, noNaN: true })),
        (all, values) => {
          const plot = historyPlot(
            all.map((day) => ({
              day: new Date(86_400_000 * day).toISOString().slice(0, 10),
              values: { both: values.next().value as number },
            })),
            SIZE,
          )!;
          for (const { x, y } of plot.lines.flatMap(({ points }) => points)) {
            expect(x).toBeGreaterThanOrEqual(SIZE.left);
            expect(x).toBeLessThanOrEqual(SIZE.width - SIZE.right + 1e-6);
            expect(y).toBeGreaterThanOrEqual(SIZE.top - 1e-6);
            expect(y).toBeLessThanOrEqual(SIZE.height - SIZE.bottom + 1e-6);
          }
        },
      ),
    );
  });
});

it('draws each hand with a sign of its own, and a line through its points', () => {
  const at = { x: 10, y: 20 };
  expect(new Set((['left', 'right', 'both'] as const).map((hand) => signPath(hand, at))).size).toBe(
    3,
  );
  expect(
    linePath([
      { day: '', ...at },
      { day: '', x: 30, y: 5 },
    ]),
  ).toBe('M10 20L30 5');
});
