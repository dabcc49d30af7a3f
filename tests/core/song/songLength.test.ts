import { describe, expect, it } from 'vitest';
import { filledBars, MOST_BARS, playedBars } from '../../../src/core/song/songLength.ts';
import { meter, slots } from '../../support/music.ts';
import { project } from '../../support/project.ts';

const FOUR = { meter: meter('4/4'), barMeters: [] };

function lasting(durationTicks: number) {
  return { ...FOUR, slots: [{ chord: 'no-chord' as const, durationTicks }] };
}

describe('the bars that chords fill', () => {
  it('are counted, those of another meter too', () => {
    expect(filledBars({ ...FOUR, slots: slots('| C | F G |') })).toBe(2);
    const odd = { ...lasting(1920 + 960), barMeters: [{ bar: 1, meter: meter('2/4') }] };
    expect(filledBars(odd)).toBe(2);
    expect(filledBars({ ...FOUR, slots: [] })).toBe(0);
  });

  it('are none where the chords end inside a bar', () =>
    expect(filledBars(lasting(1921))).toBeUndefined());

  it('are not counted without end', () =>
    expect(filledBars(lasting(1920 * 1e12))).toBe(MOST_BARS + 1));
});

describe('the bars of a song', () => {
  const { song } = project();
  const [section] = song.sections;
  const one = { ...section!, id: 'one', ...lasting(4 * 1920) };

  it('are those that are played', () => {
    const form = [1, 2, 3].map((i) => ({ id: `${i}`, sectionId: 'one' }));
    expect(playedBars({ sections: [one], form })).toBe(12);
    expect(playedBars({ sections: [one], form: [] })).toBe(0);
  });

  it('have other endings in place of what they replace', () => {
    const ending = { replacesBars: 3, barMeters: [], slots: lasting(2 * 1920).slots };
    expect(playedBars({ sections: [one], form: [{ id: '1', sectionId: 'one', ending }] })).toBe(3);
  });
});
