import { describe, expect, it } from 'vitest';
import { type Fold, foldStrokes, type HeardStroke } from '../../../src/core/rhythm/fold.ts';
import {
  fMeasure,
  foundSteps,
  type Groove,
  groove,
  type Playing,
  playGroove,
  trueDivisions,
  trueSteps,
  UNEVEN,
} from '../../support/grooves.ts';
import { meter } from '../../support/music.ts';
import { seededRandom } from '../../support/random.ts';

const EXACT: Playing = { bars: 8, bpm: 120, jitterSec: 0, missing: 0, added: 0 };

const ROCK = groove('4/4', {
  kick: 'x. .. x. ..',
  snare: '.. x. .. x.',
  'hi-hat': 'xx xx xx xx',
});

function folded(played: Groove, playing: Playing = EXACT, seed = 1): Fold {
  const { strokes, beats } = playGroove(played, playing, seededRandom(seed));
  return foldStrokes(strokes, beats, played.meter);
}

function longShare(ratio: number): number {
  return ratio / (1 + ratio);
}

/** Quarter beats in ticks, so many bars of 4/4 with the end. */
function beatsInTicks(bars: number): number[] {
  return Array.from({ length: 4 * bars + 1 }, (_, i) => i * 480);
}

/** A stroke at one place of each of eight bars of 4/4, in ticks, where there is something to say. */
function everyBar(
  at: number,
  says: (bar: number) => Omit<HeardStroke, 'at'> | undefined,
): HeardStroke[] {
  return Array.from({ length: 8 }, (_, bar) => ({ bar, stroke: says(bar) })).flatMap(
    ({ bar, stroke }) => (stroke ? [{ at: bar * 1920 + at, ...stroke }] : []),
  );
}

describe('what it finds', () => {
  it('finds the steps, the divisions and the shortest period of an exact groove', () => {
    const fold = folded(ROCK);
    expect(foundSteps(fold).toSorted()).toEqual(trueSteps(ROCK).toSorted());
    expect(fold).toMatchObject({ bars: 1, divisions: [2, 2, 2, 2], swing: { ratio: 1 } });
    expect(fold.barsAgreeing).toBe(8);
    expect(fold.sources.every((s) => s.steps.every((step) => step.presence === 1))).toBe(true);
  });

  it('finds two bars where one stroke of sixteen differs between them', () => {
    const pushed = groove('4/4', {
      kick: 'x. .. x. .. | x. .. x. .x',
      snare: '.. x. .. x. | .. x. .. x.',
    });
    expect(folded(pushed).bars).toBe(2);
  });

  it('finds four bars where only the last is different', () => {
    const turned = groove('4/4', {
      left: 'x. .. x. .. | x. .. x. .. | x. .. x. .. | x. .x .x ..',
      right: '.. x. .. x. | .. x. .. x. | .. x. .. x. | .. x. xx xx',
    });
    expect(folded(turned, UNEVEN, 5).bars).toBe(4);
  });

  it('does not take what was played by chance for a longer pattern', () => {
    const loose = { ...UNEVEN, missing: 0.25, added: 0.25 };
    const periods = [1, 2, 3, 4, 5, 6, 7, 8].map((seed) => folded(ROCK, loose, seed).bars);
    expect(periods).toEqual([1, 1, 1, 1, 1, 1, 1, 1]);
  });

  it('divides one beat in three beside beats in two and in four', () => {
    const mixed = groove('4/4', { hand: 'xx x..x xxx x.' });
    expect(folded(mixed, UNEVEN).divisions).toEqual([2, 4, 3, 1]);
  });

  it('divides the unequal beats of 7/8', () => {
    const played = groove('7/8', { left: 'x. x. x..', right: '.x .x .xx' });
    const fold = folded(played, UNEVEN);
    expect(fold.divisions).toEqual([2, 2, 3]);
    expect(fMeasure(foundSteps(fold), trueSteps(played))).toBe(1);
  });

  it.each([
    ['eighth', 2],
    ['eighth', 1.4],
    ['sixteenth', 1.5],
  ] as const)('finds swung %ss with the ratio %f', (level, ratio) => {
    const line = level === 'eighth' ? 'xx x. xx x.' : 'x.xx x.x. x.xx x.x.';
    const played = groove('4/4', { kick: 'x x x x', ride: line }, { level, ratio });
    const { swing } = folded(played, UNEVEN, 3);
    expect(swing.level).toBe(level);
    expect(Math.abs(longShare(swing.ratio) - longShare(ratio))).toBeLessThanOrEqual(0.03);
  });

  it('hears unequal eighths as triplets where the middle one is played', () => {
    const played = groove('4/4', { left: 'x.. ... x.. ...', right: 'xxx xxx xxx xxx' });
    const fold = folded(played, UNEVEN, 2);
    expect(fold).toMatchObject({ divisions: [3, 3, 3, 3], swing: { ratio: 1 } });
  });

  it('hears them as swing where nobody plays the middle one', () => {
    const played = groove('4/4', { left: 'x.. x.. x.. x..', right: 'x.x x.x x.x x.x' });
    const fold = folded(played, UNEVEN, 2);
    expect(fold.divisions).toEqual([2, 2, 2, 2]);
    expect(Math.abs(longShare(fold.swing.ratio) - 2 / 3)).toBeLessThanOrEqual(0.03);
  });

  it('calls eighths straight that are late by chance', () => {
    const ratios = [1, 2, 3, 4, 5, 6].map((seed) => folded(ROCK, UNEVEN, seed).swing.ratio);
    expect(ratios).toEqual([1, 1, 1, 1, 1, 1]);
  });
});

describe('what must not matter', () => {
  it.each([-0.04, -0.01, 0.01, 0.04])('takes off a latency of %f s', (latencySec) => {
    const fold = folded(ROCK, { ...UNEVEN, latencySec }, 4);
    expect(fMeasure(foundSteps(fold), trueSteps(ROCK))).toBe(1);
    const ticksPerSecond = (480 * UNEVEN.bpm) / 60;
    expect(Math.abs(fold.latency / ticksPerSecond - latencySec)).toBeLessThan(0.005);
  });

  it('follows beats whose tempo drifts by a tenth', () => {
    const fold = folded(ROCK, { ...UNEVEN, drift: 0.1 }, 6);
    expect(fMeasure(foundSteps(fold), trueSteps(ROCK))).toBe(1);
  });

  it('keeps a fill out of the groove and says which bar it is', () => {
    const { strokes, beats } = playGroove(ROCK, EXACT, seededRandom(1));
    const bar = 2;
    const fill = Array.from({ length: 8 }, (_, i) => ({
      at: 3 * bar + i / 8,
      strength: 0.9,
      source: 'snare',
    }));
    const odd = strokes.filter(({ at }) => at < 3 * bar || at >= 4 * bar);
    const fold = foldStrokes([...odd, ...fill], beats, ROCK.meter);
    expect(foundSteps(fold).toSorted()).toEqual(trueSteps(ROCK).toSorted());
    expect(fold.barsAgreeing).toBe(7);
    expect(fold.agreement.findIndex((a) => a < 0.7)).toBe(3);
    // Only the agreeing bars count, so what the fill left out is still always played.
    expect(fold.sources[0]?.steps[0]?.presence).toBe(1);
  });

  it('gives the same for ticks and for seconds', () => {
    const { strokes, beats } = playGroove(ROCK, EXACT, seededRandom(1));
    const inTicks = strokes.map((stroke) => ({ ...stroke, at: stroke.at * 960 }));
    const fold = foldStrokes(
      inTicks,
      beats.map((beat) => beat * 960),
      ROCK.meter,
    );
    expect(foundSteps(fold)).toEqual(foundSteps(folded(ROCK)));
  });

  it('does not need the end of the last bar nor strokes in order', () => {
    const { strokes, beats } = playGroove(ROCK, EXACT, seededRandom(1));
    const fold = foldStrokes(strokes.toReversed(), beats.slice(0, -1), ROCK.meter);
    expect(fold.agreement).toHaveLength(8);
    expect(foundSteps(fold).toSorted()).toEqual(trueSteps(ROCK).toSorted());
  });
});

describe('what it says of each step', () => {
  const beats = beatsInTicks(8);

  function stepsOf(strokes: readonly HeardStroke[]): Fold['sources'][number]['steps'] {
    return foldStrokes(strokes, beats, meter('4/4')).sources[0]?.steps ?? [];
  }

  it('gives presence, mean strength and middle length', () => {
    const steady = [0, 480, 1440].flatMap((at) => everyBar(at, () => ({ strength: 0.8 })));
    const often = everyBar(960, (bar) =>
      bar < 6 ? { strength: bar < 3 ? 0.4 : 0.6, length: 100 + bar } : undefined,
    );
    const step = stepsOf([...steady, ...often]).find(({ at }) => at === 960);
    expect(step).toMatchObject({ presence: 0.75, length: 103 });
    expect(step?.strength).toBeCloseTo(0.5, 9);
  });

  it('gives the mean deviation of a step that is always late', () => {
    const steady = [0, 480, 1440].flatMap((at) => everyBar(at, () => ({ strength: 0.8 })));
    const late = everyBar(960 + 16, () => ({ strength: 0.8 }));
    const fold = foldStrokes([...steady, ...late], beats, meter('4/4'));
    const deviations = fold.sources[0]?.steps.map((step) => step.deviation + fold.latency);
    expect(deviations?.map((d) => Math.round(d))).toEqual([0, 0, 16, 0]);
  });

  it('gives what is played most often', () => {
    const strokes = everyBar(0, (bar) => ({
      strength: 0.8,
      what: bar % 4 === 1 ? ['third'] : ['fifth'],
    }));
    expect(stepsOf(strokes)[0]?.what).toEqual(['fifth']);
  });

  it('makes two bars of one rhythm with two tones', () => {
    const strokes = [0, 960].flatMap((at) =>
      everyBar(at, (bar) => ({ strength: 0.8, what: bar % 2 === 1 ? ['fifth'] : ['root'] })),
    );
    const fold = foldStrokes(strokes, beats, meter('4/4'));
    expect(fold.bars).toBe(2);
    expect(fold.sources[0]?.steps.map((step) => step.what[0])).toEqual([
      'root',
      'root',
      'fifth',
      'fifth',
    ]);
  });

  it('counts a stroke just before the first beat to the first bar', () => {
    const strokes = everyBar(0, () => ({ strength: 0.8 })).map((s) => ({ ...s, at: s.at - 12 }));
    expect(stepsOf(strokes)).toMatchObject([{ at: 0, presence: 1 }]);
  });

  it('folds onto as many bars as asked', () => {
    const { strokes, beats: played } = playGroove(ROCK, EXACT, seededRandom(1));
    const fold = foldStrokes(strokes, played, ROCK.meter, { period: 2 });
    expect(fold.bars).toBe(2);
    expect(fold.divisions).toEqual([2, 2, 2, 2, 2, 2, 2, 2]);
    expect(foundSteps(fold)).toHaveLength(2 * trueSteps(ROCK).length);
  });
});

describe('at the edges', () => {
  it('is empty without strokes, and without a whole bar', () => {
    const nothing = { bars: 1, divisions: [1, 1, 1, 1], sources: [], barsAgreeing: 0 };
    expect(foldStrokes([], beatsInTicks(4), meter('4/4'))).toMatchObject(nothing);
    expect(foldStrokes([{ at: 0, strength: 1 }], [0, 480], meter('4/4'))).toMatchObject(nothing);
  });

  it('takes a single bar as it is', () => {
    const fold = folded(ROCK, { ...EXACT, bars: 1 });
    expect(foundSteps(fold).toSorted()).toEqual(trueSteps(ROCK).toSorted());
    expect(fold.divisions).toEqual(trueDivisions(ROCK));
  });

  it('refuses beats that do not ascend', () => {
    expect(() => foldStrokes([], [0, 480, 480], meter('4/4'))).toThrow('ascend');
  });
});
