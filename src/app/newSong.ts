import type { Key } from '../core/harmony/key.ts';
import type { Project } from '../core/project.ts';
import type { Pattern } from '../core/rhythm/pattern.ts';
import type { Section, Song } from '../core/song/song.ts';
import { barTicks, sameMeter } from '../core/time/meter.ts';
import { NEW_SECTIONS } from '../state/edits/form.ts';
import { firstProject } from '../state/firstProject.ts';
import { freeName, newId } from '../state/newIds.ts';

const KEY: Key = { tonic: { letter: 'C', alteration: 0 }, mode: 'major' };

/** Bars of the verse that a new song begins with. */
const BARS = 4;

/** Ids and titles that belong to other songs. */
export type Taken = {
  readonly ids: readonly Project['id'][];
  readonly titles: readonly string[];
};

const NEW_TITLE = 'New song';

/** The song as it is, under a new id where its own is taken. */
export function underFreeId(project: Project, { ids }: Taken): Project {
  return ids.includes(project.id) ? { ...project, id: newId('song', ids) } : project;
}

/** The song under a new id and, as its title is taken, a numbered one: “Title 2”. */
export function songCopy(project: Project, { ids, titles }: Taken): Project {
  const title = freeName(project.song.title, titles);
  return { ...project, id: newId('song', ids), song: { ...project.song, title } };
}

/** What a new song is made of where a band's file tells it. */
export type SongParts = Pick<Song, 'title' | 'key' | 'tempo' | 'sections' | 'form'> & {
  readonly pattern?: Pattern;
};

/**
 * A song of given parts under a free id and title, everything else as the first song has it. The pattern, where there is
 * one, is played in every section of its meter.
 */
export function songFromParts({ pattern, ...parts }: SongParts, { ids, titles }: Taken): Project {
  const plain = firstProject([]);
  const fits = (section: Section) => pattern && sameMeter(section.meter, pattern.meter);
  const first = parts.sections
    .flatMap(({ slots }) => slots)
    .find(({ chord }) => chord !== 'no-chord');
  const { drill } = plain.practice;
  const chord = first && first.chord !== 'no-chord' ? first.chord : drill.chord;
  return {
    ...plain,
    id: newId('song', ids),
    patterns: pattern ? [pattern, ...plain.patterns] : plain.patterns,
    song: {
      ...parts,
      title: freeName(parts.title, titles),
      sections: parts.sections.map((section) =>
        fits(section) && pattern ? { ...section, patternId: pattern.id } : section,
      ),
      notes: '',
    },
    practice: {
      ...plain.practice,
      drill: { ...drill, chord, ...(pattern && { patternId: pattern.id }) },
    },
  };
}

/**
 * A song to begin with: one verse of four bars of C on the plainest pattern, so that Play sounds at
 * once, and everything else as the first song has it. Its id and title are free.
 */
export function newSong({ ids, titles }: Taken): Project {
  const plain = firstProject([]);
  const [pattern] = plain.patterns;
  if (!pattern) throw new Error('the plainest pattern is missing');
  const chord = { root: KEY.tonic, quality: KEY.mode, tensions: [] };
  const { drill } = plain.practice;
  return {
    ...plain,
    id: newId('song', ids),
    song: {
      title: freeName(NEW_TITLE, titles),
      key: KEY,
      tempo: plain.song.tempo,
      sections: [
        {
          id: 'section-1',
          ...NEW_SECTIONS.verse,
          kind: 'verse',
          meter: pattern.meter,
          barMeters: [],
          slots: [{ chord, durationTicks: BARS * barTicks(pattern.meter) }],
          patternId: pattern.id,
        },
      ],
      form: [{ id: 'entry-1', sectionId: 'section-1' }],
      notes: '',
    },
    practice: { ...plain.practice, drill: { ...drill, chord } },
  };
}
