import { DIVISIONS, type Division, type Pattern, patternBeats } from '../../core/rhythm/pattern.ts';
import { beatLengths, type Meter } from '../../core/time/meter.ts';
import type { Ticks } from '../../core/time/ticks.ts';
import { PATTERN_BARS } from './pattern.ts';
import { withPatternMeter } from './patternGrid.ts';
import { settledPattern } from './settle.ts';

/**
 * Ways to bring a pattern into another meter. `cut`: beats that the new bar has no room for are left
 * out. `restate`: beat for beat, each as long as the new meter's. `open`: beat for beat, in the beats
 * that the new bar has more nothing begins. `again`: in those beats the bar begins again. `across`:
 * the beats go on over the bar lines until they come out even.
 */
export const METER_FITS = ['cut', 'restate', 'open', 'again', 'across'] as const;

export type MeterFit = (typeof METER_FITS)[number];

/** A pattern in another meter, and the way it was brought there. */
export type FittedPattern = { readonly fit: MeterFit; readonly pattern: Pattern };

/** Everything that a pattern can be in another meter, the plainest first; at least one. */
export function fittedToMeter(pattern: Pattern, meter: Meter): FittedPattern[] {
  const before = beatLengths(pattern.meter).length;
  const after = beatLengths(meter).length;
  const plainest = withPatternMeter(pattern, meter);
  const bars = barsAcross(pattern, meter);
  return [
    { fit: plainFit(before, after), pattern: plainest },
    ...(after > before
      ? [{ fit: 'again' as const, pattern: again(pattern, plainest, before, after) }]
      : []),
    ...(bars !== undefined && after !== before
      ? [{ fit: 'across' as const, pattern: across(pattern, plainest, bars) }]
      : []),
  ];
}

function plainFit(before: number, after: number): MeterFit {
  if (after === before) return 'restate';
  return after < before ? 'cut' : 'open';
}

function again(pattern: Pattern, plainest: Pattern, before: number, after: number): Pattern {
  return restated(pattern, plainest, (beat) => {
    const bar = Math.floor(beat / after);
    return bar * before + ((beat % after) % before);
  });
}

/** In how many bars of the new meter the beats of the pattern come out even, if a pattern can have so many. */
function barsAcross(pattern: Pattern, meter: Meter): number | undefined {
  const lengths = [...beatLengths(pattern.meter), ...beatLengths(meter)];
  if (lengths.some((length) => length !== lengths[0])) return undefined;
  const beats = patternBeats(pattern).length;
  return PATTERN_BARS.find((bars) => (bars * beatLengths(meter).length) % beats === 0);
}

function across(pattern: Pattern, plainest: Pattern, bars: number): Pattern {
  const beats = patternBeats(pattern).length;
  return restated(pattern, { ...plainest, bars }, (beat) => beat % beats);
}

type Placed = { readonly at: Ticks; readonly length: Ticks };

/**
 * What `pattern` plays in the bars of `frame`: each beat of it plays what a beat of the pattern does
 * (`beatOf`, both counted over all bars), as far into the beat, with that beat's division. The
 * frame's ending stays.
 */
function restated(pattern: Pattern, frame: Pattern, beatOf: (beat: number) => number): Pattern {
  const from = patternBeats(pattern);
  const to = patternBeats({ ...frame, divisions: [] });
  const moved = <P extends Placed>(placed: readonly P[]): P[] =>
    to.flatMap((beat, i) => {
      const old = from[beatOf(i)]!;
      const scale = beat.length / old.length;
      return placed
        .filter(({ at }) => at >= old.start && at < old.start + old.length)
        .map((one) => ({
          ...one,
          at: beat.start + Math.round((one.at - old.start) * scale),
          length: Math.max(1, Math.round(one.length * scale)),
        }));
    });
  return settledPattern({
    ...frame,
    divisions: to.map((_, i): Division => from[beatOf(i)]?.division ?? DIVISIONS[0]),
    left: moved(pattern.left),
    right: moved(pattern.right),
    sources: pattern.sources.map((source) => ({ ...source, strokes: moved(source.strokes) })),
  });
}
