import * as fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { projectFaults } from '../../../src/formats/projectFaults.ts';
import { decodeProject, encodeProject } from '../../../src/formats/projectFile.ts';
import { sameData } from '../../../src/state/sameData.ts';
import { createStore } from '../../../src/state/store.ts';
import { anyEdit } from '../../support/edits.ts';
import { meter, section, slots, song } from '../../support/music.ts';
import { pattern } from '../../support/patterns.ts';
import { project } from '../../support/project.ts';

const BEGIN = project({
  song: song(
    [
      section('verse', {
        slots: slots('| C | F / G / | 2/4 C | Am |'),
        barMeters: [{ bar: 2, meter: meter('2/4') }],
        patternId: 'p',
      }),
      section('chorus', { slots: slots('| G |') }),
    ],
    'verse chorus verse',
  ),
  patterns: [
    pattern('4/4', {
      left: 'R---5---',
      right: '..C-..C.',
      ending: { left: 'R---8---', right: 'C-......' },
    }),
  ],
});

const someEdits = fc.array(anyEdit(), { minLength: 1, maxLength: 40 });

describe('after any edits', () => {
  it('a project is sound and is a project file that reads back as the same', () =>
    fc.assert(
      fc.property(someEdits, (edits) => {
        const end = edits.reduce((before, edit) => {
          const after = edit(before);
          expect(projectFaults(after)).toEqual([]);
          return after;
        }, BEGIN);
        expect(decodeProject(encodeProject(end))).toEqual({ ok: true, value: end });
      }),
      { numRuns: 300 },
    ));

  it('undoing everything gives the very project of the beginning, redoing everything that of the end', () =>
    fc.assert(
      fc.property(someEdits, (edits) => {
        const store = createStore(BEGIN);
        for (const edit of edits) store.edit(edit, { label: 'any' });
        const end = store.snapshot();
        while (store.undoLabel() !== undefined) store.undo();
        expect(store.snapshot()).toBe(BEGIN);
        while (store.redoLabel() !== undefined) store.redo();
        expect(store.snapshot()).toBe(end);
      }),
    ));

  it('an edit that changes nothing gives the very same project', () =>
    fc.assert(
      fc.property(someEdits, (edits) => {
        edits.reduce((before, edit) => {
          const after = edit(before);
          if (sameData(before, after)) expect(after).toBe(before);
          return after;
        }, BEGIN);
      }),
    ));
});
