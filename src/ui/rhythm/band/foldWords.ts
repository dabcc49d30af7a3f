import type { Fold } from '../../../core/rhythm/fold.ts';
import { formatMeter } from '../../../core/time/meter.ts';
import { swingWords } from '../../parts/pattern/swingWords.ts';

/** From this share on, what lies between the steps is worth a word. */
const WORTH_SAYING = 0.1;

const LEVELS = { eighth: 'eighths', sixteenth: 'sixteenths' } as const;

/** What was found in the band, in a musician's words, one fact each. */
export function foldWords(fold: Fold): string[] {
  const { bars, meter, barsAgreeing, agreement, swing, offGrid } = fold;
  const words = swingWords(swing.ratio);
  return [
    `${bars} ${bars === 1 ? 'bar' : 'bars'} of ${formatMeter(meter)}`,
    `${barsAgreeing} of ${agreement.length} bars play it`,
    words === 'straight' ? words : `swung ${LEVELS[swing.level]}, ${words}`,
    ...(offGrid >= WORTH_SAYING
      ? [`${Math.round(offGrid * 100)} % of the strokes lie between the steps`]
      : []),
  ];
}
