import * as fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { drillTimeline } from '../../../src/core/practice/drill.ts';
import { endingPhrase } from '../../../src/core/rhythm/endingPhrase.ts';
import { FILL_KINDS, type FillKind } from '../../../src/core/rhythm/fillFigures.ts';
import { endingFills, type Fill } from '../../../src/core/rhythm/fills.ts';
import { HAND_LIMITS } from '../../../src/core/rhythm/handLimits.ts';
import {
  type Ending,
  endingBar,
  type Hit,
  lastBarHands,
  type Pattern,
  patternSteps,
  patternTicks,
} from '../../../src/core/rhythm/pattern.ts';
import { handLoad, type Strain } from '../../../src/core/rhythm/playable.ts';
import { realise } from '../../../src/core/rhythm/realise.ts';
import { barTicks, beatLengths, tempoBeatTicks } from '../../../src/core/time/meter.ts';
import type { Bpm } from '../../../src/core/time/tempoMap.ts';
import { voiceTimeline } from '../../../src/core/voicing/voiceTimeline.ts';
import { QUALITIES } from '../../support/chords.ts';
import { chord, valueOf } from '../../support/music.ts';
import { pattern } from '../../support/patterns.ts';
import { project } from '../../support/project.ts';
import { shelf } from '../../support/shelf.ts';

const SHELF = shelf();

/** Patterns in meters that the shelf has none in, and hands that rest. */
const ODD: readonly Pattern[] = [
  pattern('7/8', { left: 'R-5-8--', right: '.C.C.CC' }, { divisions: [2, 2, 3] }),
  pattern('5/8', { left: 'R--5-', right: '.CC.C' }, { divisions: [3, 2] }),
  pattern('3/8', { left: 'R--', right: '.CC' }),
  pattern('7/4', { left: 'R......', right: '.CCC.CC' }),
  pattern('6/4', { left: 'R..5..', right: '.CC.CC' }),
  pattern('2/2', { left: 'R-5-', right: '.C.C' }),
  pattern('4/4', { left: 'R--5--R--5--', right: '123123123123' }),
  pattern('4/4', { left: '....', right: 'CCCC' }),
  pattern('4/4', { left: 'R...', right: '....' }),
];

const PATTERNS = [...SHELF.map((entry) => entry.pattern), ...ODD];

function tempos(): fc.Arbitrary<Bpm> {
  return fc.integer({ min: 30, max: 280 });
}

function fillsAtAnyTempo(law: (fill: Fill, given: Pattern, bpm: Bpm) => void): void {
  fc.assert(
    fc.property(fc.constantFrom(...PATTERNS), tempos(), (given, bpm) => {
      for (const fill of endingFills(given, bpm)) law(fill, given, bpm);
    }),
  );
}

const HANDS = ['left', 'right'] as const;

/** Where hits stand and what they play, without how long they last. */
function struck(hits: readonly Hit[]): unknown[] {
  return hits.map(({ at, play, touch }) => ({ at, play, touch }));
}

describe('every fill at every tempo', () => {
  it('begins in the bar, on a step of its own grid, hit after hit', () =>
    fillsAtAnyTempo(({ ending }, given) => {
      const bar = endingBar({ ...given, ending })!;
      const steps = new Set(patternSteps(bar).map(({ at }) => at));
      for (const hand of HANDS)
        for (const [i, { at, length }] of ending[hand].entries()) {
          expect(steps.has(at)).toBe(true);
          expect(length).toBeGreaterThanOrEqual(1);
          expect(at + length).toBeLessThanOrEqual(
            ending[hand][i + 1]?.at ?? 2 * barTicks(given.meter),
          );
        }
    }));

  it('sounds over the bar line only where it brings the next chord early', () =>
    fillsAtAnyTempo(({ kind, ending, from }, given) => {
      const end = barTicks(given.meter);
      for (const hit of [...ending.left, ...ending.right].filter(({ at }) => at >= from))
        if (kind !== 'push' && !hit.anticipates)
          expect(hit.at + hit.length, kind).toBeLessThanOrEqual(end);
    }));

  it('keeps the first beat, and what comes before it begins as far as the hands have time', () =>
    fillsAtAnyTempo(({ ending, from }, given) => {
      const [first = 0, ...others] = beatLengths(given.meter);
      const kept = others.length > 0 ? first : first / 3;
      expect(from).toBeGreaterThanOrEqual(kept);
      const own = lastBarHands(given);
      for (const hand of HANDS) {
        const before = (hits: readonly Hit[], until: number) =>
          struck(hits.filter(({ at }) => at < until));
        expect(before(ending[hand], kept)).toEqual(before(own[hand], kept));
        for (const hit of before(ending[hand], from))
          expect(before(own[hand], from)).toContainEqual(hit);
      }
    }));

  it('is the same every time, and no two are alike', () =>
    fillsAtAnyTempo((_, given, bpm) => {
      const fills = endingFills(given, bpm);
      expect(endingFills(given, bpm)).toEqual(fills);
      const held = (hits: readonly Hit[]) => hits.map((hit) => [hit.at, hit.play, hit.held]);
      const sounds = fills.map(({ ending }) =>
        JSON.stringify([held(ending.left), held(ending.right)]),
      );
      expect(new Set(sounds).size).toBe(sounds.length);
    }));
});

const VOICING = project().voicing;

/** What the hands are asked too much by, round and round on a chord in the tool's own voicing; spans are the voicing's. */
function strainsOn(symbol: string, played: Pattern, bpm: Bpm): Strain[] {
  const timeline = drillTimeline(chord(symbol), played.meter, played.bars);
  const voicings = valueOf(voiceTimeline(timeline, VOICING));
  const notes = valueOf(realise(timeline, voicings, () => played, { loop: true }));
  const { left, right } = handLoad(notes, bpm, tempoBeatTicks(played.meter));
  return [...left.strains, ...right.strains].filter(({ kind }) => kind !== 'span');
}

describe('every fill of every pattern of the shelf', () => {
  it.each(SHELF)('after $pattern.name can be played at its usual tempos', (entry) => {
    const { pattern: given, tempoRange } = entry;
    for (const bpm of [tempoRange[0], (tempoRange[0] + tempoRange[1]) / 2])
      for (const { kind, ending } of endingFills(given, bpm))
        expect(strainsOn('C', endingPhrase(given, ending), bpm), `${kind} at ${bpm}`).toEqual([]);
  });

  it('is one of five at least in the middle of the tempo range', () => {
    for (const { pattern: given, tempoRange } of SHELF) {
      const fills = endingFills(given, (tempoRange[0] + tempoRange[1]) / 2);
      expect(fills.length, given.name).toBeGreaterThanOrEqual(5);
    }
  });
});

const EIGHTHS = pattern('4/4', { left: 'R---R---', right: 'CCCCCCCC' });

function fillOf(given: Pattern, kind: FillKind, bpm: Bpm = 80, limits = HAND_LIMITS): Ending {
  const found = endingFills(given, bpm, limits).find((fill) => fill.kind === kind);
  if (!found) throw new Error(`no ${kind}`);
  return found.ending;
}

function onQuality(quality: (typeof QUALITIES)[number], ending: Ending): void {
  const played = endingPhrase(EIGHTHS, ending);
  const held = { ...chord('D'), quality };
  const timeline = drillTimeline(held, played.meter, played.bars);
  const voicings = valueOf(voiceTimeline(timeline, VOICING));
  const notes = valueOf(realise(timeline, voicings, () => played, { loop: true }));
  const lastBar = patternTicks(played) - barTicks(played.meter);
  for (const hand of HANDS) {
    const starts = notes.filter(({ part }) => part === hand).map(({ startTick }) => startTick);
    const inEnding = new Set(starts.filter((tick) => tick >= lastBar));
    expect([...inEnding].toSorted((a, b) => a - b)).toEqual(
      ending[hand].map(({ at }) => lastBar + at),
    );
  }
  expect(notes.every(({ keyNumber }) => keyNumber >= 21 && keyNumber <= 108)).toBe(true);
  const { left, right } = handLoad(notes, 80);
  expect([...left.strains, ...right.strains].filter(({ kind }) => kind !== 'span')).toEqual([]);
}

describe.each(FILL_KINDS)('the fill %s', (kind) => {
  it.each(QUALITIES)('sounds on a chord of quality %s and can be played', (quality) =>
    onQuality(quality, fillOf(EIGHTHS, kind)),
  );
});

/** The tones of a hand from the fill's place on, beat by beat as written: `at:tones`. */
function tones(hits: readonly Hit[], from: number): string {
  return hits
    .filter(({ at }) => at >= from)
    .map(
      ({ at, play }) => `${at / 240}:${play.map((tone) => tone.replace('voice-', '')).join('+')}`,
    )
    .join(' ');
}

// Common practice of accompanying; steps are eighths.
describe('fills of ballad eighths in 4/4', () => {
  it('run up through the chord on beats 3 and 4', () =>
    expect(tones(fillOf(EIGHTHS, 'run-up').right, 960)).toBe('4:1 5:2 6:3 7:4'));

  it('close in: the right hand falls, the bass walks up to the next root', () => {
    const { left, right } = fillOf(EIGHTHS, 'closing-in');
    expect(tones(right, 960)).toBe('4:4 5:3 6:2 7:1');
    expect(tones(left, 960)).toBe('4:fifth 6:approach');
  });

  it('let the bass walk under a right hand that goes on', () =>
    expect(fillOf(EIGHTHS, 'bass-walk').right).toEqual(EIGHTHS.right));

  it('build from ghosts to an accent, over octaves on the beats', () => {
    const { left, right } = fillOf(EIGHTHS, 'build');
    expect(right.slice(4).map(({ touch }) => touch)).toEqual(['ghost', 'ghost', 'plain', 'accent']);
    expect(tones(left, 960)).toBe('4:root+octave 6:root+octave');
  });

  it('stop: both hands strike beat 3 short, and are silent', () => {
    const { left, right } = fillOf(EIGHTHS, 'stop');
    expect(tones(left, 960)).toBe('4:root+octave');
    expect(tones(right, 960)).toBe('4:all');
    expect([left.at(-1)?.held, right.at(-1)?.held]).toEqual([false, false]);
  });

  it('push: both hands bring the next chord on 4 and, tied over the bar line', () => {
    const last = fillOf(EIGHTHS, 'push').right.at(-1);
    expect(last).toMatchObject({ at: 1680, length: 720, anticipates: true, touch: 'accent' });
  });
});

describe('the pace of a run', () => {
  it('gathers to sixteenths where the pattern moves in them', () => {
    const sixteenths = pattern('4/4', { left: 'R...............', right: '1232123212321232' });
    expect(tones(fillOf(sixteenths, 'run-up', 60).right, 960)).toBe('4:1 5:2 6:3 6.5:4 7:5 7.5:6');
  });

  it('gathers to triplets over swung eighths, in a bar that is divided on its own for it', () => {
    const swung = { ...EIGHTHS, swing: { level: 'eighth', ratio: 2 } as const };
    const ending = fillOf(swung, 'run-up');
    expect(ending.divisions).toEqual([2, 2, 2, 3]);
    expect(ending.right.slice(-3).map(({ at }) => at)).toEqual([1440, 1600, 1760]);
  });

  it('keeps to triplets in a bar of triplets, to eighths in 12/8', () => {
    const triplets = pattern('4/4', { left: 'R-----5-----', right: '123123123123' });
    expect(
      fillOf(triplets, 'run-up')
        .right.slice(6)
        .map(({ at }) => at),
    ).toEqual([960, 1120, 1280, 1440, 1600, 1760]);
    const gospel = pattern('12/8', { left: 'R-----5-----', right: 'CCCCCCCCCCCC' });
    expect(tones(fillOf(gospel, 'run-up', 50).right, 1440)).toBe('6:1 7:2 8:3 9:4 10:5 11:6');
  });

  it('is slower where eighths would be too fast for the hand', () => {
    const slow = { ...HAND_LIMITS, strikeGapSec: 0.35, repeatGapSec: 0.4 };
    expect(tones(fillOf(EIGHTHS, 'bass-walk', 140, slow).left, 960)).toBe('4:fifth 6:approach');
    const kinds = endingFills(EIGHTHS, 140, slow).map(({ kind }) => kind);
    expect(kinds).not.toContain('hand-to-hand');
    expect(kinds).toContain('let-ring');
  });
});

describe('a small hand', () => {
  it('plays no octaves in the bass', () => {
    const small = { ...HAND_LIMITS, spanSemitones: 11 };
    expect(tones(fillOf(EIGHTHS, 'stop', 80, small).left, 960)).toBe('4:root');
  });
});

describe('a phrase with an ending', () => {
  it('is four bars of a shorter pattern, the last of them the ending with its divisions', () => {
    const swung = { ...EIGHTHS, swing: { level: 'eighth', ratio: 2 } as const };
    const ending = fillOf(swung, 'run-up');
    const phrase = endingPhrase(swung, ending);
    expect(phrase.bars).toBe(4);
    expect(phrase.divisions.slice(-4)).toEqual([2, 2, 2, 3]);
    expect(struck(lastBarHands(phrase).right)).toEqual(struck(ending.right));
    expect(struck(phrase.left.slice(0, 6))).toEqual(
      [0, 1, 2].flatMap((bar) =>
        struck(EIGHTHS.left).map((hit, i) => ({ ...(hit as Hit), at: bar * 1920 + i * 960 })),
      ),
    );
    expect(phrase.ending).toBeUndefined();
  });

  it('lets a push ring over the bar line only until the hand strikes again', () => {
    const phrase = endingPhrase(EIGHTHS, fillOf(EIGHTHS, 'push'));
    const last = phrase.right.at(-1)!;
    expect(last.at + last.length).toBe(patternTicks(phrase));
  });
});
