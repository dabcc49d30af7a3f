import { expect, it } from 'vitest';
import { setSectionChart } from '../../../src/state/edits/chart.ts';
import { removeFormEntry } from '../../../src/state/edits/form.ts';
import { keepMarksInPlace } from '../../../src/ui/shell/marksInPlace.ts';
import { section, slots, song } from '../../support/music.ts';
import { pageParts } from '../../support/pageParts.ts';
import { project } from '../../support/project.ts';

/** Verse (two bars), chorus (two bars), with the chorus marked. */
function markedChorus() {
  const verse = section('verse', { slots: slots('| C | F |') });
  const chorus = section('chorus', { slots: slots('| Am | G |') });
  const parts = pageParts(project({ song: song([verse, chorus], 'verse chorus') }), {
    range: { firstBar: 2, endBar: 4 },
  });
  const end = keepMarksInPlace(parts);
  const lengthenVerse = () =>
    parts.store.edit(setSectionChart('verse', slots('| C | Dm | F |'), []), { label: 'add bar' });
  return { ...parts, end, lengthenVerse, marked: () => parts.view.snapshot().range };
}

it('keeps marked bars on their music through an edit and its undo', () => {
  const { store, lengthenVerse, marked } = markedChorus();
  lengthenVerse();
  expect(marked()).toEqual({ firstBar: 3, endBar: 5 });
  store.undo();
  expect(marked()).toEqual({ firstBar: 2, endBar: 4 });
});

it('forgets marks whose section is taken out', () => {
  const { store, marked } = markedChorus();
  store.edit(removeFormEntry('entry 1'), { label: 'take out' });
  expect(marked()).toBeUndefined();
});

it('leaves marks alone once it has ended', () => {
  const { end, lengthenVerse, marked } = markedChorus();
  end();
  lengthenVerse();
  expect(marked()).toEqual({ firstBar: 2, endBar: 4 });
});
