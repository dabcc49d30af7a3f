import { coverage, density, leadingHand, syncopation } from '../../core/rhythm/measures.ts';
import type { Pattern } from '../../core/rhythm/pattern.ts';
import { sourceName } from '../patternGrid/sourceNames.ts';
import { swingWords } from '../patternGrid/swingWords.ts';
import { spokenTick } from './spokenTick.ts';

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
  const perBeat = (hits: Pattern['left'] | Pattern['right']) =>
    Number(density(hits, pattern).toFixed(2));
  return {
    name: 'Density',
    value: String(perBeat(pattern.left) + perBeat(pattern.right)),
    means: `Strikes to a beat: ${perBeat(pattern.right)} in the right hand, ${perBeat(pattern.left)} in the left.`,
  };
}

const LEADERS = {
  left: 'The left hand strikes more often; listen to it first.',
  right: 'The right hand strikes more often; listen to it first.',
  both: 'Both hands strike equally often.',
} as const;

function leadingNumber(pattern: Pattern): PatternNumber {
  const leader = leadingHand(pattern);
  const { left, right } = pattern;
  return {
    name: 'Leading hand',
    value: leader,
    means: `${LEADERS[leader]} ${right.length} to ${left.length}.`,
  };
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
