import type { Seconds } from '../core/time/ticks.ts';

/** What a player puts right about the beats that were heard; `atSec` is where in the recording. */
export type BeatCorrection =
  /** The beat nearest to here is the first of a bar. */
  | { readonly kind: 'downbeat'; readonly atSec: Seconds }
  | { readonly kind: 'twice-as-fast'; readonly atSec: Seconds }
  | { readonly kind: 'half-as-fast'; readonly atSec: Seconds }
  /** Beats lie halfway between those heard. */
  | { readonly kind: 'off-beat'; readonly atSec: Seconds }
  | { readonly kind: 'bar-length'; readonly atSec: Seconds; readonly beats: number }
  /** A beat was dragged from `atSec` to `toSec`. */
  | { readonly kind: 'moved-beat'; readonly atSec: Seconds; readonly toSec: Seconds }
  /** Somebody tapped along, at least twice: evidence beside what is heard. */
  | { readonly kind: 'taps'; readonly atSec: Seconds; readonly taps: readonly Seconds[] }
  /** What follows is heard by itself: another tempo, or the beat found again. */
  | { readonly kind: 'anew'; readonly atSec: Seconds };

/** A part of a recording whose beats are found by themselves; corrections in seconds from its start. */
export type Stretch = {
  /** What came before it. */
  readonly follows: 'nothing' | 'anew' | 'silence';
  readonly fromSec: Seconds;
  readonly toSec: Seconds;
  readonly corrections: readonly BeatCorrection[];
};

/** The end of a silence in the recording, from which on beats are found by themselves. */
export type SilenceEnd = { readonly kind: 'silence'; readonly atSec: Seconds };

/** Cuts a recording at every "anew" and after silences, and gives each stretch the corrections that were made in it. */
export function stretchesOf(
  marks: readonly (BeatCorrection | SilenceEnd)[],
  lengthSec: Seconds,
): Stretch[] {
  const cuts = marks
    .filter((mark) => mark.kind === 'anew' || mark.kind === 'silence')
    .filter(({ atSec }) => atSec > 0 && atSec < lengthSec)
    .toSorted((a, b) => a.atSec - b.atSec);
  const starts: { kind: Stretch['follows']; atSec: Seconds }[] = [
    { kind: 'nothing', atSec: 0 },
    ...cuts,
  ];
  return starts.map(({ kind, atSec: fromSec }, i) => {
    const isLast = i === starts.length - 1;
    const toSec = isLast ? lengthSec : starts[i + 1]!.atSec;
    return {
      follows: kind,
      fromSec,
      toSec,
      corrections: marks
        .filter((mark) => mark.kind !== 'anew' && mark.kind !== 'silence')
        .filter(({ atSec }) => (atSec >= fromSec || i === 0) && (atSec < toSec || isLast))
        .map((correction) => movedBy(correction, -fromSec)),
    };
  });
}

function movedBy(correction: BeatCorrection, sec: Seconds): BeatCorrection {
  const atSec = correction.atSec + sec;
  switch (correction.kind) {
    case 'moved-beat':
      return { ...correction, atSec, toSec: correction.toSec + sec };
    case 'taps':
      return { ...correction, atSec, taps: correction.taps.map((tap) => tap + sec) };
    default:
      return { ...correction, atSec };
  }
}

/** When beats were tapped or dragged to, in the order of the corrections. */
export function tappedSecs(corrections: readonly BeatCorrection[]): Seconds[] {
  return corrections.flatMap((correction) => {
    if (correction.kind === 'taps') return correction.taps;
    return correction.kind === 'moved-beat' ? [correction.toSec] : [];
  });
}
