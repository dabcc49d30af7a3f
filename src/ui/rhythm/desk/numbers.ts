import { coverage, density, leadingHand, syncopation } from '../../../core/rhythm/measures.ts';
import type { Pattern } from '../../../core/rhythm/pattern.ts';
import { sourceName } from '../../parts/pattern/sourceNames.ts';
import { spokenTick } from '../../parts/pattern/spokenTick.ts';
import { swingWords } from '../../parts/pattern/swingWords.ts';

/** One number of a pattern: what it measures, its value, and what it means in a sentence. */
export type PatternNumber = {
  readonly name: string;
  readonly value: string;
  readonly means: string;
};

function syncopationNumber(pattern: Pattern): PatternNumber {
  const [left, right] = [syncopation(pattern.left, pattern), syncopation(pattern.right, pattern)];
  const pulls =
    left + right === 0
      ? 'Everything is struck on the beats or leads to them.'
      : `Right hand ${right}, left hand ${left}: the more, the harder it pulls against the beat.`;
  return { name: 'Syncopation', value: String(left + right), means: pulls };
}

function densityNumber(pattern: Pattern): PatternNumber {
  const [right, left] = [density(pattern.right, pattern), density(pattern.left, pattern)];
  const written = (strikes: number) => String(Number(strikes.toFixed(2)));
  return {
    name: 'Density',
    value: written(right + left),
    means: `Strikes to a beat: ${written(right)} in the right hand, ${written(left)} in the left.`,
  };
}

function leaderWords(pattern: Pattern): string {
  const [left, right] = [pattern.left.length, pattern.right.length];
  const leader = leadingHand(pattern);
  if (leader === 'both') return 'Both hands strike equally often.';
  const strikes = leader === 'left' ? `${left} strikes to ${right}` : `${right} strikes to ${left}`;
  return `The ${leader} hand strikes more often, ${strikes}; listen to it first.`;
}

function leadingNumber(pattern: Pattern): PatternNumber {
  return { name: 'Leading hand', value: leadingHand(pattern), means: leaderWords(pattern) };
}

function swingNumber({ swing }: Pattern): PatternNumber {
  const ratio = Number(swing.ratio.toFixed(2));
  const isStraight = swingWords(swing.ratio) === 'straight';
  return {
    name: 'Swing',
    value: `${ratio} : 1`,
    means: isStraight
      ? `Straight: both ${swing.level}s of a pair last alike.`
      : `The first ${swing.level} of a pair lasts ${ratio} times as long as the second.`,
  };
}

function coverageNumber(pattern: Pattern): PatternNumber {
  const name = 'Carries the band';
  if (pattern.sources.length === 0)
    return { name, value: '–', means: 'There is no band in this pattern yet.' };
  const { share, gaps } = coverage(pattern.sources, pattern);
  const gap = gaps[0];
  const source = pattern.sources.find(({ id }) => id === gap?.sourceId);
  return {
    name,
    value: `${Math.round(share * 100)} %`,
    means:
      gap && source
        ? `Share of the band’s strokes, by weight, that a hand strikes with. Missed most: ${sourceName(source)} on ${spokenTick(pattern, gap.at)}.`
        : 'The hands strike with everything that the band plays.',
  };
}

/** What can be said of a pattern in numbers. */
export function patternNumbers(pattern: Pattern): PatternNumber[] {
  return [
    syncopationNumber(pattern),
    densityNumber(pattern),
    leadingNumber(pattern),
    swingNumber(pattern),
    coverageNumber(pattern),
  ];
}
