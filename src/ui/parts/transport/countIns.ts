import type { ClickSettings } from '../../../core/practice/practiceSettings.ts';

/** A count-in as it is chosen. */
type CountIn = Pick<ClickSettings, 'countInBars' | 'countInVoice'>;

/** The count-ins there are, with their words. */
export const COUNT_INS: readonly { readonly words: string; readonly countIn: CountIn }[] = [
  { words: 'none', countIn: { countInBars: 0 } },
  { words: 'one bar', countIn: { countInBars: 1 } },
  { words: 'two bars', countIn: { countInBars: 2 } },
  { words: 'one bar, spoken', countIn: { countInBars: 1, countInVoice: 'spoken' } },
  { words: 'two bars, spoken', countIn: { countInBars: 2, countInVoice: 'spoken' } },
];

/** The words of a count-in; which voice is kept does not matter where there is none. */
export function countInWords({ countInBars, countInVoice }: CountIn): string {
  const isSpoken = countInVoice === 'spoken' && countInBars > 0;
  const found = COUNT_INS.find(
    ({ countIn }) =>
      countIn.countInBars === countInBars && (countIn.countInVoice === 'spoken') === isSpoken,
  );
  return found?.words ?? 'none';
}
