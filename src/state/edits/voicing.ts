import {
  SPANS,
  type VoicingSettings,
  type VoicingWeights,
  WEIGHTS,
} from '../../core/voicing/voicing.ts';
import { brought, type Edit, withParts } from './edit.ts';

/** Keys a range can end on. */
const KEYS = { lowest: 0, highest: 127 } as const;

function settableWeights(weights: VoicingWeights, before: VoicingWeights): VoicingWeights {
  const names = Object.keys(before) as (keyof VoicingWeights)[];
  return Object.fromEntries(
    names.map((name) => [name, brought(weights[name], WEIGHTS, before[name])]),
  ) as VoicingWeights;
}

/**
 * Changes some of what the hands may do; the rest stays. Ends of ranges and spans are brought to
 * whole keys and semitones that there are, weights to 0 or more.
 */
export function setVoicing(parts: Partial<VoicingSettings>): Edit {
  return (project) => {
    const before = project.voicing;
    const voicing = { ...before, ...parts };
    const keyOf = (end: 'rightLowest' | 'rightHighest' | 'leftLowest' | 'leftHighest') =>
      brought(Math.round(voicing[end]), KEYS, before[end]);
    return withParts(project, {
      voicing: {
        ...voicing,
        spanSemitones: brought(Math.round(voicing.spanSemitones), SPANS, before.spanSemitones),
        rightLowest: keyOf('rightLowest'),
        rightHighest: keyOf('rightHighest'),
        leftLowest: keyOf('leftLowest'),
        leftHighest: keyOf('leftHighest'),
        weights: settableWeights(voicing.weights, before.weights),
      },
    });
  };
}
