import type { Key } from '../core/harmony/key.ts';
import type { Project } from '../core/project.ts';
import { barTicks } from '../core/time/meter.ts';
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
