import * as fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import type { Pattern } from '../../../src/core/rhythm/pattern.ts';
import { onlyWhereMeterFits, patternForBar } from '../../../src/core/rhythm/patternAt.ts';
import { type RealiseOptions, realise } from '../../../src/core/rhythm/realise.ts';
import { type Timeline, timelineOf } from '../../../src/core/song/timeline.ts';
import { errorOf, meter, section, slots, song, valueOf } from '../../support/music.ts';
import {
  chartTimeline,
  noteLines,
  pattern,
  plainVoicings,
  sectionsTimeline,
} from '../../support/patterns.ts';
import { left, played, right, withHits } from '../../support/playing.ts';

describe('a pattern over one chord', () => {
  it('gives the hands their notes, sorted by start and key', () =>
    expect(
      noteLines(
        played(chartTimeline('| C |'), pattern('4/4', { left: 'R---5---', right: '..C---C-' })),
      ),
    ).toEqual([
      '0+960 36',
      '480+960 60',
      '480+960 64',
      '480+960 67',
      '960+960 43',
      '1440+480 60',
      '1440+480 64',
      '1440+480 67',
    ]));

  it('goes round and round', () =>
    expect(
      noteLines(played(chartTimeline('| C | F |', '2/4'), pattern('2/4', { left: 'R5' }))),
    ).toEqual(['0+480 36', '480+480 43', '960+480 41', '1440+480 48']));
});

describe('which bar of the pattern is played', () => {
  const twoBars = pattern('4/4', { left: 'R---5---' }, { bars: 2 });

  it('follows one another and comes round', () =>
    expect(left('| C | C | C |', twoBars)).toEqual(['0+1920 36', '1920+1920 43', '3840+1920 36']));

  it('starts over with every section, which cuts it short', () =>
    expect(noteLines(played(sectionsTimeline('| C | C | C |', '| C | C |'), twoBars))).toEqual([
      '0+1920 36',
      '1920+1920 43',
      '3840+1920 36',
      '5760+1920 36',
      '7680+1920 43',
    ]));

  it('gives way at the bar from which a section plays another, which begins with its first bar and ends the section', () => {
    const first = { ...twoBars, ending: pattern('4/4', { left: '3---' }) };
    const other = pattern('4/4', { left: '8---7---' }, { id: 'other', bars: 2 });
    const last = { ...other, ending: pattern('4/4', { left: '6---' }) };
    const verse = section('verse', {
      slots: slots('| C | C | C | C | C | C |'),
      patternId: first.id,
      patternChanges: [{ bar: 3, patternId: 'other' }],
    });
    const timeline = timelineOf(song([verse], 'verse'));
    const patternAt = patternForBar([first, last], timeline);
    const notes = valueOf(realise(timeline, plainVoicings(timeline), patternAt));
    expect(noteLines(notes)).toEqual([
      '0+1920 36',
      '1920+1920 43',
      '3840+1920 36',
      '5760+1920 48',
      '7680+1920 46',
      '9600+1920 45',
    ]);
  });

  it('starts over when the pattern changes and after bars of rest', () => {
    const timeline = chartTimeline('| C | C | C | C | C |');
    const other = pattern('4/4', { left: '8---' }, { id: 'other' });
    const plan = [twoBars, other, twoBars, undefined, twoBars];
    const notes = valueOf(realise(timeline, plainVoicings(timeline), (_bar, i) => plan[i]));
    expect(noteLines(notes)).toEqual(['0+1920 36', '1920+1920 48', '3840+1920 36', '7680+1920 36']);
  });

  it('says in patternTick where in the pattern a hit stands', () =>
    expect(played(chartTimeline('| C | C | C |'), twoBars).map((note) => note.patternTick)).toEqual(
      [0, 1920, 0],
    ));

  it('is refused in a bar of another meter', () => {
    const verse = section('verse', {
      barMeters: [{ bar: 1, meter: meter('2/4') }],
      slots: [...slots('| C |'), { chord: 'no-chord', durationTicks: 960 }, ...slots('| C |')],
    });
    const timeline = timelineOf(song([verse], 'verse'));
    const voicings = plainVoicings(timeline);
    expect(errorOf(realise(timeline, voicings, () => twoBars))).toEqual({
      kind: 'no-pattern-for-meter',
      bar: 1,
    });
    const fitting = realise(
      timeline,
      voicings,
      onlyWhereMeterFits(() => twoBars),
    );
    expect(noteLines(valueOf(fitting))).toEqual(['0+1920 36', '2880+1920 36']);
  });

  it('is refused where the same beats are grouped otherwise', () => {
    const timeline = chartTimeline('| C |', '7/8');
    const p = pattern('3+2+2/8', { left: 'RRR' });
    expect(errorOf(realise(timeline, plainVoicings(timeline), () => p))).toEqual({
      kind: 'no-pattern-for-meter',
      bar: 0,
    });
  });
});

describe('an ending', () => {
  const p = pattern('4/4', { left: 'R---R---', ending: { left: 'R-5-' } }, { bars: 2 });

  it('replaces the last bar of each section', () =>
    expect(noteLines(played(sectionsTimeline('| C | C |', '| C |'), p))).toEqual([
      '0+1920 36',
      '1920+960 36',
      '2880+960 43',
      '3840+960 36',
      '4800+960 43',
    ]));

  it('is counted on from the end of the pattern', () =>
    expect(played(chartTimeline('| C | C |'), p).map((note) => note.patternTick)).toEqual([
      0, 3840, 4800,
    ]));
});

describe('where hits end', () => {
  const tied = (() => {
    const p = pattern('4/4', { left: 'R.....R.' });
    return { ...p, left: p.left.map((hit) => ({ ...hit, length: 720 })) };
  })();

  it('lets a tie over a bar line inside a run sound on', () =>
    expect(left('| C | C / F / |', { ...tied, left: tied.left.slice(1) })).toEqual([
      '1440+720 36',
      '3360+480 41',
    ]));

  it('gives way to the first hit after a seam', () => {
    const timeline = chartTimeline('| C | C |');
    const other = pattern('4/4', { left: '.5--' }, { id: 'other' });
    const notes = realise(timeline, plainVoicings(timeline), (_bar, i) => [tied, other][i]);
    expect(noteLines(valueOf(notes))).toEqual(['0+720 36', '1440+720 36', '2400+1440 43']);
  });

  it('ends at bars of rest, at N.C. and at the end of the timeline', () => {
    const timeline = chartTimeline('| C | C | C | N.C. |');
    const notes = realise(
      timeline,
      plainVoicings(timeline),
      (_bar, i) => [tied, undefined, tied, tied][i],
    );
    expect(noteLines(valueOf(notes))).toEqual([
      '0+720 36',
      '1440+480 36',
      '3840+720 36',
      '5280+480 36',
    ]);
  });

  it('never strikes a key that the hand still holds', () => {
    const p = pattern('4/4', { left: 'R-R-' });
    const overlapping = { ...p, left: p.left.map((hit) => ({ ...hit, length: 1400 })) };
    expect(left('| C |', overlapping)).toEqual(['0+960 36', '960+960 36']);
  });

  it('in a loop gives way to the first hit of the next time round', () =>
    expect(left('| C |', tied, { loop: true })).toEqual(['0+720 36', '1440+480 36']));
});

describe('touch', () => {
  it('is loudness, the left hand a little under the right', () => {
    const p = pattern('4/4', { left: 'RRR.', right: 'TTT.' });
    const touches = ['ghost', 'plain', 'accent'] as const;
    const touched: Pattern = {
      ...p,
      left: p.left.map((hit, i) => ({ ...hit, touch: touches[i]! })),
      right: p.right.map((hit, i) => ({ ...hit, touch: touches[i]! })),
    };
    const notes = played(chartTimeline('| C |'), touched);
    const velocities = (part: string) =>
      notes.filter((note) => note.part === part).map((note) => note.velocity);
    expect(velocities('left')).toEqual([40, 66, 88]);
    expect(velocities('right')).toEqual([44, 72, 96]);
  });

  it('short is half the length, an eighth at the most', () =>
    expect(
      right('| C |', withHits(pattern('4/4', { right: 'TTT---..' }), { held: false })),
    ).toEqual(['0+120 67', '240+120 67', '480+240 67']));
});

it('a short hit keeps the length it is written with', () => {
  const p = withHits(pattern('4/4', { right: 'T-----..' }), { held: false });
  expect(played(chartTimeline('| C |'), p)[0]).toMatchObject({
    durationTicks: 240,
    writtenTicks: 1440,
  });
  const held = played(chartTimeline('| C |'), withHits(p, { held: true }));
  expect(held.every((note) => note.writtenTicks === undefined)).toBe(true);
});

describe('swing', () => {
  const eighths = pattern('4/4', { right: 'TTTTTTTT' }, { swing: { level: 'eighth', ratio: 2 } });

  it('moves both ends of a note', () =>
    expect(right('| C |', eighths).slice(0, 3)).toEqual(['0+320 67', '320+160 67', '480+320 67']));

  it('leaves a beat in triplets alone', () => {
    const p = pattern(
      '4/4',
      { right: 'TTTTT----' },
      { divisions: [2, 3, 2, 2], swing: { level: 'eighth', ratio: 2 } },
    );
    expect(right('| C |', p)).toEqual([
      '0+320 67',
      '320+160 67',
      '480+160 67',
      '640+160 67',
      '800+1120 67',
    ]);
  });

  it('moves a chord change on the off-beat with it', () => {
    const timeline = chartTimeline('| C |');
    const offBeat: Timeline = {
      ...timeline,
      chords: [
        { ...timeline.chords[0]!, endTick: 720 },
        { ...chartTimeline('| F |').chords[0]!, startTick: 720 },
      ],
    };
    const p = pattern('4/4', { right: 'T-------' }, { swing: { level: 'eighth', ratio: 2 } });
    expect(noteLines(played(offBeat, p))).toEqual(['0+800 67', '800+1120 72']);
  });
});

describe('the patterns of a project', () => {
  const timeline = timelineOf(
    song(
      [
        section('verse', { slots: slots('| C |'), patternId: 'calm' }),
        section('chorus', { slots: slots('| F |'), patternId: 'gone' }),
        section('intro', { slots: slots('| G |') }),
      ],
      'intro verse chorus',
    ),
  );
  const calm = pattern('4/4', { left: 'R---' }, { id: 'calm' });

  it('are those their sections name; other sections rest', () => {
    const patternAt = patternForBar([calm], timeline);
    expect(timeline.bars.map((bar, i) => patternAt(bar, i)?.id)).toEqual([
      undefined,
      'calm',
      undefined,
    ]);
  });
});

describe('laws of realising', () => {
  const anyPattern = fc
    .record({
      left: fc.array(fc.constantFrom('R', '5', '8', 'v', 'a', '-', '.'), {
        minLength: 16,
        maxLength: 16,
      }),
      right: fc.array(fc.constantFrom('C', 'T', '1', '5', '-', '.'), {
        minLength: 16,
        maxLength: 16,
      }),
      ratio: fc.constantFrom(1, 1.5, 2, 3),
      stretch: fc.integer({ min: 0, max: 900 }),
      anticipates: fc.boolean(),
    })
    .map(({ left: l, right: r, ratio, stretch, anticipates }) => {
      const p = pattern(
        '4/4',
        { left: l.join(''), right: r.join('') },
        { bars: 2, swing: { level: 'eighth', ratio } },
      );
      return {
        ...p,
        left: p.left.map((hit) => ({ ...hit, length: hit.length + stretch, anticipates })),
      };
    });
  const anyChart = fc.constantFrom('| C / F G |', '| C | N.C. / Am / | F | G |', '| C F | G |');

  it('starts every note inside the timeline, ends it there and never overlaps one key of a hand', () =>
    fc.assert(
      fc.property(anyPattern, anyChart, (p, chart) => {
        const timeline = chartTimeline(chart);
        const notes = played(timeline, p);
        for (const [i, note] of notes.entries()) {
          expect(Number.isInteger(note.startTick) && Number.isInteger(note.durationTicks)).toBe(
            true,
          );
          expect(note.durationTicks).toBeGreaterThan(0);
          expect(note.startTick).toBeGreaterThanOrEqual(0);
          expect(note.startTick + note.durationTicks).toBeLessThanOrEqual(timeline.lengthTicks);
          const later = notes
            .slice(i + 1)
            .find((other) => other.part === note.part && other.keyNumber === note.keyNumber);
          if (later)
            expect(note.startTick + note.durationTicks).toBeLessThanOrEqual(later.startTick);
        }
      }),
      { numRuns: 60 },
    ));

  it('in a loop strikes the same rhythm as once', () =>
    fc.assert(
      fc.property(anyPattern, anyChart, (p, chart) => {
        const starts = (options: RealiseOptions) => [
          ...new Set(played(chartTimeline(chart), p, options).map((note) => note.startTick)),
        ];
        expect(starts({ loop: true })).toEqual(starts({}));
      }),
      { numRuns: 30 },
    ));
});
