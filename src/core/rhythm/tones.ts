/**
 * What a left-hand hit plays, against the chord's bass: `fifth-below` is the fifth under the root,
 * `tenth` the third an octave up, `approach` the note a semitone under the next chord's bass.
 */
export const BASS_TONES = [
  'root',
  'third',
  'fifth',
  'sixth',
  'seventh',
  'octave',
  'tenth',
  'fifth-below',
  'approach',
] as const;

export type BassTone = (typeof BASS_TONES)[number];

/**
 * What a right-hand hit plays, out of the voicing's right-hand notes: all of them, the highest,
 * the middle ones, the lowest, all but the lowest, or the nth from the bottom. Voices beyond the
 * voicing's size go on an octave up (voice 4 of a triad is voice 1 an octave higher).
 */
export const VOICE_TONES = [
  'all',
  'top',
  'middle',
  'bottom',
  'upper',
  'voice-1',
  'voice-2',
  'voice-3',
  'voice-4',
  'voice-5',
  'voice-6',
] as const;

export type VoiceTone = (typeof VOICE_TONES)[number];
