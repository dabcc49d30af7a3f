import { readFileSync } from 'node:fs';
import { resolve } from 'node:path';
import * as fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import type { Project } from '../../src/core/project.ts';
import { migrated, PROJECT_VERSION } from '../../src/formats/migrations.ts';
import { decodePattern, encodePattern } from '../../src/formats/patternFile.ts';
import { decodeProject, encodeProject, PROJECT_FORMAT } from '../../src/formats/projectFile.ts';
import { addPattern } from '../../src/state/edits/pattern.ts';
import { anyEdit } from '../support/edits.ts';
import {
  chord,
  errorOf,
  meter,
  minorKey,
  section,
  slots,
  song,
  valueOf,
} from '../support/music.ts';
import { pattern, source } from '../support/patterns.ts';
import { PRACTICE, project } from '../support/project.ts';
import { shelf } from '../support/shelf.ts';

/** A small project in which every property that may be left out is there somewhere. */
function fullProject(): Project {
  const grid = { meter: meter('4/4'), bars: 1, divisions: [2, 2, 2, 3] as const };
  const groove = pattern(
    '4/4',
    { left: 'R---5-R--', right: '..C-..C..', ending: { left: 'R-----8--', right: 'C-----T--' } },
    {
      ...grid,
      name: 'Groove',
      swing: { level: 'eighth', ratio: 1.5 },
      sources: [source(grid, 'kick', 'x---x-x--')],
    },
  );
  const pushed = groove.right.map((hit, i) =>
    i === 1 ? { ...hit, touch: 'accent' as const, held: false, anticipates: true } : hit,
  );
  const [first, ...rest] = slots('| B♭m7 / E♭9/G / | N.C. | 2/4 Fm7♭5 |');
  const verse = section('verse', {
    slots: [{ ...first!, fixedKeys: { left: [34], right: [58, 61, 65, 68] } }, ...rest],
    barMeters: [{ bar: 2, meter: meter('2/4') }],
    patternId: 'p',
  });
  const { form, ...words } = song([verse], 'verse verse', { key: minorKey('B♭'), notes: 'Low.' });
  return project({
    song: {
      ...words,
      form: form.map((entry, i) => (i === 1 ? { ...entry, patternId: 'p' } : entry)),
    },
    patterns: [{ ...groove, right: pushed }],
    practice: {
      ...PRACTICE,
      click: { ...PRACTICE.click, beats: [1, 3] },
      drill: { ...PRACTICE.drill, chord: chord('G13♯11'), patternId: 'p' },
    },
  });
}

function goldenFile(version: number): string {
  return resolve(import.meta.dirname, `../golden/project-version-${version}.json`);
}

/** A project file with one thing in it changed. */
function fileWith(
  change: (data: Record<string, unknown> & { project: Project }) => unknown,
): string {
  return JSON.stringify(change(JSON.parse(encodeProject(fullProject()))));
}

/** A project file in which one property, named by its path, has another value; undefined takes it out. */
function withValue(path: string, value: unknown): string {
  return fileWith((data) => {
    const steps = path.split(/[.[\]]+/).filter(Boolean);
    const last = steps.pop() ?? '';
    const holder = steps.reduce<unknown>(
      (at, step) => (at as Record<string, unknown>)[step],
      data.project,
    ) as Record<string, unknown>;
    holder[last] = value;
    return data;
  });
}

describe('a project file', () => {
  it('is written as the golden file of its version', async () =>
    expect(encodeProject(fullProject())).toMatchFileSnapshot(goldenFile(PROJECT_VERSION)));

  it('of version 1 is read as what it was', () =>
    expect(decodeProject(readFileSync(goldenFile(1), 'utf8'))).toEqual({
      ok: true,
      value: fullProject(),
    }));

  it('reads back as the same project after any edits', () =>
    fc.assert(
      fc.property(fc.array(anyEdit(), { maxLength: 15 }), (edits) => {
        const edited = edits.reduce((before, edit) => edit(before), fullProject());
        expect(decodeProject(encodeProject(edited))).toEqual({ ok: true, value: edited });
      }),
    ));

  it('keeps how the click ticks, sounds and rests, and how it is counted in', () => {
    const { practice } = fullProject();
    const click = {
      ...practice.click,
      subdivision: 'triplets',
      sound: 'beep',
      rests: { sounding: 2, resting: 6 },
      countInVoice: 'spoken',
    } as const;
    const set = { ...fullProject(), practice: { ...practice, click } };
    expect(decodeProject(encodeProject(set))).toEqual({ ok: true, value: set });
  });

  it('holds every shipped pattern', () => {
    const all = shelf().reduce((before, shipped) => addPattern(shipped.pattern)(before), project());
    expect(all.patterns).toHaveLength(shelf().length + 1);
    expect(decodeProject(encodeProject(all))).toEqual({ ok: true, value: all });
  });
});

describe('a text that is no project', () => {
  it.each([
    ['nothing', ''],
    ['some words', 'Lamps Along the Quay'],
    ['a file that is cut off', encodeProject(fullProject()).slice(0, 500)],
  ])('is %s', (_, text) =>
    expect(errorOf(decodeProject(text))).toMatchObject({ kind: 'not-json', reason: /JSON/ }),
  );

  it.each(['null', '[]', '"vampwright-project"', '{}', '{"format":"something","version":1}'])(
    'is JSON of something else: %s',
    (text) => expect(errorOf(decodeProject(text))).toEqual({ kind: 'not-a-project' }),
  );

  it.each([
    [undefined, ''],
    ['1', '"1"'],
    [0, '0'],
    [1.5, '1.5'],
  ])('has no version that counts: %j', (version, found) =>
    expect(errorOf(decodeProject(JSON.stringify({ format: PROJECT_FORMAT, version })))).toEqual({
      kind: 'no-version',
      found,
    }),
  );

  it('comes from a later release', () => {
    const version = PROJECT_VERSION + 1;
    expect(errorOf(decodeProject(fileWith((data) => ({ ...data, version }))))).toEqual({
      kind: 'newer-version',
      version,
      known: PROJECT_VERSION,
    });
  });

  it('has no project in it', () =>
    expect(
      errorOf(decodeProject(fileWith((data) => ({ ...data, project: undefined })))),
    ).toMatchObject({
      kind: 'wrong-value',
      path: '',
      found: 'undefined',
    }));
});

describe('a value that is not allowed', () => {
  it.each<[string, unknown, string, string]>([
    ['song.title', 7, 'string', '7'],
    ['song.key.tonic.letter', 'H', '"C" | "D"', '"H"'],
    ['song.tempo.bpm', 0, '>=20', '0'],
    ['song.tempo.bpm', '120', 'number', '"120"'],
    ['song.tempo.bpm', null, 'number', 'null'],
    ['song.sections[0].kind', 'refrain', '"verse"', '"refrain"'],
    ['song.sections[0].meter.unit', 3, '16', '3'],
    ['song.sections[0].meter.groups', [3, 2], 'groups that add up to the beats', 'Object'],
    ['song.sections[0].slots[1].durationTicks', 0.5, 'integer', '0.5'],
    ['song.sections[0].slots[1].durationTicks', 1e12, '<=10000000', '1000000000000'],
    ['song.sections[0].slots[0].fixedKeys.right', [61, 58], 'low to high', 'Array'],
    ['song.sections[0].slots[0].fixedKeys.left', [-1], '>=0', '-1'],
    ['song.sections[0].slots[0].chord', 'C', 'no-chord', '"C"'],
    ['song.sections[0].slots[0].chord', null, 'Object', 'null'],
    ['practice.click.beats', [1, -1], '>=0', '-1'],
    ['practice.click.beats', 'some', '"groups"', '"some"'],
    ['song.sections[0].slots[0].chord.quality', 'nice', '"major"', '"nice"'],
    ['song.form[0].id', '', '!0', '0'],
    ['song.form[0].sectionId', undefined, 'sectionId', 'undefined'],
    ['patterns[0].divisions[3]', 5, '(1 | 2 | 3 | 4 | 6 | 8)', '5'],
    ['patterns[0].left[0].play', [], '!0', '0'],
    ['patterns[0].left[0].play', ['top'], '"root"', '"top"'],
    ['patterns[0].right[1].length', 0, '>=1', '0'],
    ['patterns[0].right[0].at', -480, '>=0', '-480'],
    ['patterns[0].sources[0].strokes[0].strength', 1.2, '<=1', '1.2'],
    ['patterns[0].sources[0].part', 'tuba', '"bass"', '"tuba"'],
    ['voicing.fullness', 6, '(3 | 4 | 5)', '6'],
    ['voicing.weights.motion', -1, '>=0', '-1'],
    ['voicing.weights.motion', 1e308, '<=1000', '1e+308'],
    ['voicing.spanSemitones', 9e15, '<=24', '9000000000000000'],
    ['patterns[0].swing.ratio', 1e308, '<=4', '1e+308'],
    ['patterns[0].swing.ratio', 1e-308, '>=0.25', '1e-308'],
    ['patterns[0].bars', 1e9, '<=64', '1000000000'],
    ['song.tempo.beatTicks', 1, '>=30', '1'],
    ['song.tempo.beatTicks', 1e15, '<=30720', '1000000000000000'],
    ['song.sections[0].barMeters[0].bar', 1e15, '<=10000', '1000000000000000'],
    ['practice.drill.ladder.step', { kind: 'percent', percent: 1e-300 }, '>=1', '1e-300'],
    ['practice.click.rests', { sounding: 0, resting: 1 }, '>=1', '0'],
    ['practice.click.countInBars', 3, '(0 | 1 | 2)', '3'],
    ['practice.drill.ladder.step', { kind: 'per cent', percent: 5 }, '"percent"', '"per cent"'],
    ['practice.drill.barsPerPass', 1e9, '<=1000', '1000000000'],
    ['practice.drill.later', true, 'never', '"later"'],
  ])('at %s: %j', (path, value, expected, found) => {
    const error = errorOf(decodeProject(withValue(path, value)));
    expect(error.kind).toBe('wrong-value');
    if (error.kind !== 'wrong-value') return;
    expect(error.path.startsWith(path)).toBe(true);
    expect(error.expected).toContain(expected);
    expect(error.found).toBe(found);
  });
});

it('refuses a song of more bars than can be laid out, without laying them out', () => {
  const text = fileWith((data) => {
    const { song: words } = data.project;
    const [verse] = words.sections;
    const slot = { chord: 'no-chord', durationTicks: 9_999_960 };
    const long = { ...verse!, meter: meter('1/16'), barMeters: [], slots: [slot] };
    const form = Array.from({ length: 250 }, (_, i) => ({ id: `${i}`, sectionId: 'verse' }));
    return { ...data, project: { ...data.project, song: { ...words, sections: [long], form } } };
  });
  expect(errorOf(decodeProject(text))).toEqual({
    kind: 'broken',
    faults: [
      { kind: 'too-many-bars', path: 'song.sections[0].slots' },
      { kind: 'too-many-bars', path: 'song.form' },
    ],
  });
});

it('opens a pattern without a name, and with the short note of a pair first', () => {
  for (const [path, value] of [
    ['patterns[0].name', ''],
    ['patterns[0].swing.ratio', 0.5],
  ] as const) {
    const [opened] = valueOf(decodeProject(withValue(path, value))).patterns;
    const { variationOf: _, ...written } = opened!;
    expect(valueOf(decodePattern(encodePattern(opened!)))).toEqual(written);
  }
});

it('tells every place where sound values do not fit together', () => {
  const text = fileWith((data) => ({
    ...data,
    project: { ...data.project, patterns: [{ ...data.project.patterns[0], id: 'q' }] },
  }));
  expect(errorOf(decodeProject(text))).toEqual({
    kind: 'broken',
    faults: [
      { kind: 'not-there', path: 'song.sections[0].patternId' },
      { kind: 'not-there', path: 'song.form[1].patternId' },
      { kind: 'not-there', path: 'practice.drill.patternId' },
    ],
  });
});

it.each([
  [1, 'abc'],
  [2, 'bc'],
  [4, ''],
])('brings data of version %d through every later step in order', (version, expected) => {
  const steps = ['a', 'b', 'c'].map((step) => (data: unknown) => `${String(data)}${step}`);
  expect(migrated('', version, steps)).toBe(expected);
});
