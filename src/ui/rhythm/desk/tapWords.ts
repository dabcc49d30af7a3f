import { unreachable } from '../../../core/result.ts';
import { swingWords } from '../../parts/pattern/swingWords.ts';
import type { TapProblem, TapResult } from './tapResult.ts';

/** Smaller lateness than this nobody hears. */
const HEARD_MS = 8;

function latenessWords(latencySec: number): string {
  const ms = Math.round(latencySec * 1000);
  if (Math.abs(ms) < HEARD_MS) return 'on the click';
  return `${Math.abs(ms)} ms ${ms > 0 ? 'behind' : 'ahead of'} the click, which is taken off`;
}

/** What taps came to, in a sentence or two: bars, tempo or lateness, evenness, swing. */
export function tapWords(result: TapResult): string {
  const { barsTapped, barsAgreeing, latencySec, spreadSec, groove, manner, bpm } = result;
  const agree = barsTapped === 1 ? 'one bar' : `${barsAgreeing} of ${barsTapped} bars play it`;
  const tempo =
    manner === 'click' ? latenessWords(latencySec) : `at ${Math.round(bpm)} beats a minute`;
  const swing = swingWords(groove.swing.ratio);
  return [
    `${agree}, ${tempo}`,
    `even to about ${Math.round(spreadSec * 1000)} ms`,
    ...(swing === 'straight' ? [] : [`swung: ${swing}`]),
  ].join('; ');
}

/** Why taps give no rhythm, and what to do. */
export function tapProblemSentence(problem: TapProblem): string {
  switch (problem.kind) {
    case 'too-few':
      return problem.taps === 0
        ? 'Nothing was tapped. Tap the pads, the keys F and J, or a MIDI keyboard.'
        : 'One tap is no rhythm yet. Tap the figure again and again, for a bar or more.';
    case 'never-again':
      return 'The taps do not come round again, so there is no tempo in them. Tap the figure at least twice, or tap to the click.';
    case 'nothing-in-common':
      return 'The bars have nothing in common. Tap the same figure for a few bars.';
    default:
      return unreachable(problem);
  }
}
