import { expect, it } from 'vitest';
import { DRUM_KEYS, drumPartOf } from '../../../src/core/rhythm/drumVoices.ts';

// General MIDI percussion key map, keys 35 to 81 ([M21], citing GM Level 1, reference 1.1); which kind
// of drum feeds which source is common practice.
it.each([
  [35, 'acoustic bass drum', 'kick'],
  [36, 'bass drum 1', 'kick'],
  [37, 'side stick', 'snare'],
  [38, 'acoustic snare', 'snare'],
  [39, 'hand clap', 'percussion'],
  [40, 'electric snare', 'snare'],
  [41, 'low floor tom', 'tom'],
  [42, 'closed hi-hat', 'hi-hat'],
  [43, 'high floor tom', 'tom'],
  [44, 'pedal hi-hat', 'hi-hat'],
  [45, 'low tom', 'tom'],
  [46, 'open hi-hat', 'hi-hat'],
  [47, 'low-mid tom', 'tom'],
  [48, 'hi-mid tom', 'tom'],
  [49, 'crash 1', 'cymbal'],
  [50, 'high tom', 'tom'],
  [51, 'ride 1', 'cymbal'],
  [52, 'chinese cymbal', 'cymbal'],
  [53, 'ride bell', 'cymbal'],
  [54, 'tambourine', 'percussion'],
  [55, 'splash', 'cymbal'],
  [56, 'cowbell', 'percussion'],
  [57, 'crash 2', 'cymbal'],
  [58, 'vibraslap', 'percussion'],
  [59, 'ride 2', 'cymbal'],
  [60, 'hi bongo', 'percussion'],
  [70, 'maracas', 'percussion'],
  [75, 'claves', 'percussion'],
  [81, 'open triangle', 'percussion'],
])('lets key %i, the %s, feed the %s', (key, _, part) => {
  expect(drumPartOf(key)).toBe(part);
});

it('gives every key to one drum only', () => {
  const keys = Object.values(DRUM_KEYS).flat();
  expect(new Set(keys).size).toBe(keys.length);
});
