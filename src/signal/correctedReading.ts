import { unreachable } from '../core/result.ts';
import { type BeatCorrection, tappedSecs } from './beatCorrections.ts';
import { type BeatEvidence, riseSec } from './beatEvidence.ts';
import { AS_FOUND, beatsAtLevel } from './beatLevels.ts';
import type { BeatReading } from './beatReading.ts';

/** The best reading, changed as the player says; undefined where there is none. */
export function correctedReading(
  readings: readonly BeatReading[],
  evidence: BeatEvidence,
  corrections: readonly BeatCorrection[],
): BeatReading | undefined {
  const taps = tappedSecs(corrections).toSorted((a, b) => a - b);
  const first = taps.length > 2 ? nearestToTaps(readings, evidence, taps) : readings[0];
  if (!first) return undefined;
  return corrections.reduce(
    (reading, correction) => corrected(reading, evidence, correction),
    first,
  );
}

/** Of readings, the one whose beats lie where somebody tapped; among equals the one that fits best. */
function nearestToTaps(
  readings: readonly BeatReading[],
  evidence: BeatEvidence,
  taps: readonly number[],
): BeatReading | undefined {
  const score = ({ beats, fit }: BeatReading) => {
    const within = beats
      .map((beat) => riseSec(beat, evidence))
      .filter((sec) => sec > taps[0]! - 0.2 && sec < taps.at(-1)! + 0.2);
    const matched = taps.filter((tap) => within.some((sec) => Math.abs(sec - tap) < 0.07)).length;
    return (10 * 2 * matched) / (within.length + taps.length) + 0.1 * fit;
  };
  return readings.toSorted((a, b) => score(b) - score(a))[0];
}

function corrected(
  reading: BeatReading,
  evidence: BeatEvidence,
  correction: BeatCorrection,
): BeatReading {
  const { beats, barLength, phase } = reading;
  const nearest = (sec: number) =>
    nearestBeat(beats, (sec - riseSec(0, evidence)) * evidence.frameRate);
  switch (correction.kind) {
    case 'downbeat':
      return { ...reading, phase: nearest(correction.atSec) % barLength };
    case 'bar-length':
      return { ...reading, barLength: correction.beats, phase: phase % correction.beats };
    case 'twice-as-fast':
      return {
        ...reading,
        beats: beatsAtLevel(beats, { counted: 2, found: 1, offset: 0 }),
        phase: (2 * phase) % barLength,
      };
    case 'half-as-fast': {
      const offset = phase % 2 === 0 ? 0 : 1 / 2;
      return {
        ...reading,
        beats: beatsAtLevel(beats, { counted: 1, found: 2, offset }),
        phase: Math.floor(phase / 2) % barLength,
      };
    }
    case 'off-beat':
      return { ...reading, beats: beatsAtLevel(beats, { ...AS_FOUND, offset: 1 / 2 }) };
    case 'moved-beat':
    case 'taps':
    case 'anew':
      return reading;
    default:
      return unreachable(correction);
  }
}

function nearestBeat(beats: readonly number[], frame: number): number {
  let best = 0;
  for (let k = 1; k < beats.length; k++)
    if (Math.abs(beats[k]! - frame) < Math.abs(beats[best]! - frame)) best = k;
  return best;
}
