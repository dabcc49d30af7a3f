import { expect, it } from 'vitest';
import { timelineOf } from '../../../../src/core/song/timeline.ts';
import { joinName, joinWords } from '../../../../src/ui/parts/plan/joinWords.ts';
import { section, slots, song } from '../../../support/music.ts';

const SAME = { motion: 0, otherRhythm: 0, fifths: 0, otherMeter: false };
const timeline = timelineOf(
  song(
    [
      section('verse', { name: 'Verse', slots: slots('| C | F | G |') }),
      section('chorus', { name: 'Chorus', slots: slots('| Am | F |') }),
    ],
    'verse verse chorus',
  ),
);

it.each([
  [SAME, 'the hands stay, the rhythm goes on'],
  [{ ...SAME, motion: 1 }, 'the hands travel 1 semitone'],
  [
    { motion: 9, otherRhythm: 0.8, fifths: 2, otherMeter: true },
    'the hands travel 9 semitones, the rhythm is another one, the scale changes by 2 notes, the meter changes',
  ],
  [{ ...SAME, otherRhythm: 0.2 }, 'the rhythm changes a little'],
])('says what makes a join hard', (difficulty, words) => {
  expect(joinWords(difficulty)).toBe(words);
});

it('names a join by its sections', () => {
  expect(joinName(timeline, { from: 'verse', to: 'chorus' })).toBe('Verse to Chorus');
});
