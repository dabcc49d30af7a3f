import { expect, it } from 'vitest';
import type { BandNote } from '../../../src/core/rhythm/band.ts';
import { guessRole } from '../../../src/core/rhythm/trackRole.ts';
import { bandNote } from '../../support/bands.ts';

function single(...keys: readonly number[]): BandNote[] {
  return keys.map((key, i) => bandNote(key, i * 240));
}

function chords(size: number): BandNote[] {
  return [0, 480, 960].flatMap((at) =>
    Array.from({ length: size }, (_, i) => bandNote(52 + 4 * i, at)),
  );
}

/** A root and its fifth, struck together. */
function power(): BandNote[] {
  return [0, 480, 960].flatMap((at) => [bandNote(40, at), bandNote(47, at)]);
}

const TUNE = single(67, 69, 71, 72);

// Programs as sent, from 0; families and names as General MIDI has them (reference 1.1).
it.each([
  ['the percussion channel', { isDrums: true, program: 33, notes: TUNE }, 'drums'],
  ['a fingered bass', { program: 33, notes: single(28, 31, 33) }, 'bass'],
  ['a guitar in single notes', { program: 25, notes: TUNE }, 'picking'],
  ['a guitar in chords', { program: 25, notes: chords(4) }, 'strumming'],
  ['a banjo', { program: 105, notes: TUNE }, 'picking'],
  ['a voice', { program: 53, notes: TUNE }, 'sung'],
  ['a flute', { program: 73, notes: TUNE }, 'sung'],
  ['a choir in chords', { program: 52, notes: chords(3) }, 'other'],
  ['a piano', { program: 0, notes: chords(3) }, 'accompaniment'],
  ['an organ', { program: 19, notes: chords(3) }, 'accompaniment'],
  ['a tune on a piano', { program: 0, notes: TUNE }, 'sung'],
  ['a guitar in power chords', { program: 30, notes: power() }, 'strumming'],
  ['a guitar in thirds', { program: 25, notes: chords(2) }, 'picking'],
  ['a low line on a piano', { program: 0, notes: single(33, 36, 40) }, 'bass'],
])('hears %s as what it is', (_, parts, role) => {
  expect(guessRole({ name: '', isDrums: false, ...parts })).toBe(role);
});

it.each([
  ['Bass (DI)', 'bass'],
  ['Lead Vocal', 'sung'],
  ['Rhythm Guitar', 'strumming'],
  ['Fingerpicked', 'picking'],
  ['Drum Kit', 'drums'],
  ['Bassoon', 'sung'],
  ['Strings, sequenced by A. Pick', 'sung'],
  ['Pickard’s Tune', 'sung'],
])('believes the name %s more than the program', (name, role) => {
  expect(guessRole({ name, isDrums: false, program: 0, notes: TUNE })).toBe(role);
});

it.each(['Picked Bs.', 'pick', 'Finger Bs', 'Guitar 2'])(
  'takes %s on a bass program for the bass',
  (name) => {
    expect(guessRole({ name, isDrums: false, program: 34, notes: single(28, 31, 33) })).toBe(
      'bass',
    );
  },
);
