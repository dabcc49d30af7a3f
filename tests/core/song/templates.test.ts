import { describe, expect, it } from 'vitest';
import { formatNumeral, numeralOf } from '../../../src/core/harmony/numerals.ts';
import { formatPitchClass } from '../../../src/core/harmony/pitch.ts';
import { formatChart } from '../../../src/core/song/chart.ts';
import { unfoldForm } from '../../../src/core/song/form.ts';
import type { Song } from '../../../src/core/song/song.ts';
import { FORM_TEMPLATES, songFormOf } from '../../../src/core/song/templates.ts';
import { meter, pitchClass } from '../../support/music.ts';

function formOf(name: string, tonic: string): Pick<Song, 'key' | 'sections' | 'form'> {
  const template = FORM_TEMPLATES.find((candidate) => candidate.name === name)!;
  let ids = 0;
  return songFormOf(template, pitchClass(tonic), () => `id ${ids++}`);
}

/** The numerals of the first section without their figures, a comma after every four bars. */
function degreesOf({ key, sections }: Pick<Song, 'key' | 'sections'>): string {
  const numerals = sections[0]!.slots.map(({ chord }) =>
    chord === 'no-chord' ? 'N.C.' : formatNumeral(numeralOf(chord, key)).replace(/7$/, ''),
  );
  return numerals
    .map((n, i) => (i % 4 === 3 ? `${n},` : n))
    .join(' ')
    .replace(/,$/, '');
}

describe('blues forms', () => {
  // docs/sources.md#forms
  it.each([
    ['12-bar blues', 'I I I I, IV IV I I, V IV I I'],
    ['12-bar blues, V twice', 'I I I I, IV IV I I, V V I I'],
    ['12-bar blues with turnaround', 'I I I I, IV IV I I, V IV I V'],
    ['12-bar blues, quick change', 'I IV I I, IV IV I I, V IV I V'],
    ['16-bar blues', 'I I I I, I I I I, IV IV I I, V IV I I'],
    ['8-bar blues', 'I V IV IV, I V I V'],
    ['12-bar blues in minor', 'i i i i, iv iv i i, VI V i i'],
  ])('%s: %s', (name, degrees) => expect(degreesOf(formOf(name, 'E♭'))).toBe(degrees));

  it('the jazz blues in C is C7 F7 C7 C7, F7 F♯dim7 C7 A7, Dm7 G7 C7 G7', () =>
    expect(formatChart(formOf('12-bar jazz blues', 'C').sections[0]!.slots, meter('4/4'))).toBe(
      '| C7 | F7 | C7 | C7 | F7 | F♯dim7 | C7 | A7 | Dm7 | G7 | C7 | G7 |',
    ));

  it('the minor blues leads through the dominant on its sixth: A♭7 G7 in C minor', () => {
    const minor = formOf('12-bar blues in minor', 'C');
    expect(minor.key.mode).toBe('minor');
    expect(formatChart(minor.sections[0]!.slots.slice(8, 10), meter('4/4'))).toBe('| A♭7 | G7 |');
  });
});

describe('every template', () => {
  it.each(FORM_TEMPLATES.map((t) => [t.name] as const))('%s can be played in any key', (name) => {
    for (const tonic of ['C', 'F♯', 'B♭', 'D♭']) {
      const form = formOf(name, tonic);
      expect(formatPitchClass(form.key.tonic)).toBe(tonic);
      expect(unfoldForm(form).length).toBeGreaterThanOrEqual(8);
    }
  });

  it('has the length its name says', () => {
    const barsOf = Object.fromEntries(
      FORM_TEMPLATES.map((t) => [t.name, unfoldForm(formOf(t.name, 'C')).length]),
    );
    for (const [name, bars] of Object.entries(barsOf)) {
      const said = /^\d+/.exec(name)?.[0];
      if (said) expect(bars).toBe(Number(said));
    }
    expect(barsOf['Verse and chorus']).toBe(48);
  });

  it('has a name of its own and gives every section and entry a fresh identity', () => {
    const names = FORM_TEMPLATES.map((t) => t.name);
    expect(new Set(names).size).toBe(names.length);
    const { sections, form } = formOf('32 bars, AABA', 'C');
    expect([...sections, ...form].map((x) => x.id)).toEqual([
      'id 0',
      'id 1',
      'id 2',
      'id 3',
      'id 4',
      'id 5',
    ]);
    expect(form.map((entry) => entry.sectionId)).toEqual(['id 0', 'id 0', 'id 1', 'id 0']);
  });
});
