import * as fc from 'fast-check';
import { expect, it } from 'vitest';
import { parseChordText } from '../../../../src/core/harmony/chordText.ts';
import {
  chordNamingIn,
  NAMING_BELOW,
  slotName,
} from '../../../../src/ui/parts/chart/chordNames.ts';
import { CHORD_NAMINGS } from '../../../../src/ui/parts/tool/viewState.ts';
import { chord, majorKey } from '../../../support/music.ts';

const key = majorKey('D');

it('names one chord in three ways', () => {
  const names = CHORD_NAMINGS.map((choice) => chordNamingIn(choice, key)(chord('Em7')));
  expect(names).toEqual(['Em7', 'ii7', '2-7']);
});

it('prints N.C. whatever the naming', () => {
  expect(slotName({ chord: 'no-chord' }, chordNamingIn('numbers', key))).toBe('N.C.');
});

it('is read back as the same chord', () => {
  const symbols = ['D', 'Bm7', 'A7', 'C♯m7♭5', 'F♯7♭9', 'B♭', 'G/B', 'Dsus4'];
  fc.assert(
    fc.property(
      fc.constantFrom(...CHORD_NAMINGS),
      fc.constantFrom(...symbols),
      (choice, symbol) => {
        const name = chordNamingIn(choice, key)(chord(symbol));
        expect(parseChordText(name, key)).toEqual({ ok: true, value: chord(symbol) });
      },
    ),
  );
});

it('always prints another naming below', () => {
  expect(CHORD_NAMINGS.every((choice) => NAMING_BELOW[choice] !== choice)).toBe(true);
});
