import * as fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import type { Pass } from '../../src/audio/pass.ts';
import { createPlayer, START_DELAY_SEC, TAIL_SEC } from '../../src/audio/player.ts';
import type { TimedNote } from '../../src/core/rhythm/note.ts';
import { type FakeTime, fakeTime } from '../support/fakeTime.ts';
import { timedNote } from '../support/sound.ts';

type Struck = { readonly note: TimedNote; readonly atSec: number; readonly nowSec: number };

const LATENCY_SEC = 0.03;

/** A player whose instruments only write down what is asked of them. */
function stagedPlayer(time: FakeTime = fakeTime(10)) {
  const struck: Struck[] = [];
  const silenced: number[] = [];
  const player = createPlayer(
    { clock: time.clock, outputLatencySec: () => LATENCY_SEC },
    {
      strike(note, atSec) {
        struck.push({ note, atSec, nowSec: time.clock() });
        return { startSec: atSec, endSec: atSec, release() {} };
      },
      silence: (atSec) => silenced.push(atSec),
      startQuietly() {},
    },
    time.timer,
  );
  /** When notes were struck, from the first pass's beginning, in whole milliseconds. */
  const times = () => struck.map(({ atSec }) => Math.round(1000 * (atSec - START)));
  return { time, player, struck, silenced, times };
}

const START = 10 + START_DELAY_SEC;

function pass(times: readonly number[], lengthSec: number, leadInSec = 0): Pass {
  return { notes: times.map((sec) => timedNote('right', sec)), leadInSec, lengthSec };
}

/** Gives the passes one after the other, then undefined. */
function inTurn<P extends Pass | undefined>(...passes: readonly P[]): () => P | undefined {
  const left = [...passes];
  return () => left.shift();
}

const same = (sec: number) => sec;

describe('playing', () => {
  it('lets passes follow without a gap, each lead-in taking its own time', () => {
    const { player, time, times } = stagedPlayer();
    player.play(inTurn(pass([-0.5, 0, 0.5], 1, 1), pass([0, 0.5], 1), pass([-0.25, 0], 1, 0.5)));
    time.pass(6);
    expect(times()).toEqual([500, 1000, 1500, 2000, 2500, 3250, 3500]);
  });

  it('asks for the next pass before the look-ahead reaches the end of the last', () => {
    const { player, time } = stagedPlayer();
    const asked: number[] = [];
    player.play(() => {
      asked.push(time.clock() - START);
      return pass([0], 2);
    });
    time.pass(4);
    expect(asked.length).toBe(3);
    expect(asked[1]).toBeLessThan(2 - 0.2);
    expect(asked[1]).toBeGreaterThan(2 - 0.35);
  });

  it('plays passes shorter than the look-ahead', () => {
    const { player, time, times } = stagedPlayer();
    player.play(inTurn(...Array.from({ length: 6 }, () => pass([0, 0.02], 0.05))));
    time.pass(3);
    expect(times()).toEqual([0, 20, 50, 70, 100, 120, 150, 170, 200, 220, 250, 270]);
  });

  it('strikes everything before it is due, also while every other tick is missing', () => {
    const { player, time, struck } = stagedPlayer();
    const eighths = Array.from({ length: 16 }, (_, i) => i / 8);
    player.play(inTurn(pass(eighths, 2), pass(eighths, 2)));
    for (let i = 0; i < 60; i++) time.stall(0.09);
    expect(struck.length).toBe(32);
    expect(struck.every(({ atSec, nowSec }) => nowSec <= atSec)).toBe(true);
    expect(player.statistics()).toEqual({ struck: 32, late: 0, leftOut: 0, worstLateSec: 0 });
  });

  it('leaves out what is much too late, goes on in time, and says so', () => {
    const { player, time, times } = stagedPlayer();
    player.play(inTurn(pass([0, 0.5, 1, 1.5, 2, 2.5], 3)));
    time.stall(START_DELAY_SEC + 1.6);
    time.pass(2);
    expect(times()).toEqual([0, 1500, 2000, 2500]);
    expect(player.statistics()).toMatchObject({ struck: 4, late: 3, leftOut: 2 });
    expect(player.statistics().worstLateSec).toBeCloseTo(1.1, 6);
  });

  it('refuses a pass without length', () => {
    const { player } = stagedPlayer();
    expect(() => player.play(inTurn(pass([0], 0)))).toThrow('a pass must last');
  });
});

describe('the end', () => {
  it('comes when the last notes have died away, once, and the timer rests', () => {
    const { player, time } = stagedPlayer();
    let ends = 0;
    const forget = player.onEnd(() => ends++);
    player.play(inTurn(pass([0], 1)));
    time.pass(START_DELAY_SEC + 1);
    expect(ends).toBe(0);
    expect(player.position()).toBeDefined();
    time.pass(TAIL_SEC + 0.1);
    expect(ends).toBe(1);
    expect(player.position()).toBeUndefined();
    expect(time.isTicking()).toBe(false);
    forget();
    player.play(inTurn(pass([0], 1)));
    time.pass(5);
    expect(ends).toBe(1);
  });

  it('also comes when there is nothing to play at all', () => {
    const { player, time } = stagedPlayer();
    let ends = 0;
    player.onEnd(() => ends++);
    player.play(() => undefined);
    time.pass(2);
    expect(ends).toBe(1);
  });

  it('may start something new', () => {
    const { player, time, struck } = stagedPlayer();
    player.onEnd(() => player.play(inTurn(pass([0], 1))));
    player.play(inTurn(pass([0], 1)));
    time.pass(4);
    expect(struck.length).toBe(2);
  });
});

describe('stopping', () => {
  it('silences at once and strikes nothing more', () => {
    const { player, time, struck, silenced } = stagedPlayer();
    player.play(() => pass([0, 0.5], 1));
    time.pass(1);
    const before = struck.length;
    player.stop();
    expect(silenced.at(-1)).toBe(time.clock());
    time.pass(3);
    expect(struck.length).toBe(before);
    expect(player.position()).toBeUndefined();
  });

  it('tells nobody that play-back has ended', () => {
    const { player, time } = stagedPlayer();
    let ends = 0;
    player.onEnd(() => ends++);
    player.play(inTurn(pass([0], 1)));
    player.stop();
    time.pass(5);
    expect(ends).toBe(0);
  });

  it('works from within the request for a pass', () => {
    const { player, time, struck } = stagedPlayer();
    player.play(() => {
      player.stop();
      return pass([0], 1);
    });
    time.pass(3);
    expect(struck).toEqual([]);
    expect(time.isTicking()).toBe(false);
  });

  it('is harmless when nothing plays, and revising after it changes nothing', () => {
    const { player, time, struck, silenced } = stagedPlayer();
    player.stop();
    player.revise(() => ({ pass: pass([0], 1), secondsIn: same }));
    player.dispose();
    time.pass(2);
    expect([struck, silenced]).toEqual([[], []]);
  });

  it('is what a second play begins with', () => {
    const { player, time, silenced, struck } = stagedPlayer();
    player.play(() => pass([0], 1));
    time.pass(0.5);
    player.play(inTurn({ ...pass([0.1], 1) }));
    time.pass(3);
    expect(silenced).toEqual([10, 10.5]);
    expect(struck.map(({ atSec }) => atSec)).toEqual([START, 10.5 + START_DELAY_SEC + 0.1]);
  });
});

describe('the position', () => {
  it('counts up from the lead-in, as heard, and goes from pass to pass', () => {
    const { player, time } = stagedPlayer();
    const [first, second] = [pass([0], 1, 0.5), pass([0], 2)];
    player.play(inTurn(first, second));
    const heard = () => {
      const position = player.position()!;
      return [position.passIndex, Math.round(1000 * position.sec)];
    };
    expect(heard()).toEqual([0, -500]);
    time.pass(START_DELAY_SEC + LATENCY_SEC + 0.25);
    expect(heard()).toEqual([0, -250]);
    time.pass(1.2);
    expect(heard()).toEqual([0, 950]);
    expect(player.position()!.pass).toBe(first);
    time.pass(0.1);
    expect(heard()).toEqual([1, 50]);
    expect(player.position()!.pass).toBe(second);
    time.pass(2.5);
    expect(heard()).toEqual([1, 2000]);
  });

  it('keeps to the old tempo until the new one is heard', () => {
    const { player, time } = stagedPlayer();
    player.play(inTurn(pass([], 4)));
    time.pass(START_DELAY_SEC + LATENCY_SEC + 1);
    player.revise(() => ({ pass: pass([], 8), secondsIn: (sec) => 2 * sec }));
    const sec = () => player.position()!.sec;
    expect(sec()).toBeCloseTo(1, 6);
    time.pass(0.2);
    expect(sec()).toBeCloseTo(1.2, 6);
    time.pass(0.03);
    expect(sec()).toBeCloseTo(2 * 1.23, 6);
    time.pass(0.2);
    expect(sec()).toBeCloseTo(2 * 1.23 + 0.2, 6);
  });
});

describe('revising', () => {
  it('takes everything after the look-ahead from the new pass', () => {
    const { player, time, times } = stagedPlayer();
    player.play(inTurn(pass([0, 0.5, 1, 1.5], 2)));
    time.pass(START_DELAY_SEC + 0.4);
    player.revise(() => ({ pass: pass([0, 0.25, 0.75, 1.25, 1.75], 2), secondsIn: same }));
    time.pass(4);
    expect(times()).toEqual([0, 500, 750, 1250, 1750]);
  });

  it('changes the tempo from the look-ahead on, and the passes after it follow', () => {
    const { player, time, times } = stagedPlayer();
    player.play(inTurn(pass([0, 1, 2, 3], 4), pass([0], 1)));
    time.pass(START_DELAY_SEC + 0.3);
    player.revise(() => ({ pass: pass([0, 0.5, 1, 1.5], 2), secondsIn: (sec) => sec / 2 }));
    time.pass(8);
    expect(times()).toEqual([0, 750, 1250, 1750, 2250]);
  });

  it('also replaces a pass that has been fetched but has not begun', () => {
    const { player, time, times } = stagedPlayer();
    player.play(inTurn(pass([0, 0.5], 1), pass([0, 0.5], 1)));
    time.pass(START_DELAY_SEC + 0.75);
    const seen: number[] = [];
    player.revise((_, passIndex) => {
      seen.push(passIndex);
      return { pass: pass([0, 0.25], 2), secondsIn: same };
    });
    time.pass(5);
    expect(seen).toEqual([0, 1]);
    expect(times()).toEqual([0, 500, 2000, 2250]);
  });

  it('leaves a pass as it is where told so', () => {
    const { player, time, times } = stagedPlayer();
    player.play(inTurn(pass([0, 0.5], 1), pass([0, 0.5], 1)));
    time.pass(START_DELAY_SEC + 0.75);
    player.revise(() => undefined);
    time.pass(5);
    expect(times()).toEqual([0, 500, 1000, 1500]);
  });

  it('may happen twice between two ticks', () => {
    const { player, time, times } = stagedPlayer();
    const beats = pass([0, 0.5, 1, 1.5], 2);
    player.play(inTurn(beats));
    time.pass(START_DELAY_SEC + 0.4);
    player.revise(() => ({ pass: pass([0.6], 2), secondsIn: same }));
    player.revise(() => ({ pass: beats, secondsIn: same }));
    time.pass(4);
    expect(times()).toEqual([0, 500, 1000, 1500]);
  });

  it('lets the next pass follow at once where a pass is cut shorter than it has been played', () => {
    const { player, time, times } = stagedPlayer();
    player.play(inTurn(pass([0, 0.5, 1, 1.5], 2), pass([0], 1)));
    time.pass(START_DELAY_SEC + 1);
    player.revise(() => ({ pass: pass([0, 0.5], 0.75), secondsIn: same }));
    time.pass(0.25 + LATENCY_SEC);
    expect(player.position()!.passIndex).toBe(1);
    time.pass(4);
    expect(times()).toEqual([0, 500, 1000, 1200]);
  });

  it('is told up to where a pass is fixed, and asks again for what follows the last', () => {
    const { player, time, times } = stagedPlayer();
    player.play(inTurn(pass([0, 1], 2), undefined!, pass([0], 1)));
    time.pass(START_DELAY_SEC + 1.75);
    const fixed: number[] = [];
    player.revise((old, _, fixedSec) => {
      fixed.push(fixedSec);
      return { pass: old, secondsIn: same };
    });
    expect(fixed).toEqual([expect.closeTo(1.95, 6)]);
    time.pass(3);
    expect(times()).toEqual([0, 1000, 2000]);
  });

  it('is dropped when its own function stops the player', () => {
    const { player, time, struck } = stagedPlayer();
    player.play(inTurn(pass([0, 1], 2)));
    time.pass(START_DELAY_SEC + 0.5);
    player.revise((old) => {
      player.stop();
      return { pass: old, secondsIn: same };
    });
    time.pass(3);
    expect(struck.length).toBe(1);
    expect(player.position()).toBeUndefined();
  });

  it('keeps what a pass sounds beyond its end', () => {
    const { player, time, times } = stagedPlayer();
    player.play(inTurn(pass([0, 1.3], 1), pass([0.5], 1)));
    time.pass(START_DELAY_SEC + 0.95);
    player.revise((old) => ({ pass: old, secondsIn: same }));
    time.pass(4);
    expect(times()).toEqual([0, 1300, 1500]);
  });

  it('sounds every note once, whatever swings, speeds up or slows down, and when', () => {
    const edit = fc.record({
      waitSec: fc.double({ min: 0.001, max: 0.6, noNaN: true }),
      swing: fc.double({ min: 0.5, max: 0.7, noNaN: true }),
      beatSec: fc.double({ min: 0.3, max: 0.6, noNaN: true }),
    });
    fc.assert(
      fc.property(fc.array(edit, { minLength: 1, maxLength: 25 }), (edits) => {
        const { player, time, struck } = stagedPlayer();
        let [swing, beatSec] = [0.5, 0.5];
        const made = () => ({ ...swungPass(swing, beatSec), beatSec });
        type Made = ReturnType<typeof made>;
        let fetched = 0;
        player.play(() => (fetched++ < 3 ? made() : undefined));
        for (const next of edits) {
          time.pass(next.waitSec);
          ({ swing, beatSec } = next);
          player.revise((old) => {
            const revised = made();
            const ratio = revised.beatSec / (old as Made).beatSec;
            return { pass: revised, secondsIn: (sec) => sec * ratio };
          });
        }
        time.pass(30);
        const inOnePass = Array.from({ length: 16 }, (_, i) => i * 240);
        expect(struck.map(({ note }) => note.patternTick)).toEqual(
          [inOnePass, inOnePass, inOnePass].flat(),
        );
      }),
    );
  });
});

/** Two bars of eighths on one key, the off-beats at a share of the beat; `patternTick` tells them apart. */
function swungPass(swing: number, beatSec: number): Pass {
  const notes = Array.from({ length: 16 }, (_, i) =>
    timedNote('right', (Math.floor(i / 2) + (i % 2) * swing) * beatSec, { patternTick: i * 240 }),
  );
  return { notes, leadInSec: 0, lengthSec: 8 * beatSec };
}

describe('what is told of past spans', () => {
  it('leaves out a span that gave way to a faster tempo before those that followed it', () => {
    const { player, time } = stagedPlayer();
    player.play(inTurn(pass([0], 4), ...Array.from({ length: 9 }, () => pass([0], 1))));
    player.revise(() => ({ pass: pass([0], 1), secondsIn: (sec) => sec / 4 }));
    for (let i = 0; i < 40; i++) {
      time.pass(0.1);
      const spans = player.spans();
      const indexes = spans.map(({ passIndex }) => passIndex);
      expect(indexes).toEqual(indexes.toSorted((a, b) => a - b));
      expect(indexes.at(-1)! - indexes[0]!).toBeLessThanOrEqual(indexes.length - 1);
    }
    expect(player.spans().every(({ pass: { lengthSec } }) => lengthSec === 1)).toBe(true);
  });

  it('keeps the last pass while its notes die away, so that what then follows is the next', () => {
    const { player, time } = stagedPlayer();
    player.play(inTurn<Pass | undefined>(pass([0], 1), undefined, pass([0], 2)));
    time.pass(START_DELAY_SEC + 2.2);
    player.revise(() => undefined);
    time.pass(0.5);
    expect(player.position()).toMatchObject({ passIndex: 1, pass: { lengthSec: 2 } });
  });

  it('does not grow with the edits of a long pass', () => {
    const { player, time } = stagedPlayer();
    player.play(() => pass([0, 300], 600));
    for (let i = 0; i < 300; i++) {
      player.revise((old) => ({ pass: { ...old }, secondsIn: same }));
      time.pass(0.1);
    }
    expect(player.spans().length).toBeLessThan(15);
  });
});
