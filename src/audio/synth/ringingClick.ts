import type { Seconds } from '../../core/time/ticks.ts';

/**
 * A click that rings a little: cosines of `partialsHz`, all as strong, that fall to 1/e in
 * `decaySec`. It is at full strength from its first sample on, or after rising for `riseSec`.
 */
export type RingingClick = {
  readonly partialsHz: readonly number[];
  readonly decaySec: Seconds;
  readonly riseSec?: Seconds;
};

/** A ringing click is cut off after so many times its decay: 48 dB down. */
const CUT_AFTER = 5.5;

/** The samples of a ringing click; the first one is not zero, the highest at most 1. */
export function ringingClick(
  { partialsHz, decaySec, riseSec = 0 }: RingingClick,
  sampleRate: number,
): Float32Array<ArrayBuffer> {
  const rise = Math.max(1, Math.round(riseSec * sampleRate));
  return Float32Array.from({ length: Math.round(CUT_AFTER * decaySec * sampleRate) }, (_, i) => {
    const sec = i / sampleRate;
    const wave = partialsHz.reduce((sum, hz) => sum + Math.cos(2 * Math.PI * hz * sec), 0);
    return (wave / partialsHz.length) * Math.exp(-sec / decaySec) * Math.min(1, (i + 1) / rise);
  });
}
