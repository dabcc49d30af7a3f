import type { Barring } from '../../../core/rhythm/bandMeter.ts';
import { formatMeter, type Meter } from '../../../core/time/meter.ts';

/** What speaks for each beat being the one, in a line: “1: 44 %, 2: 19 %, …”. */
export function evidenceWords(evidence: readonly number[]): string {
  return evidence.map((share, i) => `${i + 1}: ${Math.round(100 * share)} %`).join(' · ');
}

/** That the music does not go with its bar lines, as far as can be heard; undefined where it does. */
export function crossingWords(beat: number | undefined): string | undefined {
  return beat === undefined
    ? undefined
    : `The music seems to begin its bars on beat ${beat + 1} of the file’s.`;
}

/** How the bars were changed from the file's, in a line. */
export function barringChange({ meter, speed }: Barring, fileMeter: Meter): string {
  const speeds = { 0.5: ', half as fast', 1: '', 2: ', twice as fast' } as const;
  return `Bars of ${formatMeter(meter)}${speeds[speed]}, where the file says ${formatMeter(fileMeter)}.`;
}
