import { describe, expect, it } from 'vitest';
import { freeBeats, meanBpm } from '../../../src/core/rhythm/freeBeats.ts';
import {
  beatsUnder,
  countedOn,
  foldTaps,
  TAP_STRENGTH,
  tappedStrokes,
  tickAtMs,
} from '../../../src/core/rhythm/taps.ts';
import { barTicks, tempoBeatTicks } from '../../../src/core/time/meter.ts';
import {
  fMeasure,
  type Groove,
  groove,
  playGroove,
  trueDivisions,
  trueSteps,
} from '../../support/grooves.ts';
import { meter } from '../../support/music.ts';
import { seededRandom } from '../../support/random.ts';

const SWUNG = { level: 'eighth', ratio: 2 } as const;

const GROOVES: readonly (readonly [name: string, groove: Groove])[] = [
  ['steady eighths', groove('4/4', { t: 'xx xx xx xx' })],
  ['a backbeat', groove('4/4', { t: '.. x. .. x.' })],
  ['off-beats', groove('4/4', { t: '.x .x .x .x' })],
  ['a kick with pushes', groove('4/4', { t: 'x. .x x. .x' })],
  ['the son clave', groove('4/4', { t: 'x. .x .. x. | .. x. x. ..' })],
  ['syncopated sixteenths', groove('4/4', { t: 'x..x ..x. .x.. x.x.' })],
  ['a jig', groove('6/8', { t: 'x.x xxx' })],
  ['a waltz', groove('3/4', { t: 'x. xx x.' })],
  ['swung eighths', groove('4/4', { t: 'xx x. xx xx' }, SWUNG)],
  ['triplets', groove('4/4', { t: 'xxx x. xxx x.' })],
];

const SOURCE = { id: 't', name: 'Tapped', part: 'percussion' } as const;

/** How somebody taps: late by a constant (early below 0), uneven (a standard deviation), at a tempo. */
type Tapper = { readonly offsetSec: number; readonly unevenSec: number; readonly bpm: number };

function tapperOf(seed: number): Tapper {
  const random = seededRandom(seed * 7919 + 1);
  return {
    offsetSec: -0.04 + 0.08 * random.uniform(),
    unevenSec: 0.01 + 0.015 * random.uniform(),
    bpm: 65 + 65 * random.uniform(),
  };
}

/** Sixteen bars of a groove as a tapper taps them with a click that gets 2 % faster, every twentieth tap missing. */
function tapped(played: Groove, { offsetSec, unevenSec, bpm }: Tapper, seed: number, bars = 16) {
  const taking = (jitterSec: number, latencySec: number) =>
    playGroove(
      played,
      { bars, bpm, jitterSec, latencySec, missing: 0.05, added: 0, drift: 0.02 },
      seededRandom(seed),
    );
  const { strokes, beats } = taking(unevenSec, offsetSec);
  const meant = taking(0, 0).strokes;
  const late = strokes.reduce((sum, { at }, i) => sum + at - meant[i]!.at, 0) / strokes.length;
  const taps = strokes.map(({ at }) => ({ atSec: at }));
  return { taps, beats, lateSec: late };
}

function foundSteps(rhythm: ReturnType<typeof foldTaps>): string[] {
  return (rhythm?.groove.sources ?? []).flatMap(({ id, strokes }) =>
    strokes.map((stroke) => `${id} ${stroke.at}`),
  );
}

const TAPPERS = [1, 2, 3, 4, 5, 6];

describe.each(GROOVES)('tapping %s to a click', (_name, played) => {
  it.each(TAPPERS)('gives what was meant and how late it was, tapper %i', (seed) => {
    const { taps, beats, lateSec } = tapped(played, tapperOf(seed), seed);
    const rhythm = foldTaps(tappedStrokes(taps), beats, played.meter, SOURCE);
    expect(fMeasure(foundSteps(rhythm), trueSteps(played))).toBeGreaterThanOrEqual(0.97);
    expect(Math.abs(rhythm!.latencySec - lateSec)).toBeLessThan(0.005);
  });
});

/** Tappers as early, as late, as even and as uneven as any that are promised for. */
const EXTREMES: readonly Tapper[] = [-0.04, 0.04].flatMap((offsetSec) =>
  [0.01, 0.025].map((unevenSec) => ({ offsetSec, unevenSec, bpm: 100 })),
);

describe.each(GROOVES)('tapping %s to a click at the limits', (_name, played) => {
  it.each(EXTREMES)(
    'gives what was meant and how late it was: $offsetSec s, even to $unevenSec s',
    (tapper) => {
      const { taps, beats, lateSec } = tapped(played, tapper, 17);
      const rhythm = foldTaps(tappedStrokes(taps), beats, played.meter, SOURCE);
      expect(fMeasure(foundSteps(rhythm), trueSteps(played))).toBeGreaterThanOrEqual(0.97);
      expect(Math.abs(rhythm!.latencySec - lateSec)).toBeLessThan(0.005);
    },
  );
});

describe('the offset of simulated tappers', () => {
  it('is on average the one they were given', { timeout: 30_000 }, () => {
    const errors = GROOVES.flatMap(([, played]) =>
      TAPPERS.map((seed) => {
        const tapper = tapperOf(seed + 50);
        const { taps, beats } = tapped(played, tapper, seed + 50);
        const rhythm = foldTaps(tappedStrokes(taps), beats, played.meter, SOURCE);
        return rhythm!.latencySec - tapper.offsetSec;
      }),
    );
    expect(Math.abs(errors.reduce((sum, e) => sum + e, 0) / errors.length)).toBeLessThan(0.002);
  });
});

describe.each(GROOVES)('tapping %s without a click', (_name, played) => {
  it.each(TAPPERS)('gives what was meant and the tempo, tapper %i', (seed) => {
    const tapper = tapperOf(seed);
    const { taps, beats } = tapped(played, tapper, seed, 8);
    const strokes = tappedStrokes(taps);
    const trueBpm = meanBpm(beats, played.meter);
    const first = trueSteps(played)[0]!.split(' ')[1];
    const firstTick = Number(first);
    const found = freeBeats(
      strokes.map(({ at }) => at),
      {
        meter: played.meter,
        aboutBpm: trueBpm * (0.9 + 0.2 * seededRandom(seed).uniform()),
        firstTick,
      },
    );
    const rhythm = foldTaps(strokes, found!, played.meter, SOURCE);
    expect(fMeasure(foundSteps(rhythm), trueSteps(played))).toBeGreaterThanOrEqual(0.97);
    expect(Math.abs(meanBpm(found!, played.meter) / trueBpm - 1)).toBeLessThan(0.015);
  });
});

describe('a tempo out of taps alone', () => {
  const about = { meter: meter('4/4'), aboutBpm: 120, firstTick: 0 };

  it('is not to be had from three taps, or from less than a round and a half', () => {
    expect(freeBeats([0, 0.5, 1], about)).toBeUndefined();
    expect(freeBeats([0, 0.5, 0.9, 1.4], about)).toBeUndefined();
  });

  it('is that of even taps', () => {
    const taps = Array.from({ length: 17 }, (_, i) => 3 + i * 0.52);
    const beats = freeBeats(taps, about)!;
    expect(beats[0]).toBeCloseTo(3, 3);
    expect(meanBpm(beats, about.meter)).toBeCloseTo(60 / 0.52, 3);
  });

  it('counts dotted quarters in 6/8', () => {
    const taps = Array.from({ length: 13 }, (_, i) => i * 0.75);
    const beats = freeBeats(taps, { meter: meter('6/8'), aboutBpm: 78, firstTick: 0 })!;
    expect(meanBpm(beats, meter('6/8'))).toBeCloseTo(80, 3);
  });

  it('begins in the bar before where the first tap is an upbeat', () => {
    const taps = Array.from({ length: 12 }, (_, i) => 10 + 2 * i);
    const beats = freeBeats(taps, { ...about, firstTick: 1440 })!;
    expect(beats[0]).toBeCloseTo(8.5, 3);
  });
});

describe('taps as strokes', () => {
  it('are one accent where two fingers come together, and two strokes where they do not', () => {
    const strokes = tappedStrokes([{ atSec: 1.03 }, { atSec: 1 }, { atSec: 1.5 }, { atSec: 1.6 }]);
    expect(strokes.map(({ at }) => at)).toEqual([expect.closeTo(1.015), 1.5, 1.6]);
    expect(strokes.map(({ strength }) => strength)).toEqual([
      TAP_STRENGTH.both,
      TAP_STRENGTH.one,
      TAP_STRENGTH.one,
    ]);
  });

  it('are as long as a finger stays down, if it stays at all', () => {
    const strokes = tappedStrokes([
      { atSec: 1, untilSec: 1.08 },
      { atSec: 2, untilSec: 2.6 },
      { atSec: 3 },
    ]);
    expect(strokes.map(({ length }) => length)).toEqual([
      undefined,
      expect.closeTo(0.6),
      undefined,
    ]);
  });

  it('of a whole chord is one, as strong as its hardest key', () => {
    const chord = [0.3, 0.7, 0.5].map((strength, i) => ({ atSec: 1 + i * 0.01, strength }));
    expect(tappedStrokes([...chord, { atSec: 2, strength: 0.2 }])).toEqual([
      { at: expect.closeTo(1.01, 12), strength: 0.7 },
      { at: 2, strength: 0.2 },
    ]);
  });

  it('of nothing are none', () => expect(tappedStrokes([])).toEqual([]));
});

function strokesAt(...times: number[]) {
  return times.map((time) => ({ at: time, strength: 1 }));
}

describe('the click under taps', () => {
  it('begins with the round of the first tap and ends with the bar of the last', () => {
    expect(beatsUnder(strokesAt(4.1, 9.5), meter('2/4'), 2, 2)).toEqual([4, 5, 6, 7, 8, 9, 10]);
    expect(beatsUnder(strokesAt(6.1), meter('2/4'), 2, 2)).toEqual([4, 5, 6, 7, 8]);
  });

  it('takes a tap just before a round into it', () =>
    expect(beatsUnder(strokesAt(3.85, 5), meter('2/4'), 2, 2)).toEqual([4, 5, 6]));

  it('is none under no taps', () => expect(beatsUnder([], meter('4/4'), 1, 2)).toEqual([]));

  it('folds taps in a bar of the pattern, not in the bar they begin in', () => {
    const clave = groove('4/4', { t: 'x. .x .. x. | .. x. x. ..' });
    const { taps } = tapped(clave, { offsetSec: 0, unevenSec: 0.01, bpm: 120 }, 3, 8);
    const secondBarOn = taps.filter(({ atSec }) => atSec > 1.9);
    const strokes = tappedStrokes(secondBarOn);
    const beats = beatsUnder(strokes, clave.meter, 2, 2);
    const rhythm = foldTaps(strokes, beats, clave.meter, SOURCE);
    expect(foundSteps(rhythm)).toEqual(trueSteps(clave));
    expect(rhythm?.groove.divisions).toEqual(trueDivisions(clave));
  });
});

describe('what taps come to', () => {
  const bar = Array.from({ length: 4 }, (_, i) => i * 2);
  const beats = Array.from({ length: 17 }, (_, i) => i * 0.5);

  it('sounds the root in a bass and nothing pitched on a drum', () => {
    const strokes = tappedStrokes(bar.map((atSec) => ({ atSec })));
    const what = (part: 'bass' | 'snare') =>
      foldTaps(strokes, beats, meter('4/4'), { id: 'x', name: 'X', part })?.groove.sources[0]
        ?.strokes[0]?.what;
    expect(what('bass')).toEqual(['root']);
    expect(what('snare')).toEqual(['unpitched']);
  });

  it('is nothing where nothing was tapped', () =>
    expect(foldTaps([], beats, meter('4/4'), SOURCE)).toBeUndefined());

  it('tells the bars tapped, how many agree, and where every tap lies without the lateness', () => {
    const strokes = tappedStrokes(bar.map((atSec) => ({ atSec: atSec + 0.02 })));
    const rhythm = foldTaps(strokes, beats, meter('4/4'), SOURCE);
    expect(rhythm).toMatchObject({ barsTapped: 4, barsAgreeing: 4 });
    expect(rhythm?.latencySec).toBeCloseTo(0.02, 3);
    expect(rhythm?.places.map(Math.round)).toEqual([0, 1920, 3840, 5760]);
  });
});

describe('the place of a tap in music that is heard', () => {
  const tempo = tempoBeatTicks(meter('4/4')) / 500;

  it('is the mean of what all looks say', () => {
    const looks = [
      { ms: 0, tick: 10 },
      { ms: 100, tick: 96 },
    ];
    expect(tickAtMs(looks, 500, tempo)).toBeCloseTo(485, 6);
  });

  it('is not known without a look', () => expect(() => tickAtMs([], 0, tempo)).toThrow());

  it('is counted on over the rounds', () => {
    const round = barTicks(meter('4/4'));
    expect(countedOn(30, 1900, round)).toBe(1950);
    expect(countedOn(1900, 1930, round)).toBe(1900);
    expect(countedOn(1900, 3850, round)).toBe(3820);
  });
});
