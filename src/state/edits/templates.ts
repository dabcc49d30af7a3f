import type { PitchClass } from '../../core/harmony/pitch.ts';
import type { PatternId } from '../../core/ids.ts';
import type { FormEntry, Section, Song } from '../../core/song/song.ts';
import { type FormTemplate, songFormOf } from '../../core/song/templates.ts';
import { type Meter, sameMeter } from '../../core/time/meter.ts';
import { freeName, newId } from '../newIds.ts';
import { type Edit, withParts } from './edit.ts';
import { inForm } from './song.ts';

type Made = Pick<Song, 'key' | 'sections' | 'form'>;

/** The template's form with ids that nothing in the song has. */
function madeFor(song: Song, template: FormTemplate, tonic: PitchClass): Made {
  const taken = [...song.sections, ...song.form].map(({ id }) => id);
  return songFormOf(template, tonic, () => {
    const id = newId('section', taken);
    taken.push(id);
    return id;
  });
}

/** The pattern that the song plays in a meter: that of its last section in it, if there is one. */
function patternIn(song: Song, meter: Meter): PatternId | undefined {
  return song.sections.findLast((section) => sameMeter(section.meter, meter))?.patternId;
}

function withPattern(section: Section, song: Song): Section {
  return withParts(section, { patternId: patternIn(song, section.meter) });
}

/**
 * Adds the sections of a template and plays them after everything else, on the song's tonic, with the
 * pattern of the song's last section in their meter. Names that are taken are numbered. The song's
 * key stays, also where the template has the other mode.
 */
export function addTemplate(template: FormTemplate): Edit {
  return inForm((song) => {
    const made = madeFor(song, template, song.key.tonic);
    const names = song.sections.map(({ name }) => name);
    const sections = made.sections.map((section) => {
      const name = freeName(section.name, names);
      names.push(name);
      return withPattern({ ...section, name }, song);
    });
    const form: readonly FormEntry[] = [...song.form, ...made.form];
    return withParts(song, { sections: [...song.sections, ...sections], form });
  });
}

/**
 * Puts the sections and the form of a template in place of the song's own, in its mode on a tonic, as
 * `addTemplate` does with patterns. Title, tempo and notes stay.
 */
export function startFromTemplate(template: FormTemplate, tonic: PitchClass): Edit {
  return inForm((song) => {
    const { key, sections, form } = madeFor(song, template, tonic);
    return withParts(song, {
      key,
      sections: sections.map((section) => withPattern(section, song)),
      form,
    });
  });
}
