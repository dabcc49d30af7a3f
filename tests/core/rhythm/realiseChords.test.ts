import { describe, expect, it } from 'vitest';
import type { Pattern } from '../../../src/core/rhythm/pattern.ts';
import { chartTimeline, noteLines, pattern, sectionsTimeline } from '../../support/patterns.ts';
import { left, played, withHits } from '../../support/playing.ts';

describe('a chord that changes', () => {
  const whole = pattern('4/4', { left: 'R---', right: 'C---' });

  it('is struck again in a held hit with a beat or more to go', () =>
    expect(left('| C / F / |', whole)).toEqual(['0+960 36', '960+960 41']));

  it('is struck again on the last beat too', () =>
    expect(left('| C / / F |', whole)).toEqual(['0+1440 36', '1440+480 41']));

  it('ends a hit of which less than a beat is left', () =>
    expect(left('| C F |', pattern('4/4', { left: '..R--...' }))).toEqual(['480+480 36']));

  it('is struck again at every change while the hit lasts', () =>
    expect(left('| C F G / |', whole)).toEqual(['0+480 36', '480+480 41', '960+960 43']));

  it('leaves a note that stays the same sounding', () =>
    expect(left('| C / Am/C / |', whole)).toEqual(['0+1920 36']));

  it('does not touch a short hit that is over before', () =>
    expect(left('| C / F / |', withHits(whole, { held: false }))).toEqual(['0+240 36']));

  it('counts the felt beat of the meter', () => {
    const timeline = chartTimeline('| C F |', '6/8');
    const long = pattern('6/8', { left: '...R--' });
    expect(noteLines(played(timeline, long))).toEqual(['720+720 41']);
    const tied: Pattern = { ...long, left: [{ ...long.left[0]!, at: 480, length: 720 }] };
    expect(noteLines(played(timeline, tied))).toEqual(['480+240 36']);
  });

  it('is played by hits that start with it', () =>
    expect(left('| C F G Am |', pattern('4/4', { left: 'RRRR' }))).toEqual([
      '0+480 36',
      '480+480 41',
      '960+480 43',
      '1440+480 45',
    ]));
});

/** The root on the last eighth of a bar, so many ticks long, anticipating. */
function pushed(length: number): Pattern {
  const p = pattern('4/4', { left: '.......R' });
  return { ...p, left: [{ ...p.left[0]!, length, anticipates: true }] };
}

describe('a hit that anticipates', () => {
  it('takes the chord it leads into from its start, over the bar line', () =>
    expect(left('| C | F |', pushed(720))).toEqual(['1680+720 41', '3600+240 41']));

  it('takes it when it ends where the chord changes', () =>
    expect(left('| C | F |', pushed(240))).toEqual(['1680+240 41', '3600+240 41']));

  it('keeps its chord when it ends before', () =>
    expect(left('| C | F |', pushed(120))).toEqual(['1680+120 36', '3600+120 41']));

  it('leads into the next section', () =>
    expect(noteLines(played(sectionsTimeline('| C |', '| F |'), pushed(480)))).toEqual([
      '1680+480 41',
      '3600+240 41',
    ]));

  it('leads round the end into the first chord only in a loop, and sounds on there', () => {
    expect(left('| C | F |', pushed(720), { loop: true })).toEqual(['1680+720 41', '3600+720 36']);
  });

  it('keeps its own chord before N.C.', () =>
    expect(left('| C | N.C. |', pushed(720))).toEqual(['1680+240 36']));
});

describe('N.C.', () => {
  it('is rest for both hands', () =>
    expect(
      noteLines(played(chartTimeline('| N.C. |'), pattern('4/4', { left: 'RRRR', right: 'CCCC' }))),
    ).toEqual([]));

  it('is over with the next chord, which a long hit then strikes', () =>
    expect(left('| N.C. / F / |', pattern('4/4', { left: 'R---' }))).toEqual(['960+960 41']));
});

describe('an approach note', () => {
  const p = pattern('4/4', { left: 'R--a' });

  it('lies a semitone under the bass that comes next', () =>
    expect(left('| C | F |', p)).toEqual([
      '0+1440 36',
      '1440+480 40',
      '1920+1440 41',
      '3360+480 40',
    ]));

  it('leads back into the first chord of a loop', () =>
    expect(left('| C | F |', p, { loop: true }).at(-1)).toBe('3360+480 35'));

  it('leads into the same chord where that goes on', () =>
    expect(left('| C / / / | % | F |', p)[1]).toBe('1440+480 35'));
});
