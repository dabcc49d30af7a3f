import type { RightHit } from '../../../core/rhythm/pattern.ts';
import { type BassTone, VOICE_TONES, type VoiceTone } from '../../../core/rhythm/tones.ts';

/** A stretch of a hand's zone as shares of its height, 0 at its lowest pitch, 1 at its highest. */
export type HeightSpan = { readonly from: number; readonly to: number };

/** How high a bass tone's middle lies in the left hand's zone, 0 to 1, in the order of pitch. */
const BASS_HEIGHTS: Readonly<Record<BassTone, number>> = {
  'fifth-below': 0,
  approach: 0.16,
  root: 0.16,
  third: 0.38,
  fifth: 0.54,
  sixth: 0.64,
  seventh: 0.74,
  octave: 0.86,
  tenth: 1,
};

function voiceNumber(tone: VoiceTone): number {
  return VOICE_TONES.indexOf(tone) - VOICE_TONES.indexOf('voice-1') + 1;
}

/** Rows that the right hand's zone is divided into: three, or as many as the highest single voice that is played. */
export function voiceRows(hits: readonly RightHit[]): number {
  return Math.max(3, ...hits.flatMap((hit) => hit.play.map(voiceNumber)));
}

/** Where a right-hand tone lies in a zone of so many voice rows. */
export function voiceSpan(tone: VoiceTone, rows: number): HeightSpan {
  switch (tone) {
    case 'all':
      return { from: 0, to: 1 };
    case 'bottom':
      return { from: 0, to: 1 / rows };
    case 'top':
      return { from: 1 - 1 / rows, to: 1 };
    case 'middle':
      return { from: 1 / rows, to: 1 - 1 / rows };
    case 'upper':
      return { from: 1 / rows, to: 1 };
    default: {
      const n = voiceNumber(tone);
      return { from: (n - 1) / rows, to: n / rows };
    }
  }
}

/**
 * Where the tones of one left-hand hit lie, in the order of `tones`. Each is `thickness` high (a
 * share of the zone); tones that would cover each other are pushed apart, evenly about their middle,
 * and kept inside the zone.
 */
export function bassSpans(tones: readonly BassTone[], thickness: number): HeightSpan[] {
  const rising = tones.toSorted((a, b) => BASS_HEIGHTS[a] - BASS_HEIGHTS[b]);
  const step = Math.min(thickness, 1 / rising.length);
  const middles = rising.map((tone) => step / 2 + BASS_HEIGHTS[tone] * (1 - step));
  spreadApart(middles, step);
  return tones.map((tone) => {
    const middle = middles[rising.indexOf(tone)]!;
    return { from: middle - step / 2, to: middle + step / 2 };
  });
}

/** Pushes ascending places at least `gap` apart, first upwards, then back down from the zone's top. */
function spreadApart(places: number[], gap: number): void {
  for (let i = 1; i < places.length; i++) places[i] = Math.max(places[i]!, places[i - 1]! + gap);
  let ceiling = 1 - gap / 2;
  for (let i = places.length - 1; i >= 0; i--) {
    places[i] = Math.min(places[i]!, ceiling);
    ceiling = places[i]! - gap;
  }
}
