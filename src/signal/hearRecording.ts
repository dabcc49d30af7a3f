import { findAttacks } from './attacks.ts';
import { findBassNotes } from './bassLine.ts';
import { beatEvidence } from './beatEvidence.ts';
import { beatsFrom } from './beats.ts';
import { findHarmony } from './chords.ts';
import { findDrumHits } from './drums.ts';
import type { HeardRecording, MonoRecording } from './heardRecording.ts';
import { lowPitches } from './lowPitches.ts';
import { findPicks } from './picking.ts';
import { LISTENING_RATE_HZ, resample } from './resample.ts';
import { sectionsOf } from './sections.ts';
import { strikesIn } from './strikeLooks.ts';
import { struckBandFrames } from './struckBands.ts';

/** The share of the work that is done after each part (measured with three minutes of a band). */
const DONE = { resampled: 0.05, evidence: 0.3, beats: 0.5, pieces: 0.85, all: 1 };

/**
 * Hears a whole recording: beats and bars, drums, bass line and picking, chords, key and sections
 * (see `HeardRecording`). `onProgress` is called with the share of the work that is done, ascending
 * from 0 to 1. An empty or silent recording gives empty lists.
 */
export function hearRecording(
  recording: MonoRecording,
  { onProgress }: { readonly onProgress?: (share: number) => void } = {},
): HeardRecording {
  onProgress?.(0);
  const sound: MonoRecording = {
    samples: resample(recording),
    sampleRateHz: LISTENING_RATE_HZ,
  };
  onProgress?.(DONE.resampled);
  const evidence = beatEvidence(sound);
  onProgress?.(DONE.evidence);
  const { tempoBpm, tempi, beats, beatsPerBar, confidence } = beatsFrom(evidence);
  const onsets = findAttacks(evidence);
  onProgress?.(DONE.beats);
  const strikes = strikesIn(struckBandFrames(sound.samples));
  const drums = findDrumHits(strikes);
  const pitches = lowPitches(sound.samples);
  const bass = findBassNotes(strikes, pitches);
  const picks = findPicks(strikes, pitches);
  onProgress?.(DONE.pieces);
  const harmony = findHarmony(sound, beats);
  const sections = sectionsOf(harmony, beats);
  onProgress?.(DONE.all);
  return {
    tempoBpm,
    tempi,
    beats,
    beatsPerBar,
    beatConfidence: confidence,
    onsets,
    drums,
    bass,
    picks,
    chords: harmony.chords,
    key: harmony.key,
    sections,
  };
}
