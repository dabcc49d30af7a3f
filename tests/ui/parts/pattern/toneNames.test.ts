import { expect, it } from 'vitest';
import { BASS_NAMES, spokenTone, VOICE_NAMES } from '../../../../src/ui/parts/pattern/toneNames.ts';

it.each([
  ['left', BASS_NAMES],
  ['right', VOICE_NAMES],
])('gives every tone of the %s hand a key and a name of its own', (_hand, names) => {
  const all = Object.values(names);
  expect(new Set(all.map(({ key }) => key)).size).toBe(all.length);
  expect(new Set(all.map(({ name }) => name)).size).toBe(all.length);
});

it('says a single voice as such', () => {
  expect([spokenTone('voice-2'), spokenTone('all'), spokenTone('root')]).toEqual([
    'voice 2',
    'chord',
    'root',
  ]);
});
