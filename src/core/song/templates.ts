import type { Key, Mode } from '../harmony/key.ts';
import type { PitchClass } from '../harmony/pitch.ts';
import { type Meter, parseMeter } from '../time/meter.ts';
import { parseChartBars } from './chart.ts';
import type { Section, SectionKind, Song, Wash } from './song.ts';

/** A section of a template: its chart in numerals, four bars to a line. */
type TemplateSection = {
  readonly name: string;
  readonly kind: SectionKind;
  readonly wash: Wash;
  readonly chart: string;
};

/** A usual form with usual chords, in 4/4, free of any key. `form` names the sections in playing order. */
export type FormTemplate = {
  readonly name: string;
  readonly mode: Mode;
  readonly sections: readonly TemplateSection[];
  readonly form: readonly string[];
};

function blues(name: string, mode: Mode, chart: string): FormTemplate {
  return {
    name,
    mode,
    sections: [{ name: 'Strophe', kind: 'verse', wash: 'slate', chart }],
    form: ['Strophe'],
  };
}

/**
 * The forms of the trade (docs/sources.md#forms). Where the sources give triads for a blues, its
 * chords are sevenths here, as they are played (common practice). The chords of the last two are examples.
 */
export const FORM_TEMPLATES: readonly FormTemplate[] = [
  blues('12-bar blues', 'major', '| I7 | % | % | % |\n| IV7 | % | I7 | % |\n| V7 | IV7 | I7 | % |'),
  blues(
    '12-bar blues, V twice',
    'major',
    '| I7 | % | % | % |\n| IV7 | % | I7 | % |\n| V7 | % | I7 | % |',
  ),
  blues(
    '12-bar blues with turnaround',
    'major',
    '| I7 | % | % | % |\n| IV7 | % | I7 | % |\n| V7 | IV7 | I7 | V7 |',
  ),
  blues(
    '12-bar blues, quick change',
    'major',
    '| I7 | IV7 | I7 | % |\n| IV7 | % | I7 | % |\n| V7 | IV7 | I7 | V7 |',
  ),
  blues(
    '12-bar blues in minor',
    'minor',
    '| i7 | % | % | % |\n| iv7 | % | i7 | % |\n| VI7 | V7 | i7 | % |',
  ),
  blues(
    '12-bar jazz blues',
    'major',
    '| I7 | IV7 | I7 | % |\n| IV7 | ♯iv°7 | I7 | V7/ii |\n| ii7 | V7 | I7 | V7 |',
  ),
  blues('8-bar blues', 'major', '| I7 | V7 | IV7 | % |\n| I7 | V7 | I7 | V7 |'),
  blues(
    '16-bar blues',
    'major',
    '| I7 | % | % | % |\n| I7 | % | % | % |\n| IV7 | % | I7 | % |\n| V7 | IV7 | I7 | % |',
  ),
  {
    name: '32 bars, AABA',
    mode: 'major',
    sections: [
      {
        name: 'A',
        kind: 'verse',
        wash: 'straw',
        chart: '| I vi7 | ii7 V7 | I vi7 | ii7 V7 |\n| I V7/IV | IV iv | I V7 | I |',
      },
      {
        name: 'B',
        kind: 'bridge',
        wash: 'moss',
        chart: '| V7/vi | % | V7/ii | % |\n| V7/V | % | V7 | % |',
      },
    ],
    form: ['A', 'A', 'B', 'A'],
  },
  {
    name: 'Verse and chorus',
    mode: 'major',
    sections: [
      {
        name: 'Verse',
        kind: 'verse',
        wash: 'straw',
        chart: '| I | V | vi | IV |\n| I | V | IV | % |',
      },
      {
        name: 'Chorus',
        kind: 'chorus',
        wash: 'clay',
        chart: '| IV | V | I | vi |\n| IV | V | I | % |',
      },
      {
        name: 'Bridge',
        kind: 'bridge',
        wash: 'moss',
        chart: '| vi | iii | IV | I |\n| ii | % | V | % |',
      },
    ],
    form: ['Verse', 'Chorus', 'Verse', 'Chorus', 'Bridge', 'Chorus'],
  },
];

function fourFour(): Meter {
  const meter = parseMeter('4/4');
  if (!meter.ok) throw new Error('4/4 is a meter');
  return meter.value;
}

function sectionOf({ chart, ...named }: TemplateSection, key: Key, id: string): Section {
  const meter = fourFour();
  const read = parseChartBars(chart, meter, key);
  if (!read.ok) throw new Error(`the chart of ${named.name} cannot be read: ${read.error.kind}`);
  return { id, ...named, meter, ...read.value };
}

/**
 * The key, sections and form of a template on a tonic, in the template's mode. `newId` gives a fresh
 * identity each time it is called, first for the sections, then for the form's entries.
 */
export function songFormOf(
  template: FormTemplate,
  tonic: PitchClass,
  newId: () => string,
): Pick<Song, 'key' | 'sections' | 'form'> {
  const key: Key = { tonic, mode: template.mode };
  const sections = template.sections.map((section) => sectionOf(section, key, newId()));
  const form = template.form.map((name) => {
    const section = sections.find((candidate) => candidate.name === name);
    if (!section) throw new Error(`the form ${template.name} has no section ${name}`);
    return { id: newId(), sectionId: section.id };
  });
  return { key, sections, form };
}
