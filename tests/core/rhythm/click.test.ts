import { describe, expect, it } from 'vitest';
import {
  BETWEEN_KEY,
  CLICK_KEYS,
  CLICK_SOUNDS,
  clickTicks,
  clickTrack,
  type Subdivision,
  subdivisionsOf,
  subdivisionTicks,
} from '../../../src/core/rhythm/click.ts';
import { drumPartOf } from '../../../src/core/rhythm/drumVoices.ts';
import { barTicks, beatStarts } from '../../../src/core/time/meter.ts';
import { meter } from '../../support/music.ts';
import { chartTimeline } from '../../support/patterns.ts';

const starts = (notes: readonly { startTick: number }[]) => notes.map((note) => note.startTick);

const EVERY_METER = [
  '2/2',
  '3/2',
  '2/4',
  '3/4',
  '4/4',
  '5/4',
  '7/4',
  '3/8',
  '5/8',
  '6/8',
  '7/8',
  '8/8',
  '9/8',
  '12/8',
  '2+2+3/16',
  '9/16',
  '1/8',
];

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
      112, 80, 100, 80,
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

describe('what ticks between the beats', () => {
  it.each([
    ['4/4', ['eighths', 'triplets', 'sixteenths']],
    ['3/4', ['eighths', 'triplets', 'sixteenths']],
    ['2/2', ['quarters', 'eighths', 'triplets', 'sixteenths']],
    ['6/8', ['eighths', 'sixteenths']],
    ['7/8', ['eighths', 'sixteenths']],
    ['2+2+3/16', ['sixteenths']],
  ] as const)('in %s can be %j', (text, values) =>
    expect(subdivisionsOf(meter(text))).toEqual(values),
  );

  it.each([
    ['3/4', 'eighths', [0, 240, 480, 720, 960, 1200]],
    ['3/4', 'triplets', [0, 160, 320, 480, 640, 800, 960, 1120, 1280]],
    ['6/8', 'eighths', [0, 240, 480, 720, 960, 1200]],
    ['5/8', 'eighths', [0, 240, 480, 720, 960]],
    ['6/8', 'triplets', []],
    ['4/4', 'quarters', []],
  ] as const)('in %s, %s, stands at %j', (text, value, ticks) =>
    expect(subdivisionTicks(meter(text), value)).toEqual(ticks),
  );

  it.each(EVERY_METER)('divides %s evenly, every felt beat among its places', (text) => {
    const within = meter(text);
    for (const value of subdivisionsOf(within)) {
      const ticks = [...subdivisionTicks(within, value), barTicks(within)];
      const gaps = ticks.slice(1).map((tick, i) => tick - ticks[i]!);
      expect(new Set(gaps).size).toBe(1);
      expect(ticks).toEqual(expect.arrayContaining(beatStarts(within)));
      expect(ticks.length - 1).toBeGreaterThan(beatStarts(within).length);
    }
  });

  const clicked = (beats: 'all' | 'back-beat' | readonly number[], subdivision: Subdivision) =>
    clickTrack(chartTimeline('| C |'), { beats, subdivision }).map(
      ({ startTick, keyNumber, velocity }) => [startTick, keyNumber, velocity],
    );

  it('is softer than any beat, with a sound of its own', () =>
    expect(clicked('all', 'eighths')).toEqual([
      [0, 76, 112],
      [240, 42, 60],
      [480, 77, 80],
      [720, 42, 60],
      [960, 77, 100],
      [1200, 42, 60],
      [1440, 77, 80],
      [1680, 42, 60],
    ]));

  it('goes on softly over the beats that are not accented', () => {
    const loud = clicked('back-beat', 'eighths').filter(([, key]) => key !== BETWEEN_KEY);
    expect(loud.map(([tick]) => tick)).toEqual([480, 1440]);
    expect(clicked('back-beat', 'eighths')).toHaveLength(8);
    expect(clicked([], 'sixteenths')).toHaveLength(16);
  });

  it('is left out in bars whose meter does not take it', () => {
    const track = clickTrack(chartTimeline('| C |', '6/8'), {
      beats: 'all',
      subdivision: 'triplets',
    });
    expect(starts(track)).toEqual([0, 720]);
  });
});

describe('the sound of the click', () => {
  it('is a pair of keys of the percussion map, each key once, in every sound', () => {
    const keys = CLICK_SOUNDS.flatMap((sound) => Object.values(CLICK_KEYS[sound]));
    expect(new Set([...keys, BETWEEN_KEY]).size).toBe(2 * CLICK_SOUNDS.length + 1);
    expect(keys.every((key) => drumPartOf(key) !== undefined)).toBe(true);
  });

  it('is the one that is chosen', () => {
    const track = clickTrack(chartTimeline('| C |'), { beats: 'all', sound: 'wood' });
    expect(track.map((click) => click.keyNumber)).toEqual([75, 37, 37, 37]);
  });
});

describe('the stresses of the meter', () => {
  it.each([
    ['5/4', [112, 80, 80, 100, 80]],
    ['2+3/4', [112, 80, 100, 80, 80]],
    ['12/8', [112, 80, 100, 80]],
    ['7/8', [112, 80, 80]],
    ['3/4', [112, 80, 80]],
  ])('are heard in %s as %j', (text, velocities) =>
    expect(clickTrack(chartTimeline('| C |', text)).map((click) => click.velocity)).toEqual(
      velocities,
    ),
  );
});
