import { describe, expect, it } from 'vitest';
import { type Pattern, patternBeats } from '../../../src/core/rhythm/pattern.ts';
import { fittedToMeter, type MeterFit } from '../../../src/state/edits/fitMeter.ts';
import { meter } from '../../support/music.ts';
import { pattern, source, ticksOf } from '../../support/patterns.ts';
import { shelf } from '../../support/shelf.ts';

const COMMON = pattern('4/4', { left: 'R...5...', right: '..C...C.' });
const BANDED = { ...COMMON, sources: [source(COMMON, 'kick', 'x...x.x.')] };

function fits(meterText: string, p: Pattern = BANDED) {
  return fittedToMeter(p, meter(meterText));
}

function fitted(fit: MeterFit, meterText: string, p: Pattern = BANDED) {
  const found = fits(meterText, p).find((each) => each.fit === fit);
  if (!found) throw new Error(`it cannot be brought into ${meterText} so: ${fit}`);
  return found.pattern;
}

describe('a pattern in another meter', () => {
  it.each([
    ['3/4', ['cut', 'across']],
    ['12/8', ['restate']],
    ['5/4', ['open', 'again', 'across']],
    ['2/4', ['cut', 'across']],
    ['6/8', ['cut']],
  ])('from 4/4 to %s can be %j', (text, ways) =>
    expect(fits(text).map(({ fit }) => fit)).toEqual(ways),
  );

  it('is cut where the bar is shorter', () => {
    const cut = fitted('cut', '3/4');
    expect(ticksOf(cut.left)).toEqual([0, 960]);
    expect(ticksOf(cut.right)).toEqual([480]);
    expect(ticksOf(cut.sources[0]!.strokes)).toEqual([0, 960]);
  });

  it('begins again in the beats that a longer bar has more', () => {
    const p = fitted('again', '5/4');
    expect(ticksOf(p.left)).toEqual([0, 960, 1920]);
    expect(ticksOf(p.right)).toEqual([480, 1440]);
    expect(ticksOf(p.sources[0]!.strokes)).toEqual([0, 960, 1440, 1920]);
    expect(p.divisions).toEqual([2, 2, 2, 2, 2]);
  });

  it('runs over the bar lines until it comes out even', () => {
    const p = fitted('across', '3/4');
    expect(p.bars).toBe(4);
    expect(ticksOf(p.left)).toEqual([0, 960, 1920, 2880, 3840, 4800]);
    expect(ticksOf(p.sources[0]!.strokes).slice(3, 6)).toEqual([1920, 2880, 3360]);
  });

  it('keeps what is as far into a beat when the beats get longer', () => {
    const p = fitted('restate', '12/8', pattern('4/4', { left: 'RR......' }));
    expect(ticksOf(p.left)).toEqual([0, 360]);
  });

  it.each(shelf())(
    '$pattern.name stays inside every meter that it is brought into',
    ({ pattern: p }) => {
      for (const text of ['2/4', '3/4', '4/4', '5/4', '6/8', '7/8', '12/8'])
        for (const { pattern: q } of fittedToMeter(p, meter(text))) {
          const end = (q.bars * q.meter.beats * 1920) / q.meter.unit;
          expect(q.divisions).toHaveLength(patternBeats(q).length);
          for (const hit of [...q.left, ...q.right]) {
            expect(hit.at).toBeGreaterThanOrEqual(0);
            expect(hit.at).toBeLessThan(end);
          }
        }
    },
  );
});
