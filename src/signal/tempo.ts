import type { TempoReading } from './heardRecording.ts';

/** Beats in frames, and how well they fit in nats against others. */
type FittedBeats = { readonly beats: readonly number[]; readonly fit: number };

/** Tempi this near to each other are one. */
export const SAME_TEMPO = 0.04;

/** The chosen tempo and up to two others, with the share of the fit that speaks for each. */
export function tempoReadings(
  readings: readonly FittedBeats[],
  chosen: FittedBeats,
  frameRate: number,
  chosenBpm: number,
): TempoReading[] {
  const tempi: { bpm: number; weight: number }[] = [{ bpm: chosenBpm, weight: 0 }];
  const best = Math.max(chosen.fit, readings[0]?.fit ?? chosen.fit);
  for (const { beats, fit } of [chosen, ...readings]) {
    const bpm = tempoOf(beats, frameRate);
    const weight = Math.exp(fit - best);
    const same = tempi.find((tempo) => Math.abs(tempo.bpm / bpm - 1) < SAME_TEMPO);
    if (same) same.weight += weight;
    else tempi.push({ bpm, weight });
  }
  const three = [
    tempi[0]!,
    ...tempi
      .slice(1)
      .toSorted((a, b) => b.weight - a.weight)
      .slice(0, 2),
  ];
  const sum = three.reduce((total, { weight }) => total + weight, 0);
  return three.map(({ bpm, weight }) => ({ bpm, weight: weight / sum }));
}

/** Beats a minute of beats in frames, by the median interval. */
export function tempoOf(beats: readonly number[], frameRate: number): number {
  const intervals = beats.slice(1).map((beat, i) => beat - beats[i]!);
  return (60 * frameRate) / intervals.toSorted((a, b) => a - b)[intervals.length >> 1]!;
}
