import * as fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { formatPitchClass, keyNumberOf } from '../../../src/core/harmony/pitch.ts';
import { notate } from '../../../src/core/rhythm/notate.ts';
import type { Pattern } from '../../../src/core/rhythm/pattern.ts';
import { withoutSwing } from '../../../src/core/rhythm/patternMoves.ts';
import { realise } from '../../../src/core/rhythm/realise.ts';
import type { Sheet, SheetEvent } from '../../../src/core/rhythm/sheet.ts';
import { spelledPitch } from '../../../src/core/rhythm/spelling.ts';
import type { Timeline } from '../../../src/core/song/timeline.ts';
import { barTicks, formatMeter } from '../../../src/core/time/meter.ts';
import type { HandName } from '../../../src/core/voicing/voicing.ts';
import { chord, valueOf } from '../../support/music.ts';
import { chartTimeline, pattern, plainVoicings, sectionsTimeline } from '../../support/patterns.ts';
import { shelf } from '../../support/shelf.ts';

function sheetOf(p: Pattern, timeline: Timeline): Sheet {
  const notes = realise(timeline, plainVoicings(timeline), () => withoutSwing(p));
  return notate(valueOf(notes), timeline);
}

/** A value as text: `8.` dotted eighth, `r4` quarter rest, `8t` in a tuplet, `2~` tied on, `r1b` bar rest. */
function eventText({ written, notes, isBarRest }: SheetEvent): string {
  return [
    notes.length === 0 ? 'r' : '',
    written.value,
    written.dots === 1 ? '.' : '',
    written.tuplet ? 't' : '',
    isBarRest ? 'b' : '',
    notes.some((note) => note.tiedToNext) ? '~' : '',
  ].join('');
}

/** The voices of a staff, bars divided by `|`, voices by `/`. */
function staffText(sheet: Sheet, hand: HandName): string {
  return sheet.bars
    .map((bar) => bar.staves[hand].map((voice) => voice.map(eventText).join(' ')).join(' / '))
    .join(' | ');
}

function valuesOf(meterText: string, right: string, parts: Partial<Pattern> = {}): string {
  const p = pattern(meterText, { right }, parts);
  const chart = `|${' C |'.repeat(p.bars)}`;
  return staffText(sheetOf(p, chartTimeline(chart, meterText)), 'right');
}

describe('note values', () => {
  // Common practice: a value is not to hide the beats of its bar.
  it.each([
    ['4/4', 'T---', '1'],
    ['4/4', 'TTTT', '4 4 4 4'],
    ['4/4', 'T-T-', '2 2'],
    ['4/4', 'T--T', '2. 4'],
    ['4/4', 'TT--', '4 2.'],
    ['4/4', 'TT-T', '4 2 4'],
    ['4/4', 'T--TT---', '4. 8 2'],
    ['4/4', 'TT-TT---', '8 4 8 2'],
    ['4/4', 'T-TT-TT-', '4 8 8~ 8 8 4'],
    ['4/4', 'T----T--', '2~ 8 4.'],
    ['4/4', '.T-----T', 'r8 4.~ 4. 8'],
    ['4/4', 'T--TT-TTTTTTT-T-', '8. 16 8 16 16 16 16 16 16 8 8'],
    ['4/4', 'TT-TT---T-------', '16 8 16 4 2'],
    ['2/4', 'T--T', '4. 8'],
    ['3/4', 'T--', '2.'],
    ['3/4', 'T-T', '2 4'],
    ['3/4', 'TT-', '4 2'],
    ['3/4', 'T--TT-', '4. 8 4'],
    ['5/4', 'T----', '2.~ 2'],
    ['5/4', 'T--T-', '2. 2'],
    ['6/8', 'T-----', '2.'],
    ['6/8', 'T--T--', '4. 4.'],
    ['6/8', 'T-TT-T', '4 8 4 8'],
    ['6/8', 'TT--T-', '8 4~ 8 4'],
    ['6/8', 'T--TT-T-T-T-', '8. 16 8 8 8 8'],
    ['9/8', 'T--------', '2.~ 4.'],
    ['12/8', 'T-----------', '1.'],
    ['12/8', 'T-----T-----', '2. 2.'],
    ['2/2', 'T---', '1'],
  ])('in %s %s are %s', (meterText, right, text) => expect(valuesOf(meterText, right)).toBe(text));

  it('are tied over bar lines', () => {
    expect(valuesOf('4/4', 'T--TT------T', { bars: 3 })).toBe('2. 4 | 1~ | 2. 4');
    expect(valuesOf('4/4', '...T--..', { bars: 2 })).toBe('r2 r4 4~ | 2 r2');
  });
});

describe('rests', () => {
  it.each([
    ['4/4', '....', 'r1b'],
    ['3/4', '...', 'r1b'],
    ['4/4', '.T..', 'r4 4 r2'],
    ['4/4', 'T...', '4 r4 r2'],
    ['4/4', '...T....', 'r4 r8 8 r2'],
    ['3/4', 'T..', '4 r4 r4'],
    ['6/8', 'T.....', '8 r8 r8 r4.'],
    ['6/8', '...T--', 'r4. 4.'],
  ])('in %s %s fill whole spans: %s', (meterText, right, text) =>
    expect(valuesOf(meterText, right)).toBe(text),
  );
});

describe('tuplets', () => {
  it.each([
    ['4/4', 'TTTTTT', [3, 1, 1, 1], '8t 8t 8t 4 4 4'],
    ['4/4', 'T-TTTT', [3, 1, 1, 1], '4t 8t 4 4 4'],
    ['4/4', '.TTTTT', [3, 1, 1, 1], 'r8t 8t 8t 4 4 4'],
    ['2/4', 'TTTTTTT', [6, 1], '16t 16t 16t 16t 16t 16t 4'],
    ['6/8', 'TTTTT', [2, 3], '8t 8t 8 8 8'],
    ['6/8', 'TTTTTTT', [4, 3], '8t 8t 8t 8t 8 8 8'],
  ] as const)('in %s %s divided %j are %s', (meterText, right, divisions, text) =>
    expect(valuesOf(meterText, right, { divisions })).toBe(text),
  );

  it('have their ratio and their edges', () => {
    const p = pattern('4/4', { right: 'TTTTTT' }, { divisions: [3, 1, 1, 1] });
    const [voice] = sheetOf(p, chartTimeline('| C |')).bars[0]!.staves.right;
    expect(voice!.map((event) => event.tupletEdge)).toEqual([
      'start',
      undefined,
      'stop',
      undefined,
      undefined,
      undefined,
    ]);
    expect(voice![0]!.written.tuplet).toEqual({ actual: 3, normal: 2 });
  });

  it('are tied into by a note of the beat before', () =>
    expect(valuesOf('4/4', 'T-TTTT', { divisions: [1, 3, 1, 1] })).toBe('4~ 8t 8t 8t 4 4'));
});

/** The beams of a right hand: `[` begins, `-` goes on, `]` ends, `.` none. */
function beams(right: string, meterText = '4/4'): string {
  const signs = { begin: '[', continue: '-', end: ']' };
  const sheet = sheetOf(pattern(meterText, { right }), chartTimeline('| C |', meterText));
  return sheet.bars[0]!.staves.right[0]!.map((e) => (e.beam ? signs[e.beam] : '.')).join('');
}

describe('beams', () => {
  it('join the notes of a beat that are shorter than a quarter', () => {
    expect(beams('TTTTTTTT')).toBe('[][][][]');
    expect(beams('TTTTTT', '6/8')).toBe('[-][-]');
    expect(beams('T-TT.TTT')).toBe('.[]..[]');
  });
});

describe('articulation and dynamics', () => {
  it('are on the attack alone', () => {
    const p = pattern('4/4', { right: 'TTT----T' });
    const right = p.right.map((hit, i) => ({
      ...hit,
      held: i !== 0,
      touch: (['plain', 'ghost', 'accent', 'plain'] as const)[i]!,
    }));
    const sheet = sheetOf({ ...p, right }, chartTimeline('| C |'));
    const [voice] = sheet.bars[0]!.staves.right;
    expect(voice!.map((event) => event.articulations)).toEqual([
      ['staccato'],
      ['ghost'],
      ['accent'],
      [],
      [],
    ]);
    expect(staffText(sheet, 'right')).toBe('8 8 4~ 4. 8');
  });
});

describe('short notes', () => {
  const short = (at: number, length: number) => {
    const p = pattern('4/4', { right: 'T.......' }, { bars: 2 });
    const right = [{ ...p.right[0]!, at, length, held: false }];
    return staffText(sheetOf({ ...p, right }, chartTimeline('| C | C |')), 'right');
  };

  // Common practice: a staccato note is not tied.
  it('end with the first value that they are written with, never tied', () => {
    expect(short(360, 240)).toBe('r8 r16 16 r4 r2 | r1b');
    expect(short(1800, 240)).toBe('r2 r4 r8 r16 16 | r1b');
  });

  it('keep a value that may cross a beat', () => {
    expect(short(240, 480)).toBe('r8 4 r8 r2 | r1b');
  });
});

describe('voices', () => {
  it('keep a held bass under moving notes in a voice of its own', () => {
    const p = pattern('4/4', { left: '.5.5' });
    const left = [
      { at: 0, length: 1920, play: ['root'], touch: 'plain', held: true } as const,
      ...p.left,
    ];
    expect(staffText(sheetOf({ ...p, left }, chartTimeline('| C |')), 'left')).toBe(
      'r4 4 r4 4 / 1',
    );
  });

  it('end a note where the next one begins if it is not held under it', () => {
    const p = pattern('4/4', { left: 'R-5-' });
    const left = p.left.map((hit) => ({ ...hit, length: 1100 }));
    expect(staffText(sheetOf({ ...p, left }, chartTimeline('| C |')), 'left')).toBe('2 2');
  });
});

/** How a key is spelled over a chord, before a key that comes next if one is named. */
function name(key: number, symbol: string, next?: number): string {
  const into = next === undefined ? undefined : spelledPitch(next, chord(symbol));
  const pitch = spelledPitch(key, chord(symbol), into);
  return formatPitchClass(pitch) + pitch.octave;
}

describe('chords and spelling', () => {
  it('stand where they change, and at the start of a section', () => {
    const sheet = sheetOf(
      pattern('4/4', { left: 'R---' }),
      sectionsTimeline('| C | C / F / | F |', '| F |'),
    );
    expect(
      sheet.bars.map((bar) => bar.chords.map(({ startTick }) => startTick - bar.startTick)),
    ).toEqual([[0], [960], [], [0]]);
  });

  it.each([
    [60, 'C', 'C4'],
    [63, 'Cm', 'E♭4'],
    [63, 'B', 'D♯4'],
    [66, 'D7', 'F♯4'],
    [66, 'E♭m', 'G♭4'],
    [70, 'G♭', 'B♭4'],
    [59, 'C♭', 'C♭4'],
    [60, 'C♯maj7', 'B♯3'],
    [45, 'C7', 'A2'],
    [46, 'C', 'B♭2'],
    [42, 'D/F♯', 'F♯2'],
    [51, 'C/E♭', 'E♭3'],
  ])('key %i over %s is %s', (key, symbol, pitch) => expect(name(key, symbol)).toBe(pitch));

  it('a note that leads up is spelled as a leading note', () => {
    expect(name(63, 'C', 64)).toBe('D♯4');
    expect(name(63, 'C')).toBe('E♭4');
  });

  it('without a chord keys are spelled with sharps', () =>
    expect(formatPitchClass(spelledPitch(70, undefined))).toBe('A♯'));
});

describe('laws of notation', () => {
  const CHARTS = {
    '2/4': '| C | F |',
    '3/4': '| C | F |',
    '4/4': '| C / F / | G |',
    '5/4': '| C | F |',
    '2/2': '| C | F |',
    '6/4': '| C | F |',
    '7/4': '| C | F |',
    '7/8': '| C | F |',
    '3+2+2/8': '| C | F |',
    '6/8': '| C | F |',
    '9/8': '| C | F |',
    '12/8': '| C | F |',
  } as const;

  it.each(shelf())('$pattern.name fills its bars and keeps every attack', ({ pattern: p }) => {
    const meterText = formatMeter(p.meter) as keyof typeof CHARTS;
    const timeline = chartTimeline(CHARTS[meterText], meterText);
    const notes = valueOf(realise(timeline, plainVoicings(timeline), () => withoutSwing(p)));
    const sheet = notate(notes, timeline);
    for (const bar of sheet.bars)
      for (const hand of ['left', 'right'] as const)
        for (const voice of bar.staves[hand]) {
          const lengths = voice.reduce((sum, event) => sum + event.durationTicks, 0);
          expect(lengths).toBe(barTicks(p.meter));
        }
    const heads = sheet.bars.flatMap((bar) =>
      (['left', 'right'] as const).flatMap((hand) =>
        bar.staves[hand]
          .flat()
          .flatMap((event) =>
            event.notes
              .filter((note) => !note.tiedFromBefore)
              .map((note) => `${event.startTick} ${hand} ${note.keyNumber}`),
          ),
      ),
    );
    const struck = notes.map((note) => `${note.startTick} ${note.part} ${note.keyNumber}`);
    expect(heads.toSorted()).toEqual(struck.toSorted());
  });

  it('writes every rhythm of sixteenths with its own lengths and pitches', () =>
    fc.assert(
      fc.property(
        fc.array(fc.constantFrom('T', '-', '.'), { minLength: 16, maxLength: 16 }),
        fc.constantFrom('4/4', '2/2'),
        (signs, meterText) => {
          const divisions = meterText === '4/4' ? ([4, 4, 4, 4] as const) : ([8, 8] as const);
          const p = pattern(meterText, { right: signs.join('') }, { divisions });
          const [bar] = sheetOf(p, chartTimeline('| C |', meterText)).bars;
          const values = bar!.staves.right[0]!;
          for (const event of values) {
            if (event.isBarRest) continue;
            const { value, dots } = event.written;
            expect((1920 / value) * (dots === 1 ? 1.5 : 1)).toBe(event.durationTicks);
            for (const note of event.notes) expect(keyNumberOf(note.pitch)).toBe(note.keyNumber);
          }
          const attacks = values.filter((e) => e.notes.some((n) => !n.tiedFromBefore));
          expect(attacks.map((e) => e.startTick)).toEqual(p.right.map((hit) => hit.at));
        },
      ),
      { numRuns: 150 },
    ));
});
