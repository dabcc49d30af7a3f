import { describe, expect, it } from 'vitest';
import { layBars } from '../../../../src/core/rhythm/laidBars.ts';
import { placeInRounds, placeInSong } from '../../../../src/ui/parts/grid/heardPlace.ts';
import { valueOf } from '../../../support/music.ts';
import { pattern, sectionsTimeline } from '../../../support/patterns.ts';

const BAR = 1920;

describe('where in a pattern the music is', () => {
  const long = pattern('4/4', { left: 'R-------' }, { id: 'long', bars: 2 });

  it('goes round with the pattern, and is nowhere in a count-in', () => {
    const at = (tick: number, countingIn = false) => placeInRounds({ tick, countingIn }, long);
    expect(at(2 * BAR + 100)).toBe(100);
    expect(at(-100, true)).toBeUndefined();
  });

  it('begins anew with each section of a song, and is nowhere in an ending or another pattern', () => {
    const ended = { ...long, ending: { left: [], right: [] } };
    const other = pattern('4/4', { left: 'R---' }, { id: 'other' });
    const timeline = sectionsTimeline('| C | C | C |', '| F | F |');
    const laid = valueOf(layBars(timeline, ({ section }) => (section === 0 ? ended : other)));
    const at = (bar: number, tick: number, of = long) =>
      placeInSong({ bar, tick, countingIn: false }, of, laid);
    expect(at(1, BAR + 7)).toBe(BAR + 7);
    expect(at(2, 2 * BAR + 7)).toBeUndefined();
    expect(at(3, 3 * BAR + 7)).toBeUndefined();
    expect(at(4, 4 * BAR + 7, other)).toBe(7);
    expect(placeInSong({ tick: -9, countingIn: true }, long, laid)).toBeUndefined();
  });
});
