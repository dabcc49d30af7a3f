import { describe, expect, it } from 'vitest';
import { perform } from '../../src/core/rhythm/perform.ts';
import { timelineOf } from '../../src/core/song/timeline.ts';
import { decodeProject, encodeProject } from '../../src/formats/projectFile.ts';
import { firstProject } from '../../src/state/firstProject.ts';
import { selectNotes, selectPatternAt, selectTempoMap } from '../../src/state/selectors.ts';
import { valueOf } from '../support/music.ts';
import { shelf } from '../support/shelf.ts';

const PATTERNS = shelf().map(({ pattern }) => pattern);

describe.each([
  ['with the shipped shelf', PATTERNS],
  ['with an empty shelf', []],
])('the first song, %s', (_, patterns) => {
  const first = firstProject(patterns);

  it('is a sound project', () =>
    expect(decodeProject(encodeProject(first))).toEqual({ ok: true, value: first }));

  it('lasts two and a half to three and a half minutes', () => {
    const notes = perform(valueOf(selectNotes(first)), selectTempoMap(first));
    const lastEnd = Math.max(...notes.map((note) => note.startSec + note.durationSec));
    expect(lastEnd).toBeGreaterThan(150);
    expect(lastEnd).toBeLessThan(210);
  });

  it('is played by both hands from the first bar to the last', () => {
    const notes = valueOf(selectNotes(first));
    const { bars } = timelineOf(first.song);
    for (const hand of ['left', 'right']) {
      const played = notes.filter((note) => note.part === hand);
      const silent = bars.filter(
        ({ startTick }) =>
          !played.some((note) => note.startTick >= startTick && note.startTick < startTick + 1920),
      );
      expect(silent).toEqual([]);
    }
    expect(bars.filter((bar, i) => !selectPatternAt(first)(bar, i))).toEqual([]);
  });

  it('has sections with names and washes of their own, each played', () => {
    const { sections, form } = first.song;
    expect(new Set(sections.map(({ name }) => name)).size).toBe(sections.length);
    expect(new Set(form.map(({ sectionId }) => sectionId)).size).toBe(sections.length);
  });
});

it('plays verse, chorus, bridge and last chorus with different patterns of the shelf', () => {
  const { song, patterns } = firstProject(PATTERNS);
  const patternOf = (id: string) => song.sections.find((section) => section.id === id)?.patternId;
  const lastChorus = song.form.findLast((entry) => entry.sectionId === 'chorus');
  const chosen = ['verse', 'chorus', 'bridge'].map(patternOf);
  expect(new Set([...chosen, lastChorus?.patternId]).size).toBe(4);
  expect(patterns.map(({ id }) => id).every((id) => PATTERNS.some((one) => one.id === id))).toBe(
    true,
  );
});

it('is the same every time', () => expect(firstProject(PATTERNS)).toEqual(firstProject(PATTERNS)));
