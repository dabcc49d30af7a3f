import type { Hit, Step } from '../../../core/rhythm/pattern.ts';
import type { Stroke } from '../../../core/rhythm/sources.ts';
import { spokenTone, strokeWords } from './toneNames.ts';

const SPOKEN_COUNTS: Readonly<Record<string, string>> = { '&': 'and' };

/** Where a step is, as one says it: "beat 2", "2 and", with the bar where there are several. */
export function spokenStep(step: Step, syllable: string, bars: number): string {
  const beat = step.beat.beat + 1;
  const count =
    step.index === 0 ? `beat ${beat}` : `${beat} ${SPOKEN_COUNTS[syllable] ?? syllable}`;
  return bars > 1 ? `bar ${step.beat.bar + 1}, ${count}` : count;
}

/** What a hit is, in words for a reader: "root and fifth, accent, short, leads into the next chord". */
export function spokenHit(hit: Hit): string {
  return [
    hit.play.map(spokenTone).join(' and '),
    ...(hit.touch === 'plain' ? [] : [hit.touch]),
    ...(hit.held ? [] : ['short']),
    ...(hit.anticipates ? ['leads into the next chord'] : []),
  ].join(', ');
}

/** What a stroke of the band is: "root, strong, in 9 of 10 bars". */
export function spokenStroke(stroke: Stroke): string {
  const strength = stroke.strength > 0.8 ? 'strong' : stroke.strength < 0.35 ? 'soft' : 'medium';
  const often = stroke.presence < 0.95 ? [`in ${Math.round(stroke.presence * 10)} of 10 bars`] : [];
  return [...strokeWords(stroke.what), strength, ...often].join(', ');
}
