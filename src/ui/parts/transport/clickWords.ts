import type { ClickBeats, ClickSound, Subdivision } from '../../../core/rhythm/click.ts';
import type { ClickRests } from '../../../core/rhythm/clickRests.ts';

/** Which beats click, in words. */
export const NAMED_BEATS: readonly (readonly [Extract<ClickBeats, string>, string])[] = [
  ['all', 'Every beat'],
  ['groups', 'Stressed beats'],
  ['downbeat', 'Downbeat'],
  ['back-beat', 'Back-beat'],
];

/** What ticks softly between the beats, in words. */
export const BETWEEN_WORDS: Readonly<Record<Subdivision, string>> = {
  quarters: 'quarters',
  eighths: 'eighths',
  triplets: 'triplets',
  sixteenths: 'sixteenths',
};

export const SOUND_WORDS: Readonly<Record<ClickSound, string>> = {
  tick: 'tick',
  wood: 'wood',
  beep: 'beep',
};

/** Rests of the click that are offered, from hardly any to most of the time. */
export const RESTS: readonly ClickRests[] = [
  { sounding: 3, resting: 1 },
  { sounding: 1, resting: 1 },
  { sounding: 2, resting: 2 },
  { sounding: 4, resting: 4 },
  { sounding: 1, resting: 3 },
  { sounding: 2, resting: 6 },
];

function barsWords(bars: number): string {
  return bars === 1 ? '1 bar' : `${bars} bars`;
}

/** When the click rests, in words: “1 bar in 4”; undefined for never. */
export function restsWords(rests: ClickRests | undefined): string {
  if (!rests) return 'never';
  return `${barsWords(rests.resting)} in ${rests.resting + rests.sounding}`;
}

/** What the page says while the click is silent on purpose, so many bars still, this one included. */
export function clickRestWords(barsLeft: number): string {
  if (barsLeft === 0) return '';
  return barsLeft === 1 ? 'click rests, last bar' : `click rests, ${barsLeft} bars`;
}
