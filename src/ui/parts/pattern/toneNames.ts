import type { StrokeTone } from '../../../core/rhythm/sources.ts';
import type { BassTone, VoiceTone } from '../../../core/rhythm/tones.ts';

/**
 * A tone as a musician says it: `mark` is what stands inside a hit, `name` what stands on a button,
 * `key` the figure or letter that chooses it in the grid.
 */
export type ToneName = { readonly mark: string; readonly name: string; readonly key: string };

/** Bass tones by their degree; the key is the degree's figure, 0 the tenth and 4 the fourth down to the low fifth. */
export const BASS_NAMES: Readonly<Record<BassTone, ToneName>> = {
  root: { mark: 'R', name: 'root', key: '1' },
  third: { mark: '3', name: 'third', key: '3' },
  fifth: { mark: '5', name: 'fifth', key: '5' },
  sixth: { mark: '6', name: 'sixth', key: '6' },
  seventh: { mark: '7', name: 'seventh', key: '7' },
  octave: { mark: '8', name: 'octave', key: '8' },
  tenth: { mark: '10', name: 'tenth', key: '0' },
  'fifth-below': { mark: '5', name: 'low fifth', key: '4' },
  approach: { mark: 'appr.', name: 'approach', key: '9' },
};

/** The right hand's tones; single voices are counted from the bottom up. */
export const VOICE_NAMES: Readonly<Record<VoiceTone, ToneName>> = {
  all: { mark: 'chord', name: 'chord', key: '0' },
  top: { mark: 'top', name: 'top', key: '9' },
  middle: { mark: 'mid', name: 'middle', key: '8' },
  bottom: { mark: 'low', name: 'bottom', key: '7' },
  upper: { mark: 'upper', name: 'upper part', key: 'u' },
  'voice-1': { mark: '1', name: '1', key: '1' },
  'voice-2': { mark: '2', name: '2', key: '2' },
  'voice-3': { mark: '3', name: '3', key: '3' },
  'voice-4': { mark: '4', name: '4', key: '4' },
  'voice-5': { mark: '5', name: '5', key: '5' },
  'voice-6': { mark: '6', name: '6', key: '6' },
};

/** The names of any tone. */
export function toneName(tone: BassTone | VoiceTone): ToneName {
  return tone in BASS_NAMES ? BASS_NAMES[tone as BassTone] : VOICE_NAMES[tone as VoiceTone];
}

/** A tone in a sentence: "root", "chord", "voice 2". */
export function spokenTone(tone: BassTone | VoiceTone): string {
  const { name } = toneName(tone);
  return /^\d$/.test(name) ? `voice ${name}` : name;
}

/** What a stroke of the band plays, in words; nothing for a drum. */
export function strokeWords(what: readonly StrokeTone[]): string[] {
  return what.flatMap((tone) => (tone === 'unpitched' ? [] : [spokenTone(tone)]));
}
