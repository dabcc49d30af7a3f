import type { Chord } from '../../core/harmony/chord.ts';
import type { Key } from '../../core/harmony/key.ts';
import type { FormEntryId, SectionId } from '../../core/ids.ts';
import type { FormEntry, Section, SectionKind, Song, Wash } from '../../core/song/song.ts';
import { barTicks, type Meter } from '../../core/time/meter.ts';
import { freeName, newFormEntryId } from '../newIds.ts';
import { type Edit, inSection, withParts } from './edit.ts';
import { refittedEnding } from './ending.ts';
import { movedByCounts, withSectionMoved } from './movedBars.ts';
import { refitChart, refittedBarCounts } from './refitChart.ts';
import { inForm } from './song.ts';

/** The name and the wash that a new section of a kind begins with. */
export const NEW_SECTIONS: Readonly<
  Record<SectionKind, { readonly name: string; readonly wash: Wash }>
> = {
  intro: { name: 'Intro', wash: 'slate' },
  verse: { name: 'Verse', wash: 'straw' },
  'pre-chorus': { name: 'Pre-chorus', wash: 'moss' },
  chorus: { name: 'Chorus', wash: 'clay' },
  'post-chorus': { name: 'Post-chorus', wash: 'rust' },
  bridge: { name: 'Bridge', wash: 'plum' },
  solo: { name: 'Solo', wash: 'moss' },
  interlude: { name: 'Interlude', wash: 'slate' },
  outro: { name: 'Outro', wash: 'slate' },
};

/** Bars of a new section. */
const NEW_BARS = 4;

function tonicChord(key: Key): Chord {
  return { root: key.tonic, quality: key.mode, tensions: [] };
}

function withEntryAt(song: Song, sectionId: SectionId, at: number): readonly FormEntry[] {
  return song.form.toSpliced(at, 0, { id: newFormEntryId({ song }), sectionId });
}

/**
 * Adds a section at the end and plays it at the end of the form: four bars of the key's tonic chord
 * in the meter and with the pattern of the last section. Its name is numbered where the plain one is
 * taken. Nothing where the song has a section of this id.
 */
export function addSection(id: SectionId, kind: SectionKind): Edit {
  return inForm((song) => {
    const last = song.sections.at(-1);
    if (!last || song.sections.some((section) => section.id === id)) return song;
    const { name, wash } = NEW_SECTIONS[kind];
    const { meter, patternId } = last;
    const section: Section = {
      id,
      name: freeName(
        name,
        song.sections.map((other) => other.name),
      ),
      kind,
      wash,
      meter,
      barMeters: [],
      slots: [{ chord: tonicChord(song.key), durationTicks: NEW_BARS * barTicks(meter) }],
      ...(patternId === undefined ? {} : { patternId }),
    };
    return withParts(song, {
      sections: [...song.sections, section],
      form: withEntryAt(song, id, song.form.length),
    });
  });
}

/** Removes a section and every place where the form plays it; the last section stays. */
export function removeSection(id: SectionId): Edit {
  return inForm((song) => {
    const sections = song.sections.filter((section) => section.id !== id);
    if (sections.length === 0 || sections.length === song.sections.length) return song;
    return withParts(song, {
      sections,
      form: song.form.filter((entry) => entry.sectionId !== id),
    });
  });
}

/**
 * Adds a copy of a section behind it, under a numbered name, and plays it once after the last
 * playing of the original. Nothing where there is no such section or `newId` is taken.
 */
export function duplicateSection(id: SectionId, newId: SectionId): Edit {
  return inForm((song) => {
    const place = song.sections.findIndex((section) => section.id === id);
    const original = song.sections[place];
    if (!original || song.sections.some((section) => section.id === newId)) return song;
    const name = freeName(
      original.name.replace(/ \d+$/, ''),
      song.sections.map((section) => section.name),
    );
    const lastPlaying = song.form.findLastIndex((entry) => entry.sectionId === id);
    return withParts(song, {
      sections: song.sections.toSpliced(place + 1, 0, { ...original, id: newId, name }),
      form: withEntryAt(song, newId, lastPlaying < 0 ? song.form.length : lastPlaying + 1),
    });
  });
}

export function renameSection(id: SectionId, name: string): Edit {
  return inSection(id, (section) => withParts(section, { name }));
}

export function setSectionKind(id: SectionId, kind: SectionKind): Edit {
  return inSection(id, (section) => withParts(section, { kind }));
}

export function setWash(id: SectionId, wash: Wash): Edit {
  return inSection(id, (section) => withParts(section, { wash }));
}

/**
 * Sets a section's meter and brings its chords, and those of its other endings, into it: see
 * `refitChart`. The section keeps its patterns, even those of another meter, in which the hands then
 * rest; changes of the pattern go with their bars.
 */
export function setMeter(id: SectionId, meter: Meter): Edit {
  return inForm((song) => {
    const section = song.sections.find((each) => each.id === id);
    if (!section) return song;
    const refitted = withParts(section, { meter, ...refitChart(section, meter) });
    const movedIn = (part: Section) => movedByCounts(refittedBarCounts(part, meter));
    return withSectionMoved(song, section, refitted, movedIn(section), (ending) => ({
      ending: refittedEnding(ending, section, meter),
      movedBar: movedIn({ ...section, ...ending }),
    }));
  });
}

/** Moves the form entry at place `from` so that it stands at place `to` (0-based); nothing outside the form. */
export function moveFormEntry(from: number, to: number): Edit {
  return inForm((song) => {
    const entry = song.form[from];
    if (!entry || !song.form[to]) return song;
    return withParts(song, { form: song.form.toSpliced(from, 1).toSpliced(to, 0, entry) });
  });
}

/** Plays a section once more, at place `at` of the form (0-based) or else at its end. */
export function addFormEntry(sectionId: SectionId, at?: number): Edit {
  return inForm((song) => {
    if (!song.sections.some((section) => section.id === sectionId)) return song;
    return withParts(song, { form: withEntryAt(song, sectionId, at ?? song.form.length) });
  });
}

/** Takes one place out of the form; the section stays, even where it is then not played at all. */
export function removeFormEntry(id: FormEntryId): Edit {
  return inForm((song) => withParts(song, { form: song.form.filter((entry) => entry.id !== id) }));
}
