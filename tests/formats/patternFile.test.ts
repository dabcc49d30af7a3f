import { readFileSync } from 'node:fs';
import { resolve } from 'node:path';
import * as fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import type { Pattern } from '../../src/core/rhythm/pattern.ts';
import { SOURCE_PARTS } from '../../src/core/rhythm/sources.ts';
import { BASS_TONES, VOICE_TONES } from '../../src/core/rhythm/tones.ts';
import { barTicks } from '../../src/core/time/meter.ts';
import {
  decodePattern,
  decodeShelfPattern,
  encodePattern,
  encodeShelfPattern,
} from '../../src/formats/patternFile.ts';
import { formatPosition, parsePosition } from '../../src/formats/patternPositions.ts';
import { errorOf, meter, valueOf } from '../support/music.ts';
import { SHELF_FILES, shelf } from '../support/shelf.ts';

const FILE = {
  version: 1,
  id: 'p',
  name: 'Pattern',
  meter: '4/4',
  divisions: 2,
  left: ['1 root, 3 fifth 1/4 accent'],
  right: ['2& all 1/8 short ghost, 4 top+bottom 1/2 anticipates'],
};

const SHELF_FILE = { ...FILE, origin: 'common practice', use: 'Tests.', tempo: [60, 90], tags: [] };

describe('a pattern file', () => {
  it('is read into hits at ticks', () =>
    expect(valueOf(decodePattern(FILE))).toEqual({
      id: 'p',
      name: 'Pattern',
      meter: meter('4/4'),
      bars: 1,
      divisions: [2, 2, 2, 2],
      swing: { level: 'eighth', ratio: 1 },
      sources: [],
      left: [
        { at: 0, length: 960, play: ['root'], touch: 'plain', held: true },
        { at: 960, length: 480, play: ['fifth'], touch: 'accent', held: true },
      ],
      right: [
        { at: 720, length: 240, play: ['all'], touch: 'ghost', held: false },
        {
          at: 1440,
          length: 960,
          play: ['top', 'bottom'],
          touch: 'plain',
          held: true,
          anticipates: true,
        },
      ],
    }));

  it('may be given as text', () =>
    expect(decodePattern(JSON.stringify(FILE))).toEqual(decodePattern(FILE)));

  it('lets a hit without a length last until the next one or the end, over bar lines', () => {
    const left = ['1 root, 2 root', '3 root'];
    const p = valueOf(decodePattern({ ...FILE, left, right: ['', ''] }));
    expect(p.left.map((hit) => hit.length)).toEqual([480, 2400, 960]);
  });

  it('has an ending of one bar', () => {
    const ending = { left: '1 root', right: '2 all, 4 all' };
    expect(valueOf(decodePattern({ ...FILE, ending })).ending).toEqual({
      left: [{ at: 0, length: 1920, play: ['root'], touch: 'plain', held: true }],
      right: [
        { at: 480, length: 960, play: ['all'], touch: 'plain', held: true },
        { at: 1440, length: 480, play: ['all'], touch: 'plain', held: true },
      ],
    });
  });

  it('has an ending that may be divided on its own, which is written and read back', () => {
    const ending = { divisions: [2, 2, 2, 3], left: '1 root', right: '4 all 1/12, 4trip all 1/12' };
    const p = valueOf(decodePattern({ ...FILE, ending }));
    expect(p.ending?.divisions).toEqual([2, 2, 2, 3]);
    expect(p.divisions.every((division) => division === 2)).toBe(true);
    expect(valueOf(decodePattern(encodePattern(p)))).toEqual(p);
    const even = valueOf(decodePattern({ ...FILE, ending: { ...ending, divisions: 6 } }));
    expect(even.ending?.divisions).toEqual([6, 6, 6, 6]);
  });

  it('has sources whose strokes have usual strengths and no pitch if nothing else is said', () => {
    const sources = [
      { part: 'kick', strokes: ['1, 2& ghost, 3 1/4 accent'] },
      { part: 'bass', name: 'Bass guitar', strokes: ['1 root strength=0.8 presence=0.25'] },
      { part: 'kick', strokes: [''] },
    ];
    expect(valueOf(decodePattern({ ...FILE, sources })).sources).toEqual([
      {
        id: 'kick',
        name: 'kick',
        part: 'kick',
        strokes: [
          { at: 0, length: 720, strength: 0.7, presence: 1, what: ['unpitched'] },
          { at: 720, length: 240, strength: 0.35, presence: 1, what: ['unpitched'] },
          { at: 960, length: 480, strength: 1, presence: 1, what: ['unpitched'] },
        ],
      },
      {
        id: 'bass',
        name: 'Bass guitar',
        part: 'bass',
        strokes: [{ at: 0, length: 1920, strength: 0.8, presence: 0.25, what: ['root'] }],
      },
      { id: 'kick 2', name: 'kick', part: 'kick', strokes: [] },
    ]);
  });

  it('says more when it comes from the shelf', () =>
    expect(valueOf(decodeShelfPattern(SHELF_FILE))).toMatchObject({
      pattern: { id: 'p' },
      origin: 'common practice',
      use: 'Tests.',
      tempoRange: [60, 90],
      tags: [],
    }));
});

describe('a count in a pattern file', () => {
  it.each([
    ['4/4', '1', 0],
    ['4/4', '2&', 720],
    ['4/4', '3e', 1080],
    ['4/4', '4a', 1800],
    ['4/4', '1trip', 160],
    ['4/4', '1let', 320],
    ['4/4', '2+5/6', 880],
    ['6/8', '2', 720],
    ['6/8', '1&', 240],
    ['6/8', '2a', 1200],
    ['6/8', '1+1/6', 120],
    ['7/8', '3&', 1200],
    ['7/8', '2&', 720],
    ['2/2', '2e', 1200],
  ])('in %s %s is tick %i and is written so', (meterText, text, at) => {
    expect(parsePosition(text, meter(meterText))).toBe(at);
    expect(formatPosition(at, meter(meterText))).toBe(text);
  });

  it.each(['5', '0', '&', '2b', '1+3/2', '1+1/7', '2 &', ''])('in 4/4 “%s” is none', (text) =>
    expect(parsePosition(text, meter('4/4'))).toBeUndefined(),
  );
});

describe('a pattern file that is wrong', () => {
  it.each<[string, object, string, string]>([
    ['no meter', { meter: '4/5' }, 'meter', '4/5'],
    ['a wrong division', { divisions: 5 }, 'divisions', '5'],
    ['too few divisions', { divisions: [2, 2] }, 'divisions', '2'],
    ['an unknown tone', { left: ['1 root, 2 bass'] }, 'left[0]', 'bass'],
    ['a tone of the other hand', { right: ['1 root'] }, 'right[0]', 'root'],
    ['a hit without a tone', { left: ['1 1/4'] }, 'left[0]', '1 1/4'],
    ['a beat too many', { left: ['5 root'] }, 'left[0]', '5'],
    ['a length of nothing', { left: ['1 root 0/4'] }, 'left[0]', '0/4'],
    ['a length twice', { left: ['1 root 1/4 1/8'] }, 'left[0]', '1/8'],
    ['hits out of order', { left: ['2 root, 1 root'] }, 'left[0]', '1 root'],
    ['two hits on one count', { left: ['1 root, 1 fifth'] }, 'left[0]', '1 fifth'],
    ['hands of unequal length', { right: ['', ''] }, 'right', '2'],
    [
      'an ending with too few divisions',
      { ending: { divisions: [2, 2], left: '', right: '' } },
      'ending.divisions',
      '2',
    ],
    ['a wrong ending', { ending: { left: '1 roof', right: '' } }, 'ending.left', 'roof'],
    [
      'an unknown part',
      { sources: [{ part: 'lute', strokes: [''] }] },
      'sources[0].part',
      '"lute"',
    ],
    [
      'a source too long',
      { sources: [{ part: 'kick', strokes: ['', ''] }] },
      'sources[0].strokes',
      '2',
    ],
    [
      'a strength over 1',
      { sources: [{ part: 'kick', strokes: ['1 strength=2'] }] },
      'sources[0].strokes[0]',
      'strength=2',
    ],
    ['a swing that drags', { swing: { level: 'eighth', ratio: 0.1 } }, 'swing.ratio', '0.1'],
    ['a swing without end', { swing: { level: 'eighth', ratio: 1e308 } }, 'swing.ratio', '1e+308'],
    ['a field of no meaning', { tempos: [60, 90] }, 'tempos', '"tempos"'],
  ])('with %s says where and what', (_what, change, path, found) =>
    expect(errorOf(decodePattern({ ...FILE, ...change }))).toMatchObject({
      kind: 'wrong-value',
      path,
      found,
    }),
  );

  it.each([
    { name: '' },
    { swing: { level: 'eighth', ratio: 0.5 } },
    { swing: { level: 'sixteenth', ratio: 4 } },
  ] as const)('is not one that was written: %j', (change) => {
    const odd: Pattern = { ...valueOf(decodePattern(FILE)), ...change };
    expect(valueOf(decodePattern(encodePattern(odd)))).toEqual(odd);
  });

  it('says what is missing', () => {
    const { left: _left, ...rest } = FILE;
    expect(errorOf(decodePattern(rest))).toMatchObject({ path: 'left', found: 'undefined' });
    expect(errorOf(decodeShelfPattern({ ...SHELF_FILE, use: undefined }))).toMatchObject({
      path: 'use',
      found: 'nothing',
    });
  });

  it('says that it is no JSON, no object, or too new', () => {
    expect(errorOf(decodePattern('{ version: 1'))).toMatchObject({ kind: 'not-json' });
    expect(errorOf(decodePattern('7'))).toMatchObject({ kind: 'wrong-value', path: '' });
    expect(errorOf(decodePattern('[]'))).toMatchObject({ kind: 'wrong-value', path: 'version' });
    expect(errorOf(decodePattern(null))).toMatchObject({ kind: 'wrong-value', path: '' });
    expect(errorOf(decodePattern({ ...FILE, version: 2 }))).toEqual({
      kind: 'newer-version',
      version: 2,
    });
  });

  it('never throws, whatever JSON it is given', () =>
    fc.assert(
      fc.property(fc.json(), (json) => {
        expect(decodePattern(json).ok).toBe(false);
      }),
      { numRuns: 200 },
    ));
});

function inOrder<E extends { at: number }>(event: fc.Arbitrary<E>): fc.Arbitrary<E[]> {
  return fc
    .uniqueArray(event, { maxLength: 8, selector: ({ at }) => at })
    .map((events) => events.toSorted((a, b) => a.at - b.at));
}

/** Any pattern of one to three bars whose hits stand at any ticks. */
function anyPattern(): fc.Arbitrary<Pattern> {
  const grid = fc.record({
    meter: fc.constantFrom('2/4', '3/4', '4/4', '5/4', '6/8', '9/8', '12/8', '7/8').map(meter),
    bars: fc.integer({ min: 1, max: 3 }),
  });
  return grid.chain((g) => {
    const end = g.bars * barTicks(g.meter);
    const hit = <Tone>(tones: readonly Tone[]) =>
      fc.record(
        {
          at: fc.nat(end - 1),
          length: fc.integer({ min: 1, max: 4000 }),
          play: fc.uniqueArray(fc.constantFrom(...tones), { minLength: 1, maxLength: 3 }),
          touch: fc.constantFrom('ghost' as const, 'plain' as const, 'accent' as const),
          held: fc.boolean(),
          anticipates: fc.constant(true as const),
        },
        { requiredKeys: ['at', 'length', 'play', 'touch', 'held'] },
      );
    const stroke = fc.record({
      at: fc.nat(end - 1),
      length: fc.integer({ min: 1, max: 2000 }),
      strength: fc.double({ min: 0, max: 1, noNaN: true }),
      presence: fc.double({ min: 0, max: 1, noNaN: true }),
      what: fc.constantFrom(['unpitched'] as const, ['root'] as const, ['voice-2', 'top'] as const),
    });
    return fc.record({
      id: fc.constant('p'),
      name: fc.string({ minLength: 1 }),
      meter: fc.constant(g.meter),
      bars: fc.constant(g.bars),
      divisions: fc.constant(
        Array.from({ length: g.bars * beatsOf(g.meter) }, (_, i) => (i % 2 ? 2 : 3)),
      ),
      swing: fc.constantFrom(
        { level: 'eighth' as const, ratio: 1 },
        { level: 'sixteenth' as const, ratio: 1.37 },
      ),
      left: inOrder(hit(BASS_TONES)),
      right: inOrder(hit(VOICE_TONES)),
      sources: fc.array(
        fc.record({
          id: fc.string(),
          name: fc.string(),
          part: fc.constantFrom(...SOURCE_PARTS),
          strokes: inOrder(stroke),
        }),
        { maxLength: 2 },
      ),
    }) as fc.Arbitrary<Pattern>;
  });
}

function beatsOf({ beats, unit, groups }: Pattern['meter']): number {
  return unit >= 8 ? groups.length : beats;
}

describe('writing and reading', () => {
  it('gives any pattern back', () =>
    fc.assert(
      fc.property(anyPattern(), (p) => {
        expect(valueOf(decodePattern(encodePattern(p)))).toEqual(p);
      }),
      { numRuns: 100 },
    ));

  it.each(shelf())('gives $pattern.name back', (entry) =>
    expect(valueOf(decodeShelfPattern(encodeShelfPattern(entry)))).toEqual(entry),
  );
});

describe('the JSON Schema in docs/', () => {
  const schema = JSON.parse(
    readFileSync(resolve(import.meta.dirname, '../../docs/pattern-file.schema.json'), 'utf8'),
  ) as {
    properties: Record<string, unknown>;
    required: string[];
    $defs: Record<string, { pattern: string; examples: string[] }>;
  };
  const matches = (bar: string, text: string) =>
    new RegExp(schema.$defs[bar]!.pattern, 'u').test(text);

  it.each(SHELF_FILES)('knows every field and line of $name', ({ text }) => {
    const file = JSON.parse(text) as Record<string, unknown> & {
      left: string[];
      right: string[];
      ending?: { left: string; right: string };
      sources?: { strokes: string[] }[];
    };
    expect(Object.keys(file).filter((key) => !(key in schema.properties))).toEqual([]);
    expect(schema.required.filter((key) => !(key in file))).toEqual([]);
    const { left, right, ending, sources = [] } = file;
    const wrong = [
      ...[...left, ending?.left ?? ''].filter((line) => !matches('leftBar', line)),
      ...[...right, ending?.right ?? ''].filter((line) => !matches('rightBar', line)),
      ...sources.flatMap((s) => s.strokes).filter((line) => !matches('strokeBar', line)),
    ];
    expect(wrong).toEqual([]);
  });

  it('gives examples that can be read', () => {
    const [left, right] = [schema.$defs['leftBar']!, schema.$defs['rightBar']!];
    for (const [hand, { examples }] of [
      ['left', left],
      ['right', right],
    ] as const)
      for (const line of examples) {
        expect(matches(`${hand}Bar`, line)).toBe(true);
        expect(decodePattern({ ...FILE, [hand]: [line] }).ok).toBe(true);
      }
  });

  it.each([
    ['leftBar', '1 all'],
    ['leftBar', '1'],
    ['rightBar', '2& root'],
    ['rightBar', 'x all'],
    ['strokeBar', '& ghost'],
  ])('refuses as %s “%s”', (bar, line) => expect(matches(bar, line)).toBe(false));
});
