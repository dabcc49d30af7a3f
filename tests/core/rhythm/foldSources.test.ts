import { expect, it } from 'vitest';
import { foldStrokes } from '../../../src/core/rhythm/fold.ts';
import { foldSources, grooveOf } from '../../../src/core/rhythm/foldSources.ts';
import { meter } from '../../support/music.ts';

const BEATS = Array.from({ length: 17 }, (_, i) => i * 480);

/** Beats 1 and 3 in each of four bars, and a step on beat 4 in some of them. */
function heard(fourths: readonly number[], length?: number) {
  const steady = [0, 1, 2, 3].flatMap((bar) => [bar * 1920, bar * 1920 + 960]);
  return [...steady, ...fourths.map((bar) => bar * 1920 + 1440)].map((at) => ({
    at,
    strength: 0.5,
    source: 'kick',
    ...(length === undefined ? {} : { length }),
  }));
}

function sources(fourths: readonly number[], leastPresence?: number) {
  const fold = foldStrokes(heard(fourths), BEATS, meter('4/4'), { period: 1 });
  return foldSources(fold, [], leastPresence);
}

it('keeps what half of the bars play', () => {
  expect(sources([0, 2])[0]?.strokes.map((s) => s.at)).toEqual([0, 960, 1440]);
  expect(sources([2])[0]?.strokes.map((s) => s.at)).toEqual([0, 960]);
});

it('keeps rarer strokes where asked, with how often they are played', () => {
  expect(sources([2], 0.2)[0]?.strokes.map((s) => s.presence)).toEqual([1, 1, 0.25]);
});

it('lets a stroke of unknown length last to the next, for a beat at most, round the end', () => {
  expect(sources([0, 1, 2, 3])[0]?.strokes.map((s) => s.length)).toEqual([480, 480, 480]);
});

it('cuts a known length at the next stroke', () => {
  const fold = foldStrokes(heard([], 1500), BEATS, meter('4/4'));
  expect(foldSources(fold)[0]?.strokes.map((s) => s.length)).toEqual([960, 960]);
});

it('takes the part from the id where nothing else says it, and names from those given', () => {
  expect(sources([])[0]).toMatchObject({ id: 'kick', name: 'kick', part: 'kick' });
  const fold = foldStrokes(heard([]), BEATS, meter('4/4'));
  const named = [{ id: 'kick', name: 'Surdo', part: 'percussion' as const }];
  expect(grooveOf(fold, named)).toMatchObject({
    bars: 1,
    divisions: [1, 1, 1, 1],
    sources: [{ id: 'kick', name: 'Surdo', part: 'percussion' }],
  });
});

it('raises a soft band until its strongest stroke is forte, all strokes alike; a loud one stays', () => {
  const strengthsOf = (strong: number) => {
    const strokes = heard([]).map((stroke) => ({
      ...stroke,
      strength: stroke.at % 1920 === 0 ? strong : strong / 2,
    }));
    const { sources: found } = grooveOf(foldStrokes(strokes, BEATS, meter('4/4')));
    return found[0]?.strokes.map((stroke) => Math.round(127 * stroke.strength));
  };
  // MIDI velocity 96 for forte: common practice.
  expect(strengthsOf(0.4)).toEqual([96, 48]);
  expect(strengthsOf(1)).toEqual([127, 64]);
});
