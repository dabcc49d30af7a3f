import { expect, it } from 'vitest';
import {
  chosenBpm,
  FIRST_CHOICES,
  midiPassage,
  trackRequest,
} from '../../../src/ui/songs/handOnChoices.ts';
import { PRACTICE, project } from '../../support/project.ts';

const PROJECT = project();
const DRILL = { ...FIRST_CHOICES, kind: 'drill' } as const;

it('hands the song on as it is practised now, until something else is chosen', () => {
  expect(trackRequest(FIRST_CHOICES, PROJECT)).toEqual({
    passage: { kind: 'song', bpm: 120 },
    hands: 'both',
    band: false,
    click: true,
    countInBars: 1,
  });
  const chosen = { hands: 'left', band: true, click: false, countInBars: 0 } as const;
  expect(trackRequest({ ...FIRST_CHOICES, ...chosen }, PROJECT)).toMatchObject(chosen);
});

it('takes a drill at the goal of its ladder, for its minutes', () => {
  // Two minutes of four beats a bar at 72.
  expect(trackRequest(DRILL, PROJECT).passage).toEqual({ kind: 'drill', bpm: 72, bars: 36 });
  expect(midiPassage(DRILL, PROJECT)).toEqual({ kind: 'drill', bpm: 72, bars: 1 });
});

it('holds a chosen tempo for the song and the passage that it was chosen for', () => {
  const tempo = { projectId: PROJECT.id, kind: 'song', bpm: 90 } as const;
  expect(chosenBpm({ ...FIRST_CHOICES, tempo }, PROJECT)).toBe(90);
  expect(chosenBpm({ ...DRILL, tempo }, PROJECT)).toBe(72);
  expect(chosenBpm({ ...FIRST_CHOICES, tempo }, project({ id: 'another' }))).toBe(120);
  expect(midiPassage({ ...FIRST_CHOICES, tempo }, PROJECT)).toEqual({ kind: 'song', bpm: 120 });
});

it('counts in and clicks as the song does', () => {
  const click = { ...PRACTICE.click, on: false, countInBars: 2 as const };
  const request = trackRequest(FIRST_CHOICES, project({ practice: { ...PRACTICE, click } }));
  expect(request).toMatchObject({ click: false, countInBars: 2 });
});
