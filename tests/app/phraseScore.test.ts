import { expect, it } from 'vitest';
import { firstPass, passAfter, scoreOfPass } from '../../src/app/course.ts';
import { phrasePractice, phraseScore } from '../../src/app/phraseScore.ts';
import type { PhraseRequest } from '../../src/app/score.ts';
import { timedScore } from '../../src/app/score.ts';
import type { Phrase } from '../../src/core/practice/phrase.ts';
import type { Note } from '../../src/core/rhythm/note.ts';
import { AS_WRITTEN } from '../../src/state/arrangement.ts';
import { errorOf, meter, slots, valueOf } from '../support/music.ts';
import { pattern } from '../support/patterns.ts';
import { PRACTICE, project } from '../support/project.ts';

const PROJECT = project({
  patterns: [pattern('4/4', { left: 'R---', right: 'C-C-' })],
  practice: { ...PRACTICE, hands: 'none', band: true },
});

function phrase(chart: string, meterText = '4/4'): Phrase {
  return { meter: meter(meterText), barMeters: [], slots: slots(chart, meterText) };
}

function asked(chart: string, parts: Partial<PhraseRequest> = {}): PhraseRequest {
  return { kind: 'phrase', phrase: phrase(chart), ...parts };
}

function notesOf(request: PhraseRequest, part: Note['part']): [number, number][] {
  const { notes } = valueOf(phraseScore(PROJECT, request, 100));
  return notes
    .filter((note) => note.part === part)
    .map((note) => [note.startTick, note.durationTicks]);
}

it('holds every chord from its change to the next, and no chord is silence', () => {
  const request = asked('| C / F / | N.C. |');
  expect(notesOf(request, 'left')).toEqual([
    [0, 960],
    [960, 960],
  ]);
  expect(notesOf(request, 'right')).toHaveLength(6);
  expect(valueOf(phraseScore(PROJECT, request, 100)).toTick).toBe(3840);
});

it('plays a pattern over it where the pattern fits its bars', () => {
  const request = asked('| C |', { patternId: 'p' });
  expect([...new Set(notesOf(request, 'right').map(([start]) => start))]).toEqual([0, 960]);
  const inThree = { ...request, phrase: phrase('| C |', '3/4') };
  expect(notesOf(inThree, 'left')).toEqual([[0, 1440]]);
});

it('plays patterns from a bar on, and rests where the hands are to rest', () => {
  const request = asked('| C | C | C |', {
    patternChanges: [{ bar: 1, patternId: 'p' }, { bar: 2 }],
  });
  expect(notesOf(request, 'left')).toEqual([[1920, 1920]]);
});

it('keeps the hands that are pinned', () => {
  const fixedKeys = { left: [40], right: [72, 76, 79] };
  const pinned = phrase('| C |');
  const request = asked('| C |', {
    phrase: { ...pinned, slots: pinned.slots.map((slot) => ({ ...slot, fixedKeys })) },
  });
  const { notes } = valueOf(phraseScore(PROJECT, request, 100));
  expect(notes.map(({ keyNumber }) => keyNumber)).toEqual([40, 72, 76, 79]);
});

it('is heard at once, with both hands whatever is practised, and once', () => {
  const first = firstPass(asked('| C |'), PROJECT);
  expect(first.countInBars).toBe(0);
  expect(passAfter(first, PROJECT, undefined)).toBeUndefined();
  const score = valueOf(scoreOfPass(first, PROJECT, { speedPercent: 50, arrangement: AS_WRITTEN }));
  const { notes, leadInSec, lengthSec } = timedScore(
    score,
    phrasePractice(PROJECT.practice, asked('| C |')),
    0,
  );
  expect(new Set(notes.map(({ part }) => part))).toEqual(new Set(['left', 'right']));
  expect([leadInSec, lengthSec]).toEqual([0, 4]);
});

it('names the chord that no hands reach; a phrase without bars is nothing to play', () => {
  const voicing = { ...PROJECT.voicing, leftLowest: 36, leftHighest: 36 };
  expect(errorOf(phraseScore({ ...PROJECT, voicing }, asked('| C | F |'), 100))).toEqual({
    kind: 'nothing-playable',
    chord: 'F',
  });
  const empty = asked('| C |', { phrase: { meter: meter('4/4'), barMeters: [], slots: [] } });
  expect(errorOf(phraseScore(PROJECT, empty, 100))).toEqual({ kind: 'nothing-to-play' });
});
