import { expect, it } from 'vitest';
import type { MidiTrigger } from '../../../src/app/midiTrigger.ts';
import { midiSentence } from '../../../src/ui/parts/input/midiHeard.ts';
import { cautionAbout, taughtSentence, triggerWords } from '../../../src/ui/shell/taughtWords.ts';

const SOFT: MidiTrigger = { kind: 'control', controller: 67 };

// Pedal controllers as MIDI 1.0 numbers them; the highest key of a piano is C8 = 108 (common practice).
it.each<[MidiTrigger, string]>([
  [{ kind: 'control', controller: 64 }, 'Right pedal (sustain)'],
  [{ kind: 'control', controller: 66 }, 'Middle pedal (sostenuto)'],
  [SOFT, 'Left pedal (soft)'],
  [{ kind: 'control', controller: 80 }, 'Switch 80'],
  [{ kind: 'key', keyNumber: 108 }, 'Key C8'],
  [{ kind: 'key', keyNumber: 60 }, 'Key C4'],
  [{ kind: 'pad', keyNumber: 36 }, 'Pad 36'],
  [{ kind: 'program', program: 0 }, 'Foot switch, program 1'],
])('calls %j “%s”', (trigger, words) => expect(triggerWords(trigger)).toBe(words));

it('warns of a pedal and of a key that are played, not of one that is not', () => {
  expect(cautionAbout({ kind: 'control', controller: 64 })).toMatch(/you play with this one/);
  expect(cautionAbout({ kind: 'key', keyNumber: 108 })).toMatch(/No longer counted as played/);
  expect(cautionAbout(SOFT)).toBeUndefined();
});

it('says what a pedal no longer does once it is taught something else', () => {
  const taught = { click: SOFT };
  expect(taughtSentence('faster', SOFT, taught)).toBe(
    'Left pedal (soft) is taken for “Faster”; it no longer does “Click on, or off”.',
  );
  expect(taughtSentence('click', SOFT, taught)).toBe(
    'Left pedal (soft) is taken for “Click on, or off”.',
  );
});

it('says which instruments are heard, or why none is', () => {
  expect(midiSentence({ status: 'closed' })).toBeUndefined();
  expect(midiSentence({ status: 'open', names: ['piano', ''] })).toBe(
    'Heard: piano, an instrument without a name.',
  );
  expect(midiSentence({ status: 'open', names: [] })).toMatch(/No MIDI instrument is connected/);
  expect(midiSentence({ status: 'refused', problem: { kind: 'denied' } })).toMatch(/not allowed/);
});
