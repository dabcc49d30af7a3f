import type { FillKind } from '../../../core/rhythm/fillFigures.ts';

/** What an ending can be: as it is now, as the pattern's last bar, or a fill. */
export type EndingKind = FillKind | 'as-it-is' | 'as-last-bar';

/** An ending as a musician calls it, and what the hands do in it. */
export type EndingWords = { readonly name: string; readonly does: string };

export const ENDING_WORDS: Readonly<Record<EndingKind, EndingWords>> = {
  'as-it-is': {
    name: 'The ending you have',
    does: 'The ending that the pattern has. What you change in it is heard at once.',
  },
  'as-last-bar': {
    name: 'A copy of the last bar',
    does: 'The pattern’s last bar as it is, to be changed.',
  },
  'pick-up': {
    name: 'Pick-up',
    does: 'The right hand picks up into the next bar; the bass comes to it from a semitone below.',
  },
  'let-ring': {
    name: 'Let it ring',
    does: 'Both hands play the chord once more and let it sound to the end of the bar.',
  },
  'bass-walk': {
    name: 'Bass walks',
    does: 'The bass walks up to the next root; the right hand goes on.',
  },
  'run-up': {
    name: 'Run up',
    does: 'The right hand breaks the chord upwards into the next bar; the left hand goes on.',
  },
  'closing-in': {
    name: 'Closing in',
    does: 'The right hand falls through the chord while the bass walks up.',
  },
  build: {
    name: 'Build',
    does: 'The chord is repeated and grows, over octaves in the bass.',
  },
  'hand-to-hand': {
    name: 'Hand to hand',
    does: 'Left and right strike in turn, short.',
  },
  stop: {
    name: 'Stop',
    does: 'Both hands strike once, short, and are silent until the next bar.',
  },
  push: {
    name: 'Push',
    does: 'Both hands bring the next chord early, on the last off-beat, and hold it over the bar line.',
  },
};
