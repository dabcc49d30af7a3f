import { describe, expect, it } from 'vitest';
import { clickTicks, clickTrack, countIn } from '../../../src/core/rhythm/click.ts';
import { meter } from '../../support/music.ts';
import { chartTimeline } from '../../support/patterns.ts';

const starts = (notes: readonly { startTick: number }[]) => notes.map((note) => note.startTick);

describe('the click', () => {
  it('falls on every felt beat of every bar', () =>
    expect(starts(clickTrack(chartTimeline('| C | F |', '3/4')))).toEqual([
      0, 480, 960, 1440, 1920, 2400,
    ]));

  it('counts dotted quarters in 6/8', () =>
    expect(starts(clickTrack(chartTimeline('| C |', '6/8')))).toEqual([0, 720]));

  // General MIDI percussion key map (docs/sources.md#percussion-map): 76 hi wood block, 77 low wood block.
  it('is the high wood block on the downbeat and the low one elsewhere', () => {
    const clicks = clickTrack(chartTimeline('| C |'));
    expect(clicks.map((click) => click.keyNumber)).toEqual([76, 77, 77, 77]);
    expect(clicks.every((click) => click.part === 'click')).toBe(true);
  });

  it('is loudest on the downbeat, then on the other stressed beat', () =>
    expect(clickTrack(chartTimeline('| C |')).map((click) => click.velocity)).toEqual([
      112, 80, 92, 80,
    ]));

  it.each([
    ['4/4', 'groups', [0, 960]],
    ['4/4', 'back-beat', [480, 1440]],
    ['4/4', 'downbeat', [0]],
    ['5/4', 'groups', [0, 1440]],
    ['3/4', 'back-beat', [480, 960]],
    ['6/8', 'back-beat', [720]],
    ['9/8', 'groups', [0]],
    ['12/8', 'groups', [0, 1440]],
    ['12/8', 'back-beat', [720, 2160]],
    ['7/8', 'all', [0, 480, 960]],
  ] as const)('in %s on %s falls on %j', (text, beats, ticks) =>
    expect(clickTicks(meter(text), beats)).toEqual(ticks),
  );

  it('falls on listed beats, as far as the bar has them', () =>
    expect(clickTicks(meter('4/4'), [1, 3, 7])).toEqual([480, 1440]));

  it('can be silent', () => expect(clickTicks(meter('4/4'), [])).toEqual([]));
});

describe('the count-in', () => {
  it('ends at tick 0 and begins so many bars before', () => {
    expect(starts(countIn(meter('4/4'), 1))).toEqual([-1920, -1440, -960, -480]);
    expect(starts(countIn(meter('6/8'), 2))).toEqual([-2880, -2160, -1440, -720]);
  });

  it('accents each of its downbeats', () =>
    expect(countIn(meter('2/4'), 2).map((click) => click.keyNumber)).toEqual([76, 77, 76, 77]));

  it('of no bars is nothing', () => expect(countIn(meter('4/4'), 0)).toEqual([]));
});
