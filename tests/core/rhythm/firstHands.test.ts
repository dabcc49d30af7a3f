import * as fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { firstHands } from '../../../src/core/rhythm/firstHands.ts';
import type { Groove } from '../../../src/core/rhythm/foldSources.ts';
import { HAND_LIMITS } from '../../../src/core/rhythm/handLimits.ts';
import { HAND_RULES, rulesForBand, type StrokeUse } from '../../../src/core/rhythm/handRules.ts';
import { deriveHands, raisedFeeds } from '../../../src/core/rhythm/hands.ts';
import { keepsToLevel } from '../../../src/core/rhythm/levels.ts';
import type { Hands, Hit } from '../../../src/core/rhythm/pattern.ts';
import type { Source, SourcePart } from '../../../src/core/rhythm/sources.ts';
import { STRAIGHT } from '../../../src/core/rhythm/swing.ts';
import { meter } from '../../support/music.ts';

const SIXTEENTH = 120;

/** A source in sixteenths of 4/4: `x` plain, `X` loud, `o` soft. */
function played(part: SourcePart, text: string): Source {
  const strengths: Readonly<Record<string, number>> = { X: 0.95, x: 0.7, o: 0.3 };
  const strokes = text
    .replaceAll(' ', '')
    .split('')
    .flatMap((sign, i) => {
      const strength = strengths[sign];
      if (strength === undefined) return [];
      const what = part === 'bass' ? ('root' as const) : ('unpitched' as const);
      return [{ at: i * SIXTEENTH, length: SIXTEENTH, strength, presence: 1, what: [what] }];
    });
  return { id: part, name: part, part, strokes };
}

function grooveOf(...sources: Source[]): Groove {
  return { meter: meter('4/4'), bars: 1, divisions: [4, 4, 4, 4], swing: STRAIGHT, sources };
}

function usedAs(use: StrokeUse) {
  return { ...HAND_RULES, feeds: HAND_RULES.feeds.map((feed) => ({ ...feed, use })) };
}

function ticks(hits: readonly Hit[]): number[] {
  return hits.map(({ at }) => at);
}

const PARTS = ['bass', 'kick', 'snare', 'strumming', 'picking', 'hi-hat', 'tom', 'sung'] as const;

/** Any band of one to five parts over a bar of sixteenths. */
function bands(): fc.Arbitrary<Source[]> {
  return fc
    .uniqueArray(
      fc.tuple(
        fc.constantFrom(...PARTS),
        fc.array(fc.constantFrom('.', 'x', 'X', 'o'), { minLength: 16, maxLength: 16 }),
      ),
      { minLength: 1, maxLength: 5, selector: ([part]) => part },
    )
    .map((all) => all.map(([part, signs]) => played(part, signs.join(''))));
}

describe('how strokes are used', () => {
  it('gives with fewer strokes fewer hits and no others, alone or not', () =>
    fc.assert(
      fc.property(bands(), (sources) => {
        const [every, strong, accents] = (
          ['every-stroke', 'strong-strokes', 'accents'] as const
        ).map((use) => deriveHands(sources, usedAs(use), grooveOf()));
        for (const hand of ['left', 'right'] as const) {
          expect(ticks(every![hand])).toEqual(expect.arrayContaining(ticks(strong![hand])));
          expect(ticks(strong![hand])).toEqual(expect.arrayContaining(ticks(accents![hand])));
        }
      }),
    ));

  it('does what it says where a source is alone in its hand', () => {
    const drums = [played('kick', 'X... .... x... ....'), played('snare', '..o. X.oo ..o. X..o')];
    const right = (use: StrokeUse) => ticks(deriveHands(drums, usedAs(use)).right);
    expect(right('every-stroke')).toEqual([240, 480, 720, 840, 1200, 1440, 1800]);
    expect(right('strong-strokes')).toEqual([480, 1440]);
  });

  it('plays the strong strokes of what would only add accents to an empty hand, and says so', () => {
    const drums = [played('kick', 'X... .... x.o. ....'), played('snare', '.... X... .... X...')];
    expect(raisedFeeds(drums).map(({ part }) => part)).toEqual(['kick']);
    expect(ticks(deriveHands(drums).left)).toEqual([0]);
    expect(raisedFeeds([...drums, played('bass', 'x... .... x... ....')])).toEqual([]);
  });

  it('has the kick play the left hand where there is no bass line', () => {
    const drums = [played('kick', 'X... ..x. x... ....'), played('snare', '.... X... .... X...')];
    expect(ticks(deriveHands(drums, rulesForBand(false)).left)).toEqual([0, 720, 960]);
    expect(rulesForBand(true)).toBe(HAND_RULES);
  });
});

describe('the one', () => {
  const left = (...sources: Source[]) => deriveHands(sources, rulesForBand(false)).left;

  it('has a root in the left hand where the band strikes it with anything but what keeps time', () => {
    const hits = left(
      played('kick', '..x. ..x. ..x. ..x.'),
      played('snare', 'x... x... x... x...'),
      played('hi-hat', 'x.x. x.x. x.x. x.x.'),
    );
    expect(hits[0]).toMatchObject({ at: 0, play: ['root'] });
    expect(hits).toHaveLength(5);
  });

  it('stays empty where the band leaves it empty, which is said', () => {
    const oneDrop = [
      played('kick', '.... .... X... ....'),
      played('snare', '.... .... X... ....'),
      played('hi-hat', 'x.x. x.x. x.x. x.x.'),
    ];
    expect(ticks(left(...oneDrop))).toEqual([960]);
    expect(firstHands(grooveOf(...oneDrop), 80).leavesTheOne).toBe(true);
    expect(firstHands(grooveOf(played('kick', 'x... .... x... ....')), 80).leavesTheOne).toBe(
      false,
    );
  });

  it('is left to a bass line that is tied over it', () => {
    const pushed: Source = {
      ...played('bass', '.... ..x. .... x...'),
      strokes: [
        { at: 720, length: 720, strength: 0.7, presence: 1, what: ['fifth'] },
        { at: 1440, length: 1200, strength: 0.7, presence: 1, what: ['root'] },
      ],
    };
    expect(ticks(left(pushed, played('snare', 'x... .... x... ....')))).toEqual([720, 1440]);
  });
});

describe('the first proposal', () => {
  it('is within the hands’ limits at the band’s tempo, with an empty hand only where the band has nothing', () =>
    fc.assert(
      fc.property(bands(), fc.integer({ min: 50, max: 260 }), (sources, bpm) => {
        const groove = grooveOf(...sources);
        const { hands, fuller } = firstHands(groove, bpm);
        expect(keepsToLevel(hands, 5, bpm, groove)).toBe(true);
        for (const hand of ['left', 'right'] as const)
          expect(hands[hand].length > 0).toBe(fuller[hand].length > 0);
      }),
      { numRuns: 60 },
    ));

  it('keeps to what the player’s own hands do', () => {
    const groove = grooveOf(
      played('bass', 'x.x. x.x. x.x. x.x.'),
      played('strumming', 'xxxx xxxx xxxx xxxx'),
    );
    const slow = { ...HAND_LIMITS, strikeGapSec: 0.4, repeatGapSec: 0.45 };
    const { hands } = firstHands(groove, 120, HAND_RULES, slow);
    expect(keepsToLevel(hands, 5, 120, groove, slow)).toBe(true);
    expect(hands.left.length).toBeLessThan(firstHands(groove, 120).hands.left.length);
  });

  it('says what it leaves out of the fuller version', () => {
    const groove = grooveOf(
      played('kick', 'x... .... x... ....'),
      played('snare', 'xxxx xxxx xxxx xxxx'),
    );
    const { hands, fuller, leftOut } = firstHands(groove, 140);
    const all = (...parts: Hands[]) =>
      parts
        .flatMap(({ left, right }) => [...ticks(left), ...ticks(right)])
        .toSorted((a, b) => a - b);
    expect(leftOut.right.length).toBeGreaterThan(0);
    expect(all(hands, leftOut)).toEqual(all(fuller));
  });
});
