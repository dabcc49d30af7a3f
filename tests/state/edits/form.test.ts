import { describe, expect, it } from 'vitest';
import type { Project } from '../../../src/core/project.ts';
import { formatChartBars, parseChartBars } from '../../../src/core/song/chart.ts';
import type { Edit } from '../../../src/state/edits/edit.ts';
import {
  addFormEntry,
  addSection,
  duplicateSection,
  moveFormEntry,
  removeFormEntry,
  removeSection,
  renameSection,
  setMeter,
  setSectionKind,
  setWash,
} from '../../../src/state/edits/form.ts';
import { setEntryPattern, setSectionPattern } from '../../../src/state/edits/sectionPatterns.ts';
import { meter, minorKey, section, slots, song, valueOf } from '../../support/music.ts';
import { pattern } from '../../support/patterns.ts';
import { project } from '../../support/project.ts';

const VERSE = section('verse', { name: 'Verse', slots: slots('| C | F |'), patternId: 'p' });
const CHORUS = section('chorus', { name: 'Chorus', kind: 'chorus', slots: slots('| G |') });
const LIGHT = pattern('4/4', { left: 'R---' }, { id: 'light' });
const BEFORE = project({
  song: song([VERSE, CHORUS], 'verse chorus verse'),
  patterns: [...project().patterns, LIGHT],
});

function formOf(of: Project): string {
  return of.song.form.map((entry) => entry.sectionId).join(' ');
}

function sectionOf(of: Project, id: string) {
  const found = of.song.sections.find((one) => one.id === id);
  if (!found) throw new Error(`no section ${id}`);
  return found;
}

function names(of: Project): string[] {
  return of.song.sections.map(({ name }) => name);
}

describe('sections', () => {
  it('are added with four bars of the tonic in meter and pattern of the last, and played at the end', () => {
    const last = section('lilt', {
      meter: meter('6/8'),
      slots: slots('| C |', '6/8'),
      patternId: 'p',
    });
    const inMinor = project({ song: song([last], 'lilt', { key: minorKey('B♭') }) });
    const after = addSection('new', 'bridge')(inMinor);
    const added = sectionOf(after, 'new');
    expect(formatChartBars(added, added.meter)).toBe('| B♭m | / | / | / |');
    expect(added).toMatchObject({
      kind: 'bridge',
      name: 'Bridge',
      meter: meter('6/8'),
      patternId: 'p',
    });
    expect(formOf(after)).toBe('lilt new');
  });

  it('get a name and a form entry of their own', () => {
    const after = addSection('new', 'verse')(BEFORE);
    expect(names(after)).toEqual(['Verse', 'Chorus', 'Verse 2']);
    expect(new Set(after.song.form.map(({ id }) => id)).size).toBe(4);
  });

  it('are removed from the form as well', () => {
    const after = removeSection('verse')(BEFORE);
    expect(names(after)).toEqual(['Chorus']);
    expect(formOf(after)).toBe('chorus');
  });

  it('are copied behind themselves and played once after their last playing', () => {
    const after = duplicateSection('verse', 'copy')(BEFORE);
    expect(names(after)).toEqual(['Verse', 'Verse 2', 'Chorus']);
    expect(formOf(after)).toBe('verse chorus verse copy');
    expect({ ...sectionOf(after, 'copy'), id: 'verse', name: 'Verse' }).toEqual(VERSE);
    expect(names(duplicateSection('copy', 'third')(after))).toContain('Verse 3');
  });

  it('change their name, kind, wash and pattern', () => {
    const edits = [
      renameSection('verse', 'Strophe'),
      setSectionKind('verse', 'solo'),
      setWash('verse', 'plum'),
      setSectionPattern('verse', 'light'),
    ];
    const after = edits.reduce((of, edit) => edit(of), BEFORE);
    expect(sectionOf(after, 'verse')).toEqual({
      ...VERSE,
      name: 'Strophe',
      kind: 'solo',
      wash: 'plum',
      patternId: 'light',
    });
  });

  it('let the hands rest without a pattern', () => {
    const after = setSectionPattern('verse', undefined)(BEFORE);
    expect('patternId' in sectionOf(after, 'verse')).toBe(false);
  });
});

describe('the form', () => {
  it.each([
    [0, 2, 'chorus verse verse'],
    [2, 0, 'verse verse chorus'],
    [1, 0, 'chorus verse verse'],
  ])('moves an entry from place %d to place %d', (from, to, expected) =>
    expect(formOf(moveFormEntry(from, to)(BEFORE))).toBe(expected),
  );

  it('takes a section once more, at a place or at the end', () => {
    expect(formOf(addFormEntry('chorus')(BEFORE))).toBe('verse chorus verse chorus');
    expect(formOf(addFormEntry('chorus', 0)(BEFORE))).toBe('chorus verse chorus verse');
  });

  it('lets one entry go and keeps the section, even the last', () => {
    const once = project();
    const after = removeFormEntry(once.song.form[0]!.id)(once);
    expect(formOf(after)).toBe('');
    expect(after.song.sections).toBe(once.song.sections);
  });

  it('gives one return a pattern of its own, and takes it back', () => {
    const { id } = BEFORE.song.form[2]!;
    const own = setEntryPattern(id, 'light')(BEFORE);
    expect(own.song.form.map(({ patternId }) => patternId)).toEqual([
      undefined,
      undefined,
      'light',
    ]);
    expect(setEntryPattern(id, undefined)(own)).toEqual(BEFORE);
  });
});

describe('another meter', () => {
  it.each([
    ['4/4', '3/4', '| C | F / G / | C |', '| C | F / G | C |'],
    ['4/4', '3/4', '| C F G Am |', '| C F G | Am |'],
    ['4/4', '6/8', '| C / / F | G / Am / |', '| C F | G Am |'],
    ['3/4', '4/4', '| C / F | G |', '| C / / F | G |'],
    ['4/4', '2/4', '| C | / / G / |', '| C | / G |'],
    ['4/4', '4/4', '| C / F / |', '| C / F / |'],
    ['6/8', '4/4', '| C F | G |', '| C / F / | G |'],
    ['4/4', '3/4', '| C | 2/4 F G | C |', '| C | 2/4 F G | C |'],
    ['4/4', '2/4', '| C | 2/4 F G | C |', '| C | F G | C |'],
  ])('brings a chart from %s into %s: %s', (from, to, chart, expected) => {
    const read = valueOf(parseChartBars(chart, meter(from)));
    const before = project({
      song: song([section('verse', { meter: meter(from), ...read })], 'verse'),
    });
    const verse = sectionOf(setMeter('verse', meter(to))(before), 'verse');
    expect(formatChartBars(verse, verse.meter)).toBe(expected);
    expect(verse.meter).toEqual(meter(to));
  });

  it('keeps pinned voicings with their chords', () => {
    const fixedKeys = { left: [36], right: [60, 64, 67] };
    const pinned = VERSE.slots.map((slot) => ({ ...slot, fixedKeys }));
    const before = project({ song: song([{ ...VERSE, slots: pinned }], 'verse') });
    const { slots: after } = sectionOf(setMeter('verse', meter('3/4'))(before), 'verse');
    expect(after).toEqual(pinned.map((slot) => ({ ...slot, durationTicks: 1440 })));
  });
});

describe('an edit of the form that does not apply', () => {
  it.each<[string, Edit]>([
    ['adds a section under a taken id', addSection('verse', 'bridge')],
    ['removes a section that is not there', removeSection('nowhere')],
    ['copies a section that is not there', duplicateSection('nowhere', 'copy')],
    ['copies a section to a taken id', duplicateSection('verse', 'chorus')],
    ['gives a section the name it has', renameSection('verse', 'Verse')],
    ['gives a section the kind it has', setSectionKind('chorus', 'chorus')],
    ['gives a section the wash it has', setWash('verse', VERSE.wash)],
    ['gives a section the meter it has', setMeter('verse', meter('4/4'))],
    ['gives a section the pattern it has', setSectionPattern('verse', 'p')],
    ['gives a section a pattern that is not there', setSectionPattern('verse', 'nowhere')],
    ['moves an entry to where it is', moveFormEntry(1, 1)],
    ['moves an entry out of the form', moveFormEntry(0, 3)],
    ['moves an entry from outside the form', moveFormEntry(-1, 0)],
    ['plays a section that is not there', addFormEntry('nowhere')],
    ['removes an entry that is not there', removeFormEntry('nowhere')],
    ['gives an entry a pattern that is not there', setEntryPattern('entry 0', 'nowhere')],
    ['gives an entry no pattern when it has none', setEntryPattern('entry 0', undefined)],
  ])('%s and leaves the very same project', (_, edit) => expect(edit(BEFORE)).toBe(BEFORE));

  it('removes the only section and leaves the very same project', () => {
    const only = project();
    expect(removeSection('verse')(only)).toBe(only);
  });
});
