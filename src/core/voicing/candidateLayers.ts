import type { Chord } from '../harmony/chord.ts';
import { chromaOf } from '../harmony/pitch.ts';
import type { ChordSlot } from '../song/song.ts';
import { voicingCandidates, voicingOfKeys } from './candidates.ts';
import { type HeldKeys, heldKeys, type Voicing, type VoicingSettings } from './voicing.ts';

/** A chord to find hands for; `fixedKeys` are the hands that the player has pinned. */
export type ChordToVoice = Pick<ChordSlot, 'chord' | 'fixedKeys'>;

/** A voicing with the keys of its hands at hand, as the costs are weighed on them. */
export type Candidate = HeldKeys & { readonly voicing: Voicing };

/**
 * What each chord can be voiced as: its `voicingCandidates`, or the pinned hands alone, whatever the
 * settings. N.C. has the empty voicing; a list is empty where nothing is playable. Chords that sound
 * the same share one list.
 */
export function candidateLayers(
  chords: readonly ChordToVoice[],
  settings: VoicingSettings,
): (readonly Candidate[])[] {
  const layers = new Map<string, readonly Candidate[]>();
  return chords.map(({ chord, fixedKeys }) => {
    if (fixedKeys) return [candidateOf(voicingOfKeys(chord, fixedKeys))];
    const sound = soundOf(chord);
    const layer = layers.get(sound) ?? voicingCandidates(chord, settings).map(candidateOf);
    layers.set(sound, layer);
    return layer;
  });
}

/** Whether a chord's candidates hold nothing: N.C., or both hands pinned to no keys. */
export function isSilent(layer: readonly Candidate[]): boolean {
  return layer[0]?.voicing.length === 0;
}

/** Weighs keys, not voicings; see `stepCost` and `holdCost`. */
function candidateOf(voicing: Voicing): Candidate {
  return { voicing, ...heldKeys(voicing) };
}

/** Everything of a chord that can be heard, spelling left out. */
function soundOf(chord: Chord | 'no-chord'): string {
  if (chord === 'no-chord') return chord;
  const bass = chromaOf(chord.bass ?? chord.root);
  return [chromaOf(chord.root), chord.quality, ...chord.tensions, bass].join(' ');
}
