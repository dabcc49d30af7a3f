import { describe, expect, it } from 'vitest';
import type { LiveHit } from '../../../../src/app/liveHits.ts';
import { GRADES } from '../../../../src/core/practice/tolerance.ts';
import { systemsOf } from '../../../../src/ui/parts/grid/systemLayout.ts';
import {
  type HitMark,
  hitMarks,
  latenessPixels,
  markPath,
} from '../../../../src/ui/parts/takes/hitMarks.ts';
import { pattern } from '../../../support/patterns.ts';

/** One bar of 4/4; 480 pixels from bar line to bar line, so four ticks to a pixel. */
const GROOVE = pattern('4/4', { left: 'R---', right: 'C-C-' });
const SYSTEM = systemsOf(GROOVE, 614)[0]!;
const BAR = 1920;

function playedAt(tick: number, deviationSec: number, hand: LiveHit['hand'] = 'right'): LiveHit {
  return {
    kind: 'played',
    hand: hand ?? 'both',
    tick,
    patternTick: tick % BAR,
    deviationSec,
    grade: 'good',
    wrongKeys: 0,
  };
}

function wrong(hit: LiveHit, wrongKeys: number): LiveHit {
  return hit.kind === 'played' ? { ...hit, wrongKeys } : hit;
}

function marksOf(...hits: LiveHit[]): HitMark[] {
  return hitMarks(hits, GROOVE, SYSTEM);
}

const leftEdge = SYSTEM.left;

describe('marks of hits', () => {
  it('stand at their step, a pixel to the right for 4 ms late, to the left for early', () => {
    const [late, early] = marksOf(playedAt(0, 0.02), playedAt(960, -0.04));
    expect(late!.x).toBe(leftEdge + 4);
    expect(late!.to - late!.x).toBeCloseTo(5);
    expect(early!.x).toBeCloseTo(leftEdge + 244);
    expect(early!.to - early!.x).toBeCloseTo(-10);
  });

  it('never reach the neighbouring step', () => {
    expect([latenessPixels(0.3), latenessPixels(-0.3)]).toEqual([18, -18]);
  });

  it('stand in the round of the pattern that is played, and paler in the one before', () => {
    const marks = marksOf(playedAt(0, 0), playedAt(BAR, 0), playedAt(2 * BAR + 960, 0));
    expect(marks.map(({ x, isOld }) => [Math.round(x - leftEdge - 4), isOld])).toEqual([
      [0, true],
      [240, false],
    ]);
  });

  it('count the rounds from where the pattern begins in a song', () => {
    const long = pattern('4/4', { right: 'C-------' }, { bars: 2 });
    const system = systemsOf(long, 614)[0]!;
    const hits = [1, 2, 3, 4].map((bar): LiveHit => {
      const patternTick = ((bar - 1) % 2) * BAR;
      return { kind: 'missed', hand: 'right', tick: bar * BAR, patternTick };
    });
    expect(hitMarks(hits, long, system).map(({ isOld }) => isOld)).toEqual([
      true,
      true,
      false,
      false,
    ]);
  });

  it('stand on both rules where the input cannot tell the hands apart', () => {
    const marks = marksOf(playedAt(0, 0, 'both'));
    expect(marks.map(({ hand, isHandKnown }) => [hand, isHandKnown])).toEqual([
      ['right', false],
      ['left', false],
    ]);
  });

  it('show an extra hit where it was played, even just before the downbeat', () => {
    const marks = marksOf(
      { kind: 'extra', hand: 'left', tick: -240 },
      { kind: 'missed', hand: 'left', tick: 0, patternTick: 0 },
    );
    expect(marks.map(({ kind, x }) => [kind, Math.round(x - leftEdge)])).toEqual([
      ['extra', 420],
      ['missed', 4],
    ]);
  });

  it('are none where nothing was to be played', () => {
    expect(marksOf()).toEqual([]);
  });

  it('say which hits had a wrong key', () => {
    const marks = marksOf(wrong(playedAt(0, 0), 2), wrong(playedAt(960, 0), 0));
    expect(marks.map(({ kind }) => kind)).toEqual(['wrong-key', 'played']);
  });

  it('leave out hits of another pattern', () => {
    const other: LiveHit = {
      kind: 'missed',
      hand: 'left',
      tick: 0,
      patternTick: 0,
      patternId: 'x',
    };
    expect(marksOf(other, { ...other, patternId: 'p' })).toHaveLength(1);
  });

  it('say by their shape alone how well a hit is in time', () => {
    const shapes = GRADES.map((grade) => markPath({ kind: 'played', x: 10, to: 15, grade }, 20));
    expect(new Set(shapes).size).toBe(GRADES.length);
    expect(shapes.map((path) => path.includes('V16M'))).toEqual([false, false, false, true]);
  });

  it('carry the grade of the hit that they stand for', () => {
    expect(marksOf(playedAt(0, 0.02)).map(({ grade }) => grade)).toEqual(['good']);
  });

  it('are drawn as a tick, a lozenge on it, a ring and a cross, so that colour is not needed to tell them apart', () => {
    const mark = { hand: 'right', isHandKnown: true, x: 10, to: 15, isOld: false } as const;
    expect(markPath({ ...mark, kind: 'played' }, 20)).toBe('M10 20H15M15 12V28');
    expect(markPath({ ...mark, kind: 'wrong-key' }, 20)).toBe(
      'M10 20H15M15 12V28M15 13.5l6.5 6.5l-6.5 6.5l-6.5 -6.5z',
    );
    expect(markPath({ ...mark, kind: 'missed' }, 20)).toContain('a5.5 5.5');
    expect(markPath({ ...mark, kind: 'extra' }, 20)).toContain('l11 11');
  });
});
