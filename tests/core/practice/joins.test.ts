import { describe, expect, it } from 'vitest';
import { hardJoins } from '../../../src/core/practice/joins.ts';
import { signatureDistance } from '../../../src/core/practice/signatureDistance.ts';
import { patternForBar } from '../../../src/core/rhythm/patternAt.ts';
import { timelineOf } from '../../../src/core/song/timeline.ts';
import { meter, section, slots, song } from '../../support/music.ts';
import { chartTimeline, pattern, plainVoicings } from '../../support/patterns.ts';

const PATTERNS = [
  pattern('4/4', { left: 'R---5---', right: '--C---C-' }, { id: 'verse' }),
  pattern('4/4', { left: 'R---R---', right: 'C-C-C-C-' }, { id: 'chorus' }),
  pattern('3/4', { left: 'R--', right: '-CC' }, { id: 'waltz' }),
];

const VERSE = section('verse', { slots: slots('| C | F |'), patternId: 'verse' });
const CHORUS = section('chorus', { slots: slots('| G | C |'), patternId: 'chorus' });

function joinsOf(sections: (typeof VERSE)[], form: string) {
  const timeline = timelineOf(song(sections, form));
  return hardJoins(timeline, plainVoicings(timeline), patternForBar(PATTERNS, timeline));
}

describe('the joins of a song', () => {
  it('are where one section leads into another, each kind once', () => {
    const joins = joinsOf([VERSE, CHORUS], 'verse chorus verse chorus verse');
    expect(joins.map(({ from, to, bar, times }) => [from, to, bar, times])).toEqual([
      ['verse', 'chorus', 2, 2],
      ['chorus', 'verse', 4, 2],
    ]);
  });

  // F to G in root position: left 41 to 43, right 65 69 72 to 67 71 74: 2 + 6 semitones. Left hands
  // share both attacks (1 and 3), right hands 2 and 4 of 1 2 3 4: 4 of 6 in all.
  it('are as hard as hands, rhythm, scale and meter change', () => {
    const [join] = joinsOf([VERSE, CHORUS], 'verse chorus');
    expect(join).toMatchObject({ motion: 8, fifths: 0, otherMeter: false });
    expect(join?.otherRhythm).toBeCloseTo(1 / 3, 12);
    expect(join?.hardness).toBeCloseTo(8 / 12 + 1 / 3, 12);
  });

  it('come hardest first', () => {
    const waltz = section('waltz', {
      meter: meter('3/4'),
      slots: slots('| A♭ | E♭ |', '3/4'),
      patternId: 'waltz',
    });
    const joins = joinsOf([VERSE, CHORUS, waltz], 'verse chorus waltz');
    expect(joins[0]).toMatchObject({ from: 'chorus', to: 'waltz', otherMeter: true });
    // G and C fit no sign or one sharp, A♭ and E♭ three flats or four: the nearest are three apart.
    expect(joins[0]?.fifths).toBe(3);
  });

  it('have no new rhythm where the pattern goes on, and none where both rest', () => {
    const again = section('again', { slots: slots('| G |'), patternId: 'verse' });
    const silent = section('silent', { slots: slots('| C |') });
    const joins = joinsOf([VERSE, again, silent], 'verse again silent silent');
    const rhythm = (to: string, from: string) =>
      joins.find((join) => join.to === to && join.from === from)?.otherRhythm;
    expect(rhythm('again', 'verse')).toBe(0);
    expect(rhythm('silent', 'again')).toBe(1);
    expect(rhythm('silent', 'silent')).toBe(0);
  });

  it('reckon with what the hands held before a rest', () => {
    const ends = section('ends', { slots: slots('| F | N.C. |') });
    const [join] = joinsOf([ends, CHORUS], 'ends chorus');
    expect(join?.motion).toBe(8);
  });

  it('are none in a song of one section', () => expect(joinsOf([VERSE], 'verse')).toEqual([]));
});

describe('how far apart two scales are', () => {
  // Circle of fifths (docs/sources.md#key-signatures).
  it.each([
    ['| C | F | G |', '| G | C | D |', 1],
    ['| C | F | G |', '| D | G | A |', 2],
    ['| C | F | G |', '| Am | Dm | Em |', 0],
    ['| C | F | G |', '| E♭ | A♭ | B♭ |', 3],
    ['| C | F | G |', '| F♯ | B | C♯ |', 6],
    ['| B | E | F♯ |', '| D♭ | G♭ | A♭ |', 2],
    ['| C |', '| G |', 0],
    ['| N.C. |', '| F♯ |', 0],
  ])('%s and %s: %d fifths', (one, other, fifths) =>
    expect(signatureDistance(chartTimeline(one).chords, chartTimeline(other).chords)).toBe(fifths),
  );
});
