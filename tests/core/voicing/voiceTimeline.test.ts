import * as fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import type { Chord } from '../../../src/core/harmony/chord.ts';
import { chromaOf, type PitchClass } from '../../../src/core/harmony/pitch.ts';
import { drillTimeline } from '../../../src/core/practice/drill.ts';
import { timelineOf } from '../../../src/core/song/timeline.ts';
import type { ChordToVoice } from '../../../src/core/voicing/candidateLayers.ts';
import { voicingCandidates, voicingOfKeys } from '../../../src/core/voicing/candidates.ts';
import type { VoicingCourse } from '../../../src/core/voicing/course.ts';
import {
  voiceSection,
  voiceTimeline,
  voicingCost,
} from '../../../src/core/voicing/voiceTimeline.ts';
import {
  DEFAULT_VOICING,
  heldKeys,
  MOTION_ONLY,
  type Voicing,
  type VoicingSettings,
  type VoicingWeights,
} from '../../../src/core/voicing/voicing.ts';
import { nearestWalk, rootPositionWalk, totalMotion } from '../../../src/core/voicing/walks.ts';
import { anyChord, ROOTS } from '../../support/chords.ts';
import {
  chord,
  errorOf,
  meter,
  otherEnding,
  section,
  slots,
  song,
  valueOf,
  withEndings,
} from '../../support/music.ts';
import { cheapestWays, chordsToVoice, handsText, pinned } from '../../support/voicings.ts';

const COURSES = ['path', 'loop'] as const satisfies readonly VoicingCourse[];

/** Weights in 64ths, so that sums are exact and a search finds the very same total. */
const anyWeight = () => fc.integer({ min: 0, max: 128 }).map((n) => n / 64);

const anyWeights = (): fc.Arbitrary<VoicingWeights> =>
  fc.record({
    motion: anyWeight(),
    topLeap: anyWeight(),
    leftLeap: anyWeight(),
    register: anyWeight(),
    lowIntervals: anyWeight(),
    handGap: anyWeight(),
  });

/** Settings that leave every chord a handful of candidates. */
const narrowSettings = (): fc.Arbitrary<VoicingSettings> =>
  fc.record({
    manner: fc.constantFrom('close', 'open', 'shell', 'rootless'),
    bass: fc.constantFrom('single', 'octave', 'fifth', 'tenth', 'elsewhere'),
    fullness: fc.constantFrom(3, 4, 5),
    spanSemitones: fc.constantFrom(12, 14, 16),
    rightLowest: fc.integer({ min: 54, max: 60 }),
    rightHighest: fc.integer({ min: 72, max: 76 }),
    leftLowest: fc.integer({ min: 34, max: 40 }),
    leftHighest: fc.integer({ min: 46, max: 52 }),
    weights: anyWeights(),
  });

const anyKeys = (lowest: number, size: number) =>
  fc
    .uniqueArray(fc.integer({ min: lowest, max: lowest + 14 }), { maxLength: size })
    .map((keys) => keys.toSorted((a, b) => a - b));

/** A chord, now and then N.C., now and then pinned to any keys. */
const anyChordToVoice = (): fc.Arbitrary<ChordToVoice> =>
  fc.oneof(
    { weight: 12, arbitrary: fc.record({ chord: anyChord() }) },
    { weight: 1, arbitrary: fc.constant({ chord: 'no-chord' } as const) },
    {
      weight: 2,
      arbitrary: fc.record({
        chord: anyChord(),
        fixedKeys: fc.record({ left: anyKeys(36, 2), right: anyKeys(56, 4) }),
      }),
    },
  );

const progressions = () => fc.array(anyChordToVoice(), { minLength: 2, maxLength: 4, size: 'max' });

/** Everything that may be chosen for each chord. */
function choices(chords: readonly ChordToVoice[], settings: VoicingSettings): Voicing[][] {
  return chords.map(({ chord: name, fixedKeys }) =>
    fixedKeys ? [voicingOfKeys(name, fixedKeys)] : voicingCandidates(name, settings),
  );
}

describe('voiceSection', () => {
  it(
    'costs what the best of all ways costs, and is the first of these, with and without pins',
    () =>
      fc.assert(
        fc.property(
          progressions(),
          narrowSettings(),
          fc.constantFrom(...COURSES),
          (chords, settings, course) => {
            const layers = choices(chords, settings);
            fc.pre(layers.every((layer) => layer.length > 0));
            const voiced = valueOf(voiceSection(chords, settings, course));
            const { ways, cost } = cheapestWays(layers, (way) =>
              voicingCost(way, settings, course),
            );
            expect(voicingCost(voiced, settings, course)).toBe(cost);
            expect(voiced).toEqual(ways[0]);
          },
        ),
        { numRuns: 500 },
      ),
    30_000,
  );

  it('never costs more than root position or than the nearest inversions, nor moves more when motion counts alone', () =>
    fc.assert(
      fc.property(
        fc.array(anyChordToVoice(), { minLength: 1, maxLength: 12 }),
        anyWeights(),
        fc.constantFrom(...COURSES),
        (chords, weights, course) => {
          for (const settings of [
            { ...DEFAULT_VOICING, weights },
            { ...DEFAULT_VOICING, weights: MOTION_ONLY },
          ]) {
            const voiced = valueOf(voiceSection(chords, settings, course));
            for (const walk of [rootPositionWalk(chords, settings), nearestWalk(chords, settings)])
              expect(voicingCost(voiced, settings, course)).toBeLessThanOrEqual(
                voicingCost(walk!, settings, course),
              );
            if (settings.weights === MOTION_ONLY)
              expect(voicingCost(voiced, settings, course)).toBe(totalMotion(voiced, course));
          }
        },
      ),
      { numRuns: 60 },
    ));

  it('moves with the chords when everything is transposed', () =>
    fc.assert(
      fc.property(
        fc.array(anyChord(), { minLength: 1, maxLength: 5 }),
        narrowSettings(),
        fc.integer({ min: -6, max: 6 }),
        fc.constantFrom(...COURSES),
        (chords, parts, by, course) => {
          // Low-interval limits are pitches of their own and do not move along.
          const settings = { ...parts, weights: { ...parts.weights, lowIntervals: 0 } };
          const here = voiceSection(
            chords.map((name) => ({ chord: name })),
            settings,
            course,
          );
          const there = voiceSection(
            chords.map((name) => ({ chord: chordUp(name, by) })),
            settingsUp(settings, by),
            course,
          );
          expect(there).toEqual(
            here.ok ? { ok: true, value: here.value.map((v) => voicingUp(v, by)) } : here,
          );
        },
      ),
      { numRuns: 100 },
    ));

  it('gives N.C. nothing, and moves from the chord before it to the chord after', () => {
    const [c, rest, g] = valueOf(voiceSection(chordsToVoice('C N.C. G'), DEFAULT_VOICING, 'loop'));
    expect(rest).toEqual([]);
    expect([c, g]).toEqual(valueOf(voiceSection(chordsToVoice('C G'), DEFAULT_VOICING, 'loop')));
    expect(voicingCost([c!, [], g!], DEFAULT_VOICING, 'loop')).toBe(
      voicingCost([c!, g!], DEFAULT_VOICING, 'loop'),
    );
  });

  it('is empty for no chords, and all empty for N.C. alone', () => {
    expect(valueOf(voiceSection([], DEFAULT_VOICING, 'loop'))).toEqual([]);
    expect(valueOf(voiceSection(chordsToVoice('N.C. N.C.'), DEFAULT_VOICING, 'loop'))).toEqual([
      [],
      [],
    ]);
    expect(voicingCost([[], []], DEFAULT_VOICING, 'loop')).toBe(0);
  });

  it('keeps pinned hands and leads the others to them', () => {
    const [c, f] = chordsToVoice('C F');
    const [before, after] = valueOf(
      voiceSection([pinned(c!, [24], [72, 76, 79]), f!], DEFAULT_VOICING, 'loop'),
    );
    expect(handsText(before!)).toBe('24 | 72 76 79');
    expect(heldKeys(after!).right).toEqual([69, 72, 77]);
  });

  it('names the first chord that cannot be played', () => {
    const settings = { ...DEFAULT_VOICING, leftLowest: 36, leftHighest: 40 };
    expect(errorOf(voiceSection(chordsToVoice('C N.C. D G A'), settings, 'path'))).toEqual({
      kind: 'nothing-playable',
      place: 3,
    });
  });
});

describe('voicingCost', () => {
  // computed by hand from the definitions of the terms
  const settings: VoicingSettings = { ...DEFAULT_VOICING };
  const only = (term: keyof VoicingWeights): VoicingSettings => ({
    ...settings,
    weights: { ...MOTION_ONLY, motion: 0, [term]: 1 },
  });
  const c = voicingOfKeys(chord('C'), { left: [36], right: [60, 64, 67] });
  const g = voicingOfKeys(chord('G'), { left: [31, 38], right: [59, 62, 67] });
  const high = voicingOfKeys(chord('C'), { left: [36, 72], right: [67, 72, 76] });

  it.each([
    ['motion', [c, g], 'path', 3],
    ['motion', [c, g], 'loop', 6],
    ['motion', [c], 'loop', 0],
    ['topLeap', [c, g, high], 'path', 0 + 9],
    ['leftLeap', [c, g, high], 'path', 5 + 5],
    // right hands around 63.5 and 63 in a range around 67; left hands at 36 and 34.5 in one around 40
    ['register', [c, g], 'path', 3.5 + 4 + 4 + 5.5],
    // G1–D2 lies 6 under the limit of the fifth, C♯2
    ['lowIntervals', [c, g], 'path', 6],
    // the hands of C are two octaves apart, those of G 21; the last cross by 72 − 67 + 1
    ['handGap', [c, g], 'path', 0],
    ['handGap', [high], 'path', 6],
  ] as const)('counts %s', (term, voicings, course, cost) =>
    expect(voicingCost(voicings, only(term), course)).toBe(cost),
  );

  it('counts what exceeds two octaves between the hands', () => {
    const wide = voicingOfKeys(chord('C'), { left: [36], right: [64, 67, 72] });
    expect(voicingCost([wide], only('handGap'), 'path')).toBe(4);
  });

  it('adds the terms up, each times its weight', () => {
    const weights = {
      motion: 1,
      topLeap: 2,
      leftLeap: 3,
      register: 4,
      lowIntervals: 5,
      handGap: 6,
    };
    const terms = Object.keys(weights) as (keyof VoicingWeights)[];
    const sum = terms.reduce(
      (total, term) => total + weights[term] * voicingCost([c, g, high], only(term), 'loop'),
      0,
    );
    expect(voicingCost([c, g, high], { ...settings, weights }, 'loop')).toBe(sum);
  });
});

describe('voiceTimeline', () => {
  const verse = section('verse', { slots: slots('| C | Am | F | G |') });
  const chorus = section('chorus', { slots: slots('| F N.C. | C/E | Dm7 | G7sus4 G7 |') });
  const timeline = timelineOf(song([verse, chorus], 'verse chorus verse chorus chorus'));

  it('has one voicing for every chord span, and none sounding at N.C.', () => {
    const voicings = valueOf(voiceTimeline(timeline, DEFAULT_VOICING));
    expect(voicings.length).toBe(timeline.chords.length);
    timeline.chords.forEach((span, i) =>
      expect(voicings[i]!.length === 0).toBe(span.chord === 'no-chord'),
    );
  });

  it('voices each section as a loop of its own, with the same hands at every return', () => {
    const voicings = valueOf(voiceTimeline(timeline, DEFAULT_VOICING));
    timeline.sections.forEach(({ sectionId }, place) => {
      const here = voicings.filter((_, i) => timeline.chords[i]!.section === place);
      const written = sectionId === 'verse' ? verse : chorus;
      expect(here).toEqual(valueOf(voiceSection(written.slots, DEFAULT_VOICING, 'loop')));
    });
  });

  it('leaves the hands of a section alone when another section changes', () => {
    const other = section('chorus', { slots: slots('| E7 | B♭ |') });
    const changed = timelineOf(song([verse, other], 'verse chorus'));
    expect(valueOf(voiceTimeline(changed, DEFAULT_VOICING)).slice(0, 4)).toEqual(
      valueOf(voiceTimeline(timeline, DEFAULT_VOICING)).slice(0, 4),
    );
  });

  it('keeps the keys that are fixed in the chart', () => {
    const [first, ...others] = slots('| C | Am | F | G |');
    const fixed = { ...first!, fixedKeys: { left: [40], right: [72, 76, 79] } };
    const pinnedVerse = section('verse', { slots: [fixed, ...others] });
    const voicings = valueOf(
      voiceTimeline(timelineOf(song([pinnedVerse], 'verse verse')), DEFAULT_VOICING),
    );
    expect(voicings.map(handsText).filter((text) => text === '40 | 72 76 79').length).toBe(2);
  });

  it('names the span that nobody can play', () => {
    const settings = { ...DEFAULT_VOICING, leftLowest: 36, leftHighest: 41 };
    expect(errorOf(voiceTimeline(timeline, settings))).toEqual({
      kind: 'nothing-playable',
      span: timeline.chords[1],
    });
  });

  it('keeps the hands of a section where a return has another ending', () => {
    const plain = timelineOf(song([verse], 'verse verse'));
    const whole = song([verse], 'verse verse verse');
    const ended = timelineOf(withEndings(whole, { 1: otherEnding(2, '| E7 | Am | B♭ |') }));
    const own = valueOf(voiceTimeline(plain, DEFAULT_VOICING)).slice(0, 4);
    const hands = valueOf(voiceTimeline(ended, DEFAULT_VOICING));
    expect(hands.filter((_, i) => !ended.chords[i]!.inEnding)).toEqual([
      ...own,
      ...own.slice(0, 2),
      ...own,
    ]);
  });

  it('finds for an ending the best of all ways from the hands before it to those after it', () => {
    const coda = section('coda', { slots: slots('| N.C. | Dm7 |') });
    const whole = song([verse, coda], 'verse coda');
    const ended = timelineOf(withEndings(whole, { 0: otherEnding(1, '| E7 | B♭ |') }));
    const hands = valueOf(voiceTimeline(ended, DEFAULT_VOICING));
    const ways = choices(
      ended.chords.map(({ chord: name, inEnding }, i) =>
        inEnding ? { chord: name } : { chord: name, fixedKeys: heldKeys(hands[i]!) },
      ),
      DEFAULT_VOICING,
    );
    const { cost } = cheapestWays(ways, (way) => voicingCost(way, DEFAULT_VOICING, 'path'));
    expect(voicingCost(hands, DEFAULT_VOICING, 'path')).toBe(cost);
  });

  it('voices endings that are all a playing plays, even one after the other', () => {
    const whole = song([verse], 'verse verse');
    const ended = withEndings(whole, {
      0: otherEnding(9, '| E7 |'),
      1: otherEnding(9, '| N.C. | Am |'),
    });
    const hands = valueOf(voiceTimeline(timelineOf(ended), DEFAULT_VOICING));
    const alone = valueOf(voiceSection(chordsToVoice('E7 N.C. Am'), DEFAULT_VOICING, 'path'));
    expect(hands).toEqual(alone);
  });

  it('keeps the keys that are fixed in an ending', () => {
    const last = otherEnding(1, '| C |');
    const fixedKeys = { left: [40], right: [72, 76, 79] };
    const fixed = { ...last, slots: last.slots.map((slot) => ({ ...slot, fixedKeys })) };
    const ended = timelineOf(withEndings(song([verse], 'verse'), { 0: fixed }));
    expect(handsText(valueOf(voiceTimeline(ended, DEFAULT_VOICING)).at(-1)!)).toBe('40 | 72 76 79');
  });

  it('gives the same voicings every time', () =>
    expect(voiceTimeline(timeline, DEFAULT_VOICING)).toEqual(
      voiceTimeline(timeline, DEFAULT_VOICING),
    ));

  it('voices a one-chord drill and a song without music', () => {
    // the inversion whose middle is nearest to G4, and the A nearest to E2
    const drill = drillTimeline(chord('Am7'), meter('4/4'), 2);
    expect(valueOf(voiceTimeline(drill, DEFAULT_VOICING)).map(handsText)).toEqual([
      '45 | 64 67 69 72',
    ]);
    expect(valueOf(voiceTimeline(timelineOf(song([], '')), DEFAULT_VOICING))).toEqual([]);
  });
});

function chordUp(name: Chord, by: number): Chord {
  const root = pitchClassUp(name.root, by);
  return name.bass ? { ...name, root, bass: pitchClassUp(name.bass, by) } : { ...name, root };
}

function pitchClassUp(pitchClass: PitchClass, by: number): PitchClass {
  return ROOTS.find((root) => chromaOf(root) === (chromaOf(pitchClass) + by + 12) % 12)!;
}

function settingsUp(settings: VoicingSettings, by: number): VoicingSettings {
  return {
    ...settings,
    rightLowest: settings.rightLowest + by,
    rightHighest: settings.rightHighest + by,
    leftLowest: settings.leftLowest + by,
    leftHighest: settings.leftHighest + by,
  };
}

function voicingUp(voicing: Voicing, by: number): Voicing {
  return voicing.map((note) => ({ ...note, keyNumber: note.keyNumber + by }));
}
