import { Voicing as TheoryVoicing, VoiceLeading } from 'tonal';
import { expect, it } from 'vitest';
import { keyNumberOf, type Letter, type Pitch } from '../../src/core/harmony/pitch.ts';
import { type ChordToVoice, candidateLayers } from '../../src/core/voicing/candidateLayers.ts';
import { stepsOf } from '../../src/core/voicing/course.ts';
import { motion } from '../../src/core/voicing/motion.ts';
import { voiceSection } from '../../src/core/voicing/voiceTimeline.ts';
import {
  DEFAULT_VOICING,
  heldKeys,
  MOTION_ONLY,
  type VoicingSettings,
} from '../../src/core/voicing/voicing.ts';
import { nearestWalk, rootPositionWalk, totalMotion } from '../../src/core/voicing/walks.ts';
import { valueOf } from '../support/music.ts';
import { seededRandom } from '../support/random.ts';
import { chordsToVoice } from '../support/voicings.ts';

const CHORDS = 400;
const ROOTS = ['C', 'Db', 'D', 'Eb', 'E', 'F', 'Gb', 'G', 'Ab', 'A', 'Bb', 'B'] as const;

const MOTION: VoicingSettings = { ...DEFAULT_VOICING, weights: MOTION_ONLY };

/** Close positions of the sevenths from the lowest interval up, as the theory library reads them. */
const CLOSE_SEVENTHS: Record<string, string[]> = {
  maj7: ['1P 3M 5P 7M', '3M 5P 7M 8P', '5P 7M 8P 10M', '7M 8P 10M 12P'],
  '7': ['1P 3M 5P 7m', '3M 5P 7m 8P', '5P 7m 8P 10M', '7m 8P 10M 12P'],
  m7: ['1P 3m 5P 7m', '3m 5P 7m 8P', '5P 7m 8P 10m', '7m 8P 10m 12P'],
  m7b5: ['1P 3m 5d 7m', '3m 5d 7m 8P', '5d 7m 8P 10m', '7m 8P 10m 12d'],
};

/** Turnarounds ii V I IV and minor ii V i, each in a key of its own. */
function jazzSong(): string[] {
  const random = seededRandom(1);
  return Array.from({ length: CHORDS / 4 }, () => {
    const tonic = random.index(12);
    const on = (semitones: number) => ROOTS[(tonic + semitones) % 12]!;
    return random.uniform() < 0.5
      ? [`${on(2)}m7`, `${on(7)}7`, `${on(0)}maj7`, `${on(5)}maj7`]
      : [`${on(2)}m7b5`, `${on(7)}7`, `${on(0)}m7`, `${on(5)}m7`];
  }).flat();
}

/** Any seventh after any other. */
function randomSong(): string[] {
  const random = seededRandom(2);
  const kinds = Object.keys(CLOSE_SEVENTHS);
  return Array.from(
    { length: CHORDS },
    () => ROOTS[random.index(12)]! + kinds[random.index(kinds.length)]!,
  );
}

/** A greedy walk by the theory library: each chord the close position whose top note is nearest to the last. */
function libraryWalk(symbols: readonly string[]): string[][] {
  return TheoryVoicing.sequence(
    [...symbols],
    ['G3', 'G5'],
    CLOSE_SEVENTHS,
    VoiceLeading.topNoteDiff,
  );
}

function keyNumberOfName(name: string): number {
  const [, letter, signs, octave] = /^([A-G])([b#]*)(\d)$/.exec(name)!;
  const alteration = signs!.startsWith('b') ? -signs!.length : signs!.length;
  const pitch: Pitch = { letter: letter as Letter, alteration, octave: Number(octave) };
  return keyNumberOf(pitch);
}

function loopMotion(hands: readonly (readonly number[])[]): number {
  return stepsOf(hands, 'loop').reduce((total, [from, to]) => total + motion(from, to), 0);
}

/** What no voicing can be below: the cheapest step of every transition, the way back included. */
function lowerBound(chords: readonly ChordToVoice[]): number {
  const hands = candidateLayers(chords, MOTION).map((layer) => layer.map(({ right }) => right));
  return stepsOf(hands, 'loop').reduce(
    (total, [from, to]) => total + Math.min(...from.flatMap((a) => to.map((b) => motion(a, b)))),
    0,
  );
}

/** Median time of 15 runs after 5 that warm up, in milliseconds. */
function medianMs(run: () => unknown): number {
  const times = Array.from({ length: 20 }, () => {
    const start = performance.now();
    run();
    return performance.now() - start;
  });
  return times.slice(5).toSorted((a, b) => a - b)[7]!;
}

const percent = (part: number, whole: number) => `${((100 * part) / whole).toFixed(1)} %`;

it.each([
  ['turnarounds in any key', jazzSong()],
  ['sevenths at random', randomSong()],
])('400 chords, closed: %s', (name, symbols) => {
  const chords = chordsToVoice(symbols.join(' '));
  const start = performance.now();
  const voiced = valueOf(voiceSection(chords, MOTION, 'loop'));
  const firstMs = performance.now() - start;
  const weighed = valueOf(voiceSection(chords, DEFAULT_VOICING, 'loop'));
  const least = totalMotion(voiced, 'loop');
  const library = loopMotion(libraryWalk(symbols).map((hand) => hand.map(keyNumberOfName)));
  const bound = lowerBound(chords);
  const ours = medianMs(() => voiceSection(chords, MOTION, 'loop'));
  const withAllTerms = medianMs(() => voiceSection(chords, DEFAULT_VOICING, 'loop'));
  const theirs = medianMs(() => libraryWalk(symbols));
  console.log(
    [
      `voicing, ${CHORDS} chords, closed: ${name}`,
      `  least motion                 ${least} semitones, ${(least / CHORDS).toFixed(2)} a chord`,
      `  of the lower bound           ${percent(least, bound)} (cheapest step of every transition: ${bound})`,
      `  of the library's greedy walk ${percent(least, library)} (nearest top note: ${library})`,
      `  of our greedy walk           ${percent(least, totalMotion(nearestWalk(chords, MOTION)!, 'loop'))}`,
      `  of root position             ${percent(least, totalMotion(rootPositionWalk(chords, MOTION)!, 'loop'))}`,
      `  with all terms weighed       ${totalMotion(weighed, 'loop')} semitones`,
      `  time, motion alone           ${ours.toFixed(1)} ms, ${((1000 * ours) / CHORDS).toFixed(0)} µs a chord, ${percent(ours, theirs)} of the library's walk`,
      `  time, first run              ${firstMs.toFixed(1)} ms`,
      `  time, all terms              ${withAllTerms.toFixed(1)} ms, ${((1000 * withAllTerms) / CHORDS).toFixed(0)} µs a chord`,
    ].join('\n'),
  );
  expect(voiced.every((voicing) => heldKeys(voicing).right.length === 4)).toBe(true);
  expect(least).toBeGreaterThanOrEqual(bound);
  expect(least).toBeLessThanOrEqual(library);
});
