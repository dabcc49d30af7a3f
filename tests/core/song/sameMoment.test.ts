import { describe, expect, it } from 'vitest';
import { sameBars, sameMoment } from '../../../src/core/song/sameMoment.ts';
import { timelineOf } from '../../../src/core/song/timeline.ts';
import { meter, section, slotsOfTicks, song } from '../../support/music.ts';

const BAR = 1920;

const bars = (count: number) => slotsOfTicks(...Array.from({ length: count }, () => BAR));

function played(sizes: { readonly verse?: number; readonly chorus?: number }, form: string) {
  const base = song(
    [
      section('verse', { slots: bars(sizes.verse ?? 2) }),
      section('chorus', { slots: bars(sizes.chorus ?? 2) }),
    ],
    form,
  );
  // In an edited form the playings that stay keep their ids.
  const seen = new Map<string, number>();
  const entries = base.form.map((entry) => {
    const time = (seen.get(entry.sectionId) ?? 0) + 1;
    seen.set(entry.sectionId, time);
    return { ...entry, id: `${entry.sectionId} ${time}` };
  });
  return timelineOf({ ...base, form: entries });
}

const BEFORE = played({}, 'verse chorus verse');

describe('the same moment of an edited song', () => {
  it('stays in its bar where an earlier section becomes longer or shorter', () => {
    const longer = played({ verse: 3 }, 'verse chorus verse');
    expect(sameMoment(BEFORE, longer, 3 * BAR + 700)).toBe(4 * BAR + 700);
    expect(sameMoment(longer, BEFORE, 4 * BAR + 700)).toBe(3 * BAR + 700);
  });

  it('moves with a playing that moves', () => {
    const moved = played({}, 'chorus verse verse');
    expect(sameMoment(BEFORE, moved, 2 * BAR + 1)).toBe(1);
  });

  it('goes on in the last bar of a section that has become too short', () =>
    expect(sameMoment(BEFORE, played({ verse: 1 }, 'verse chorus verse'), BAR + 480)).toBe(480));

  it('is at the end where its playing is gone and none follows', () =>
    expect(sameMoment(BEFORE, played({}, 'verse'), 2 * BAR + 480)).toBe(2 * BAR));

  it('goes on with the beginning of what follows a playing that is taken out', () => {
    const whole = song(
      [section('solo', { slots: bars(2) }), section('verse', { slots: bars(2) })],
      'solo verse',
    );
    const without = { ...whole, form: whole.form.slice(1) };
    expect(sameMoment(timelineOf(whole), timelineOf(without), BAR + 480)).toBe(480);
  });

  it('counts on from the bar line in a bar that is too short', () => {
    const inThree = timelineOf(
      song([section('verse', { meter: meter('3/4'), slots: slotsOfTicks(1440, 1440) })], 'verse'),
    );
    const inFour = timelineOf(song([section('verse', { slots: bars(2) })], 'verse'));
    expect(sameMoment(inFour, inThree, BAR + 480)).toBe(1440 + 480);
    expect(sameMoment(inFour, inThree, BAR + 1500)).toBe(1440 + 60);
  });

  it('leaves a count-in where it is and the time after the end after the end', () => {
    const longer = played({ verse: 3 }, 'verse chorus verse');
    expect(sameMoment(BEFORE, longer, -480)).toBe(-480);
    expect(sameMoment(BEFORE, longer, 6 * BAR + 30)).toBe(8 * BAR + 30);
  });
});

describe('marked bars of an edited song', () => {
  const chorus = { firstBar: 2, endBar: 4 };

  it('move with what stands before them', () =>
    expect(sameBars(BEFORE, played({ verse: 3 }, 'verse chorus verse'), chorus)).toEqual({
      firstBar: 3,
      endBar: 5,
    }));

  it('still reach to the end of their section where it grows', () => {
    const after = played({ chorus: 4 }, 'verse chorus verse');
    expect(sameBars(BEFORE, after, chorus)).toEqual({ firstBar: 2, endBar: 6 });
    expect(sameBars(BEFORE, after, { firstBar: 2, endBar: 3 })).toEqual({ firstBar: 2, endBar: 3 });
  });

  it('are gone with their section', () =>
    expect(sameBars(BEFORE, played({}, 'verse verse'), chorus)).toBeUndefined());

  it('are none where their ends have changed places', () =>
    expect(
      sameBars(played({}, 'verse chorus'), played({}, 'chorus verse'), { firstBar: 0, endBar: 4 }),
    ).toBeUndefined());
});
