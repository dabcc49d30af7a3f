import { describe, expect, it } from 'vitest';
import {
  foundOnShelf,
  grooveOfPattern,
  likeWords,
  metersOf,
  NO_WISH,
  type ShelfWish,
} from '../../../../src/ui/rhythm/shelf/shelfSearch.ts';
import { pattern, source } from '../../../support/patterns.ts';
import { shelf } from '../../../support/shelf.ts';

const SHELF = shelf();

function found(wish: Partial<ShelfWish>): string[] {
  return foundOnShelf(SHELF, { ...NO_WISH, ...wish }).map(({ entry }) => entry.pattern.id);
}

describe('looking for patterns on the shelf', () => {
  it('offers everything to who wants nothing', () => expect(found({})).toHaveLength(SHELF.length));

  it.each([
    ['waltz', ['country-waltz', 'jazz-waltz', 'waltz', 'waltz-arpeggio']],
    ['WALTZ arp', ['waltz-arpeggio']],
    ['bembe', ['bembe']],
    ['5/4 vamp', ['five-four-vamp']],
    ['3-2 son', ['son-clave-three-two']],
    ['walrus', []],
  ])('finds what “%s” stands on', (words, ids) =>
    expect(found({ words })).toEqual(expect.arrayContaining(ids)),
  );

  it('finds words only at their beginning', () => expect(found({ words: 'altz' })).toEqual([]));

  it('asks for everything that is wanted at once', () => {
    const wanted = found({ meter: '4/4', feel: 'swung', busy: 'left' });
    expect(wanted).toContain('boogie-shuffle');
    expect(wanted).not.toContain('shuffle-off-beats');
    expect(wanted).not.toContain('jazz-waltz');
  });

  it('finds what is usual at a tempo, the ends of its range included', () => {
    expect(found({ bpm: 56, meter: '4/4' })).toContain('ballad-eighths');
    expect(found({ bpm: 55, meter: '4/4' })).not.toContain('ballad-eighths');
  });

  it('finds every entry by its own feel and density', () => {
    const feels = (['straight', 'swung', 'in threes'] as const).flatMap((feel) => found({ feel }));
    const densities = (['sparse', 'medium', 'dense'] as const).flatMap((density) =>
      found({ density }),
    );
    expect(feels).toHaveLength(SHELF.length);
    expect(densities).toHaveLength(SHELF.length);
  });

  it('lists its meters once, by lower and upper figure', () =>
    expect(metersOf(SHELF)).toEqual([
      '2/2',
      '2/4',
      '3/4',
      '4/4',
      '5/4',
      '6/4',
      '7/4',
      '6/8',
      '3+2+2/8',
      '7/8',
      '9/8',
      '12/8',
    ]));
});

describe('looking for what is like a groove', () => {
  const tresillo = pattern('4/4', { left: '........' });
  const band = { ...tresillo, sources: [source(tresillo, 'kick', 'x..x..x.')] };

  it('puts the likest first and leaves other meters out', () => {
    const finds = foundOnShelf(SHELF, NO_WISH, grooveOfPattern(band));
    expect(finds[0]?.like).toBeCloseTo(1, 1);
    const likes = finds.map(({ like }) => like ?? -1);
    expect(likes).toEqual(likes.toSorted((a, b) => b - a));
    expect(new Set(finds.map(({ entry }) => entry.pattern.meter.beats))).toEqual(new Set([4]));
  });

  it('takes the hands where there is no band', () => {
    const entry = SHELF.find((each) => each.pattern.id === 'bossa-nova')!;
    const alone = { ...entry.pattern, sources: [] };
    const finds = foundOnShelf(SHELF, NO_WISH, grooveOfPattern(alone));
    expect(finds[0]?.entry.pattern.id).toBe('bossa-nova');
  });

  it('has nothing to compare where nothing is played', () =>
    expect(grooveOfPattern(tresillo)).toBeUndefined());

  it.each([
    [0.93, 'Very like it, 93 % alike'],
    [0.5, 'Akin, 50 % alike'],
    [0.1, 'Distant, 10 % alike'],
    [0, 'Nothing in common'],
  ])('says of %s: %s', (like, words) => expect(likeWords(like)).toBe(words));
});
