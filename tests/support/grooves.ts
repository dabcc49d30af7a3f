import type { Fold, HeardStroke } from '../../src/core/rhythm/fold.ts';
import { DIVISIONS, type Division, type Pattern } from '../../src/core/rhythm/pattern.ts';
import type { StrokeTone } from '../../src/core/rhythm/sources.ts';
import { STRAIGHT, type Swing, swungTick, takesSwing } from '../../src/core/rhythm/swing.ts';
import { barTicks, beatLengths, beatStarts, type Meter } from '../../src/core/time/meter.ts';
import { meter as meterOf } from './music.ts';
import type { Random } from './random.ts';

/** One stroke of a groove, straight, in ticks from its start. */
export type GrooveStroke = {
  readonly at: number;
  readonly strength: number;
  readonly what?: readonly StrokeTone[];
};

/** A groove whose truth is known, to be played unevenly and folded again. */
export type Groove = {
  readonly meter: Meter;
  readonly bars: number;
  readonly swing: Swing;
  readonly sources: Readonly<Record<string, readonly GrooveStroke[]>>;
};

const STRENGTHS: Readonly<Record<string, number>> = { X: 0.9, x: 0.65, o: 0.3 };

/**
 * A groove written as text, one line a source. Spaces part the beats, the signs of a beat are its
 * steps (three signs: triplets), bar lines do not count: `x` plain, `X` loud, `o` soft, else nothing.
 */
export function groove(
  meterText: string,
  lines: Readonly<Record<string, string>>,
  swing: Swing = STRAIGHT,
): Groove {
  const meter = meterOf(meterText);
  const starts = beatStarts(meter);
  const lengths = beatLengths(meter);
  let beats = 0;
  const sources = Object.entries(lines).map(([id, line]) => {
    const groups = line.replaceAll('|', ' ').trim().split(/\s+/);
    beats = Math.max(beats, groups.length);
    const strokes = groups.flatMap((group, i) => {
      const start = Math.floor(i / starts.length) * barTicks(meter) + starts[i % starts.length]!;
      const length = lengths[i % lengths.length]!;
      return group.split('').flatMap((sign, step) => {
        const strength = STRENGTHS[sign];
        const at = start + Math.round((step * length) / group.length);
        return strength === undefined ? [] : [{ at, strength }];
      });
    });
    return [id, strokes] as const;
  });
  return {
    meter,
    bars: Math.ceil(beats / starts.length),
    swing,
    sources: Object.fromEntries(sources),
  };
}

/** What the band plays in a pattern, or what its hands play where it has no band. */
export function grooveOfPattern(pattern: Pattern): Groove {
  const { meter, bars, swing } = pattern;
  const hands = [
    { id: 'left', strokes: pattern.left },
    { id: 'right', strokes: pattern.right },
  ];
  const lines = hands.map(({ id, strokes }) => [
    id,
    strokes.map(({ at, play }) => ({ at, strength: 0.7, what: play })),
  ]);
  return { meter, bars, swing, sources: Object.fromEntries(lines) };
}

function barText(played: Groove, index: number): string {
  const length = barTicks(played.meter);
  return Object.entries(played.sources)
    .flatMap(([id, strokes]) =>
      strokes
        .filter(({ at }) => Math.floor(at / length) === index)
        .map(({ at, what = [] }) => `${id} ${at % length} ${what.join()}`),
    )
    .toSorted()
    .join('|');
}

/** The shortest period of 1, 2 or 4 bars after which the groove repeats. */
export function truePeriod(played: Groove): number {
  const bars = Array.from({ length: played.bars }, (_, i) => barText(played, i));
  const periods = [1, 2, 4].filter((p) => bars.length % p === 0);
  return periods.find((p) => bars.every((b, i) => b === bars[i % p])) ?? played.bars;
}

/** For each beat of the period the least division that holds all its strokes. */
export function trueDivisions(played: Groove): Division[] {
  const lengths = beatLengths(played.meter);
  const starts = beatStarts(played.meter);
  const all = Object.values(played.sources).flat();
  return Array.from({ length: truePeriod(played) * lengths.length }, (_, i) => {
    const start =
      Math.floor(i / lengths.length) * barTicks(played.meter) + starts[i % starts.length]!;
    const length = lengths[i % lengths.length]!;
    const inBeat = all.map(({ at }) => at - start).filter((at) => at >= 0 && at < length);
    const division = DIVISIONS.find((d) =>
      inBeat.every((at) => Math.abs(at - Math.round(at / (length / d)) * (length / d)) < 1),
    );
    if (!division) throw new Error(`no division holds ${inBeat.join(' ')}`);
    return division;
  });
}

/** The groove's steps, once through its period, as `source at`. */
export function trueSteps(played: Groove): string[] {
  const length = truePeriod(played) * barTicks(played.meter);
  return Object.entries(played.sources).flatMap(([id, strokes]) =>
    strokes.filter(({ at }) => at < length).map(({ at }) => `${id} ${at}`),
  );
}

/** The steps that a fold finds in half of its bars or more, as `source at`. */
export function foundSteps(fold: Fold): string[] {
  return fold.sources.flatMap(({ id, steps }) =>
    steps.filter((step) => step.presence >= 0.5).map((step) => `${id} ${step.at}`),
  );
}

/** F-measure of what was found against the truth. */
export function fMeasure(found: readonly string[], truth: readonly string[]): number {
  const right = found.filter((f) => truth.includes(f)).length;
  return (2 * right) / (found.length + truth.length);
}

/** How a groove is played: by whom and how well. Times in seconds, shares 0 to 1. */
export type Playing = {
  readonly bars: number;
  readonly bpm: number;
  readonly jitterSec: number;
  readonly missing: number;
  readonly added: number;
  readonly latencySec?: number;
  /** The tempo grows evenly by this share from the first bar to the last. */
  readonly drift?: number;
};

/** As the folding tests demand: 15 ms of jitter, a tenth missing, a tenth added, sixteen bars. */
export const UNEVEN: Playing = { bars: 16, bpm: 110, jitterSec: 0.015, missing: 0.1, added: 0.1 };

/** Where a straight position of the groove sounds: swung where its beat takes swing. */
function soundingTick(played: Groove, at: number, divisions: readonly Division[]): number {
  const lengths = beatLengths(played.meter);
  const starts = beatStarts(played.meter);
  const length = barTicks(played.meter);
  const beat = starts.findLastIndex((start) => start <= at % length);
  const index = (Math.floor(at / length) * lengths.length + beat) % divisions.length;
  const swings = takesSwing(lengths[beat]!, divisions[index]!);
  return swings ? swungTick(at, played.meter, played.swing) : at;
}

/** The groove played over many bars: strokes in seconds, and the felt beats with the last bar's end. */
export function playGroove(
  played: Groove,
  playing: Playing,
  random: Random,
): { readonly strokes: HeardStroke[]; readonly beats: number[] } {
  const { bars, bpm, jitterSec, missing, added, latencySec = 0, drift = 0 } = playing;
  const length = barTicks(played.meter);
  const total = bars * length;
  const secPerTick = 60 / (bpm * 480);
  // Position under a tempo that changes linearly: an exact quadratic, so beats and strokes agree.
  const secondsAt = (tick: number) => secPerTick * tick * (1 - (drift * tick) / (2 * total));
  const divisions = trueDivisions(played);
  const strokes: HeardStroke[] = [];
  for (const [source, own] of Object.entries(played.sources)) {
    for (let start = 0; start < bars; start += played.bars) {
      for (const { at, strength, what } of own) {
        if (start * length + at >= total) continue;
        const late = latencySec + jitterSec * random.normal();
        const heard = secondsAt(start * length + soundingTick(played, at, divisions)) + late;
        const stroke = { at: heard, strength, source, ...(what ? { what } : {}) };
        if (random.uniform() >= missing) strokes.push(stroke);
        if (random.uniform() < added)
          strokes.push({ ...stroke, at: secondsAt(random.uniform() * total) });
      }
    }
  }
  const perBar = beatStarts(played.meter);
  const beats = Array.from({ length: bars }, (_, i) => perBar.map((s) => i * length + s)).flat();
  return { strokes, beats: [...beats, total].map(secondsAt) };
}
