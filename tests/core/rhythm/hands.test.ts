import * as fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { HAND_RULES, type HandRules, type StrokeUse } from '../../../src/core/rhythm/handRules.ts';
import { deriveHands } from '../../../src/core/rhythm/hands.ts';
import type { Hit } from '../../../src/core/rhythm/pattern.ts';
import {
  SOURCE_PARTS,
  type Source,
  type SourcePart,
  type Stroke,
  type StrokeTone,
} from '../../../src/core/rhythm/sources.ts';
import { meter } from '../../support/music.ts';

const EIGHTH = 240;

const TONES: Readonly<Record<string, StrokeTone>> = {
  R: 'root',
  '5': 'fifth',
  '8': 'octave',
  C: 'all',
  u: 'upper',
  t: 'top',
  '1': 'voice-1',
  '2': 'voice-2',
  '3': 'voice-3',
  '4': 'voice-4',
  '6': 'voice-6',
};

const STRENGTHS: Readonly<Record<string, number>> = { X: 0.9, x: 0.65, o: 0.3 };

/**
 * A source in eighths. Drums: `X` loud, `x` plain, `o` soft. Pitched parts: the tone's sign, all of one
 * strength, each sounding until the next unless `length` says otherwise.
 */
function part(name: SourcePart, text: string, parts: Partial<Stroke> = {}): Source {
  const signs = text.replaceAll(' ', '').split('');
  const strokes = signs.flatMap((sign, i) => {
    const strength = STRENGTHS[sign] ?? (TONES[sign] ? 0.65 : undefined);
    if (strength === undefined) return [];
    const next = signs.findIndex((other, j) => j > i && other !== '.');
    const length = ((next < 0 ? signs.length : next) - i) * EIGHTH;
    const what = [TONES[sign] ?? ('unpitched' as const)];
    return [{ at: i * EIGHTH, length, strength, presence: 1, what, ...parts }];
  });
  return { id: name, name, part: name, strokes };
}

/** Hits in eighths as text: the tone where struck, `-` while held, `.` else. */
function handText(hits: readonly Hit[], eighths = 8): string {
  const signOf = new Map(Object.entries(TONES).map(([sign, tone]) => [tone as string, sign]));
  return Array.from({ length: eighths }, (_, i) => {
    const at = i * EIGHTH;
    const struck = hits.find((hit) => hit.at === at);
    if (struck) return signOf.get(struck.play[0]!);
    return hits.some((hit) => hit.held && hit.at < at && hit.at + hit.length > at) ? '-' : '.';
  }).join('');
}

/** Touches in eighths: `>` accent, `o` ghost, `x` plain. */
function touches(hits: readonly Hit[]): string {
  const signs = { accent: '>', plain: 'x', ghost: 'o' } as const;
  return Array.from({ length: 8 }, (_, i) => {
    const struck = hits.find((hit) => hit.at === i * EIGHTH);
    return struck ? signs[struck.touch] : '.';
  }).join('');
}

/** The usual rules with every source used one way. */
function usedAs(use: StrokeUse): HandRules {
  return { ...HAND_RULES, feeds: HAND_RULES.feeds.map((feed) => ({ ...feed, use })) };
}

describe('what feeds which hand', () => {
  it('lets the bass line be the left hand and the kick accent it', () => {
    const { left } = deriveHands([part('bass', 'R.5.R.58'), part('kick', 'x...x..x')]);
    expect(handText(left)).toBe('R-5-R-58');
    expect(touches(left)).toBe('>.x.>.x>');
  });

  it('takes a kick alone as the root, held', () => {
    const { left } = deriveHands([part('kick', 'x..x x...'), part('snare', '..x. ..x.')]);
    expect(handText(left)).toBe('R--RR---');
  });

  it('leaves accents out where the kick would put one on nearly every note', () => {
    const { left } = deriveHands([part('bass', 'R.R.R.R.'), part('kick', 'x.x.x.x.')]);
    expect(touches(left)).toBe('x.x.x.x.');
  });

  it('takes the strong strokes of a snare as short chords, and its ghost notes where every stroke is asked for', () => {
    const sources = [part('kick', 'x...x...'), part('snare', '..X..oX.')];
    expect(handText(deriveHands(sources).right)).toBe('..C...C.');
    const { right } = deriveHands(sources, usedAs('every-stroke'));
    expect(handText(right)).toBe('..C..CC.');
    expect(touches(right)).toBe('..>..o>.');
    expect(right.every((hit) => !hit.held)).toBe(true);
  });

  it('lets the snare strike the chord into the picking, its back-beats only', () => {
    const { right } = deriveHands([part('picking', '12321232'), part('snare', '.oX..oX.')]);
    expect(handText(right)).toBe('12C212C2');
  });

  it('plays strums as the whole chord, as long as they ring', () => {
    const { right } = deriveHands([part('strumming', 'C..CC...')]);
    expect(handText(right)).toBe('C--CC---');
  });

  it('draws wide picking together under one hand', () => {
    const { right } = deriveHands([part('picking', '1346....')]);
    expect(handText(right)).toBe('1234----');
  });

  it('leaves hats, toms and the sung line out where both hands have enough', () => {
    const sources = [
      part('bass', 'R...5...'),
      part('strumming', 'C.C.C.C.'),
      part('hi-hat', 'xxxxxxxx'),
      part('tom', '......xx'),
      part('sung', 't.t.tt..'),
    ];
    expect(deriveHands(sources)).toEqual(deriveHands(sources.slice(0, 2)));
  });

  it('takes the busiest of two sources of one part', () => {
    const { right } = deriveHands([part('picking', '1.......'), part('picking', '1.2.3.2.')]);
    expect(handText(right)).toBe('1-2-3-2-');
  });

  it('leaves out what is played in less than half of the bars', () => {
    const rare = part('kick', '...x....', { presence: 0.4 });
    const often = part('kick', 'x...x...', { presence: 0.5 });
    const kick = { ...often, strokes: [...often.strokes, ...rare.strokes] };
    expect(handText(deriveHands([kick]).left)).toBe('R---R---');
  });
});

describe('what helps an idle hand', () => {
  it('adds hats as light short chords where the snare strikes once in a bar', () => {
    const { right } = deriveHands([
      part('kick', 'x.......'),
      part('snare', '....x...'),
      part('hi-hat', 'xxxxxxxx'),
    ]);
    expect(handText(right)).toBe('uuuuCuuu');
    expect(touches(right)).toBe('ooooxooo');
  });

  it('keeps the two back-beats alone', () => {
    const drums = [part('kick', 'x...x...'), part('snare', '..x...x.')];
    const { right } = deriveHands([...drums, part('hi-hat', 'xxxxxxxx')]);
    expect(handText(right)).toBe('..C...C.');
  });

  it('adds hats beside two chords that are both off the beat', () => {
    const { right } = deriveHands([part('snare', '.x...x..'), part('hi-hat', 'x...x...')]);
    expect(handText(right)).toBe('uC..uC..');
  });

  it('gives the right hand the weak beats where only the bass plays', () => {
    const { left, right } = deriveHands([part('bass', 'R...5...')]);
    expect(handText(left)).toBe('R---5---');
    expect(handText(right)).toBe('..C...C.');
  });

  it('gives the right hand the sung line where nothing else is there for it', () => {
    const { right } = deriveHands([part('bass', 'R...5...'), part('sung', '.t.t..t.')]);
    expect(handText(right)).toBe('.t-t--t-');
  });

  it('gives the left hand the root where the picking has its lowest voice', () => {
    const { left, right } = deriveHands([part('picking', '13231323')]);
    expect(handText(left)).toBe('R---R---');
    expect(handText(right)).toBe('13231323');
  });

  it('gives the left hand the root at the stress groups where only strums are heard', () => {
    expect(handText(deriveHands([part('strumming', 'CCCCCCCC')]).left)).toBe('R---R---');
  });

  it('gives the left hand the downbeat where nothing else helps', () => {
    expect(handText(deriveHands([part('snare', '..x...x.')]).left)).toBe('R-------');
  });

  it('takes the second beat of 6/8 as the weak one', () => {
    const frame = { meter: meter('6/8'), bars: 1 };
    const { right } = deriveHands([part('bass', 'R..5..')], HAND_RULES, frame);
    expect(right.map((hit) => hit.at)).toEqual([720]);
  });

  it('leaves both hands empty where nobody plays', () => {
    expect(deriveHands([])).toEqual({ left: [], right: [] });
    expect(deriveHands([part('kick', '........')])).toEqual({ left: [], right: [] });
  });
});

describe('lengths', () => {
  it('plays a note short that ends before half the way to the next', () => {
    const { left } = deriveHands([part('bass', 'R...R...', { length: 100 })]);
    expect(left.map(({ held, length }) => [held, length])).toEqual([
      [false, 240],
      [false, 240],
    ]);
  });

  it('holds a note as long as it sounds, in sixteenths', () => {
    const { left } = deriveHands([part('bass', 'R...R...', { length: 590 })]);
    expect(left.map(({ held, length }) => [held, length])).toEqual([
      [true, 600],
      [true, 600],
    ]);
  });

  it('ties the last note round to the first of the next time', () => {
    const { left } = deriveHands([part('bass', '.R...5..', { length: 1000 })]);
    expect(left.map(({ at, length }) => at + length)).toEqual([5 * EIGHTH, 9 * EIGHTH]);
  });

  it('marks what starts between beats and is held into a stress group or over the bar line', () => {
    const { left } = deriveHands([part('bass', '.R.5...5', { length: 600 })]);
    expect(left.map((hit) => hit.anticipates === true)).toEqual([false, true, true]);
  });

  it('does not mark what reaches on to the group after', () => {
    const { left } = deriveHands([part('bass', 'R..5....', { length: 2000 })]);
    expect(left.map((hit) => hit.anticipates === true)).toEqual([false, false]);
  });
});

describe('the table', () => {
  it('names every part once among the feeds', () => {
    expect(HAND_RULES.feeds.map((feed) => feed.part).toSorted()).toEqual(
      [...SOURCE_PARTS].toSorted(),
    );
  });

  it('is followed when the user changes it', () => {
    const rules: HandRules = {
      fallbacks: [],
      feeds: HAND_RULES.feeds.map((feed) =>
        feed.part === 'hi-hat' ? { ...feed, hand: 'right', play: ['top'] } : feed,
      ),
    };
    const { left, right } = deriveHands([part('hi-hat', 'x.x.x.x.')], rules);
    expect(handText(right)).toBe('t.t.t.t.');
    expect(left).toEqual([]);
  });

  it('gives a hand a tone that it has, whatever the table asks', () => {
    const rules: HandRules = {
      ...HAND_RULES,
      feeds: [{ part: 'picking', hand: 'left', play: 'own', length: 'own', use: 'every-stroke' }],
    };
    expect(handText(deriveHands([part('picking', '1.2.3.2.')], rules).left)).toBe('R-R-R-R-');
  });
});

it('never strikes one hand twice at a tick nor holds a hit into the next', () => {
  const line = fc.string({
    unit: fc.constantFrom('.', 'X', 'x', 'o'),
    minLength: 16,
    maxLength: 16,
  });
  const sources = fc
    .uniqueArray(fc.constantFrom(...SOURCE_PARTS), { minLength: 1 })
    .chain((names) => fc.tuple(...names.map((name) => line.map((signs) => part(name, signs)))));
  fc.assert(
    fc.property(sources, fc.integer({ min: 1, max: 2000 }), (drawn, length) => {
      const played = drawn.map((s) => ({
        ...s,
        strokes: s.strokes.map((stroke) => ({ ...stroke, length })),
      }));
      for (const hits of Object.values(deriveHands(played))) {
        hits.forEach((hit, i) => {
          const next = hits[i + 1]?.at ?? 2 * 1920 + hits[0]!.at;
          expect(hit.at + hit.length).toBeLessThanOrEqual(next);
          expect(hit.length).toBeGreaterThan(0);
          expect(hit.play.length).toBeGreaterThan(0);
        });
      }
    }),
  );
});
