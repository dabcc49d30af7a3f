import type { SectionId } from '../core/ids.ts';
import type { Project } from '../core/project.ts';
import type { FormEntry, PatternChoice, Section, Song } from '../core/song/song.ts';
import { filledBars, MOST_BARS, playedBars } from '../core/song/songLength.ts';
import { patternFaults } from './patternFaults.ts';
import { type ProjectFault, sameIdFaults } from './projectFault.ts';
import { ascends } from './schemaParts.ts';

type Written = Pick<Section, 'meter' | 'barMeters' | 'slots'>;

/** Whether the chords of a section, or of another ending in its meter, end where a bar ends, after no more bars than there can be. */
export function fillsBars(section: Written): boolean {
  const bars = filledBars(section);
  return bars !== undefined && bars <= MOST_BARS;
}

/** Faults of bars with their chords, those of a section or of another ending. */
function chartFaults(chart: Written, path: string): ProjectFault[] {
  const faults: ProjectFault[] = [];
  if (!ascends(chart.barMeters.map(({ bar }) => bar)))
    faults.push({ kind: 'out-of-order', path: `${path}.barMeters` });
  const bars = filledBars(chart);
  if (bars === undefined) faults.push({ kind: 'bars-not-filled', path: `${path}.slots` });
  else if (bars > MOST_BARS) faults.push({ kind: 'too-many-bars', path: `${path}.slots` });
  return faults;
}

/** Fault of changes of the pattern that do not follow each other. */
function orderFaults({ patternChanges = [] }: PatternChoice, path: string): ProjectFault[] {
  const bars = patternChanges.map(({ bar }) => bar);
  return ascends(bars) ? [] : [{ kind: 'out-of-order', path: `${path}.patternChanges` }];
}

function entryFaults(
  { sectionId, ending, ...choice }: FormEntry,
  sections: ReadonlyMap<SectionId, Section>,
  path: string,
): ProjectFault[] {
  const section = sections.get(sectionId);
  if (!section) return [{ kind: 'not-there', path: `${path}.sectionId` }];
  return [
    ...orderFaults(choice, path),
    ...(ending ? chartFaults({ meter: section.meter, ...ending }, `${path}.ending`) : []),
  ];
}

function songFaults(song: Song): ProjectFault[] {
  const sections = new Map(song.sections.map((section) => [section.id, section]));
  const { form } = song;
  return [
    ...(sections.size === 0 ? [{ kind: 'nothing-left' as const, path: 'song.sections' }] : []),
    ...sameIdFaults(song.sections, 'song.sections'),
    ...sameIdFaults(form, 'song.form'),
    ...song.sections.flatMap((section, i) => [
      ...chartFaults(section, `song.sections[${i}]`),
      ...orderFaults(section, `song.sections[${i}]`),
    ]),
    ...form.flatMap((entry, i) => entryFaults(entry, sections, `song.form[${i}]`)),
    ...(playedBars(song) > MOST_BARS
      ? [{ kind: 'too-many-bars' as const, path: 'song.form' }]
      : []),
  ];
}

/** Faults of everything that may choose a pattern and chooses one that is not there. */
function choiceFaults({ song, practice, patterns }: Project): ProjectFault[] {
  const ids = new Set(patterns.map((pattern) => pattern.id));
  const choosers: readonly { readonly chooser: PatternChoice; readonly path: string }[] = [
    ...song.sections.map((chooser, i) => ({ chooser, path: `song.sections[${i}]` })),
    ...song.form.map((chooser, i) => ({ chooser, path: `song.form[${i}]` })),
    { chooser: practice.drill, path: 'practice.drill' },
  ];
  return choosers.flatMap(({ chooser: { patternId, patternChanges = [] }, path }) =>
    [
      { patternId, path },
      ...patternChanges.map((change, i) => ({
        patternId: change.patternId,
        path: `${path}.patternChanges[${i}]`,
      })),
    ].flatMap((choice) =>
      choice.patternId === undefined || ids.has(choice.patternId)
        ? []
        : [{ kind: 'not-there' as const, path: `${choice.path}.patternId` }],
    ),
  );
}

/**
 * Whatever in a project does not fit together, in the order in which it stands there; none where
 * the project is sound. Each value alone is for the schema of the project file to check.
 */
export function projectFaults(project: Project): ProjectFault[] {
  const { patterns } = project;
  return [
    ...songFaults(project.song),
    ...(patterns.length === 0 ? [{ kind: 'nothing-left' as const, path: 'patterns' }] : []),
    ...sameIdFaults(patterns, 'patterns'),
    ...patterns.flatMap((pattern, i) => patternFaults(pattern, `patterns[${i}]`)),
    ...choiceFaults(project),
  ];
}
