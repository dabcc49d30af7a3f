import { expect, it } from 'vitest';
import { formatNumeral } from '../../../src/core/harmony/numerals.ts';
import { analyseSections, sectionKey } from '../../../src/core/song/sectionKeys.ts';
import { majorKey, minorKey, section, slots, song } from '../../support/music.ts';

const C = majorKey('C');

function keyOf(chart: string) {
  return sectionKey({ slots: slots(chart) }, C);
}

it('gives a section that speaks clearly for another key that key', () => {
  expect(keyOf('| D | G | A7 | D |')).toEqual(majorKey('D'));
  expect(keyOf('| E♭ | A♭ | B♭7 | E♭ |')).toEqual(majorKey('E♭'));
  expect(keyOf('| Fm | B♭m | C7 | Fm |')).toEqual(minorKey('F'));
});

it('leaves a section in the song’s key that could be in it, or in its relative key', () => {
  expect(keyOf('| C | G | Am | F |')).toEqual(C);
  expect(keyOf('| Am | Dm | E7 | Am |')).toEqual(C);
  expect(keyOf('| F | G | F | G |')).toEqual(C);
  expect(keyOf('| N.C. |')).toEqual(C);
});

it('reads every section in its key, slot by slot', () => {
  const verse = section('verse', { slots: slots('| C | A7 | N.C. | G7 |') });
  const chorus = section('chorus', { slots: slots('| D | G | A7 | D |') });
  const read = analyseSections(song([verse, chorus], 'verse chorus')).map(({ chords }) =>
    chords.map((c) => (c ? formatNumeral(c.numeral) : '-')).join(' '),
  );
  expect(read).toEqual(['I VI7 - V7', 'I IV V7 I']);
});
