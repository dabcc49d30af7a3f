import { describe, expect, it } from 'vitest';
import { beatEvidence } from '../../src/signal/beatEvidence.ts';
import { beatsFrom, findBeats, type RecordedBeats } from '../../src/signal/beats.ts';
import { beatAgreement, madeBand, PLAIN_FOUR, steadyBeats } from '../support/clickBands.ts';

const secsOf = ({ beats }: RecordedBeats) => beats.map(({ sec }) => sec);
const downbeatsOf = ({ beats }: RecordedBeats) =>
  beats.flatMap(({ sec, positionInBar }) => (positionInBar === 0 ? [sec] : []));
const everyNth = (beats: readonly number[], n: number) => beats.filter((_, k) => k % n === 0);

it.each([72, 97, 120, 138])('finds beats and bars of a plain song at %i bpm', (bpm) => {
  const beats = steadyBeats(bpm, 20, 0.3);
  const found = findBeats(madeBand({ ...PLAIN_FOUR, beats, lengthSec: 20 }));
  expect(beatAgreement(beats, secsOf(found))).toBeGreaterThan(0.95);
  expect(found.tempoBpm).toBeCloseTo(bpm, 0);
  expect(found.beatsPerBar).toBe(4);
  expect(beatAgreement(everyNth(beats, 4), downbeatsOf(found))).toBeGreaterThan(0.9);
});

it('puts the beats of a steady band where they are played', () => {
  const beats = steadyBeats(104, 20, 0.5);
  const found = secsOf(findBeats(madeBand({ ...PLAIN_FOUR, beats, lengthSec: 20 })));
  const off = beats.map((beat) => Math.min(...found.map((sec) => Math.abs(sec - beat))));
  expect(Math.max(...off.slice(1, -1))).toBeLessThan(0.015);
});

it.each([44100, 48000, 96000])('hears the same at %i Hz', (sampleRateHz) => {
  const beats = steadyBeats(110, 15);
  const found = findBeats(madeBand({ ...PLAIN_FOUR, beats, lengthSec: 15, sampleRateHz }));
  expect(beatAgreement(beats.slice(1), secsOf(found))).toBeGreaterThan(0.95);
});

it('follows a band that slows down by a fifth', () => {
  const beats = [0.2];
  while (beats.at(-1)! < 24) beats.push(beats.at(-1)! + 0.5 * (1 + (0.25 * beats.at(-1)!) / 25));
  const found = secsOf(findBeats(madeBand({ ...PLAIN_FOUR, beats, lengthSec: 25 })));
  expect(beatAgreement(beats, found)).toBeGreaterThan(0.9);
});

it('goes on after three seconds of silence', () => {
  const beats = [...steadyBeats(120, 12), ...steadyBeats(120, 27, 15.2)];
  const found = secsOf(findBeats(madeBand({ ...PLAIN_FOUR, beats, lengthSec: 27 })));
  const later = (secs: readonly number[]) => secs.filter((sec) => sec > 17);
  expect(beatAgreement(later(beats), later(found))).toBeGreaterThan(0.9);
});

it('finds the downbeat where a recording starts within a bar', () => {
  const beats = steadyBeats(100, 21.2, 0);
  const { samples, sampleRateHz } = madeBand({ ...PLAIN_FOUR, beats, lengthSec: 21.2 });
  const cut = Math.round(1.25 * sampleRateHz);
  const found = findBeats({ samples: samples.slice(cut), sampleRateHz });
  const expected = everyNth(beats, 4)
    .map((sec) => sec - 1.25)
    .filter((sec) => sec > 0);
  expect(beatAgreement(expected, downbeatsOf(found))).toBeGreaterThan(0.9);
});

it('hears a waltz in three', () => {
  const parts = { kick: 'x.....', snare: '..x.x.', hat: 'x.x.x.', bass: 'x.....', chord: '..x.x.' };
  const beats = steadyBeats(132, 20, 0.2);
  const found = findBeats(
    madeBand({ parts, beatsPerBar: 3, stepsPerBeat: 2, beats, lengthSec: 20 }),
  );
  expect(found.beatsPerBar).toBe(3);
  expect(beatAgreement(everyNth(beats, 3), downbeatsOf(found))).toBeGreaterThan(0.9);
});

describe('where there is nothing to count', () => {
  const nothing = { tempoBpm: 0, tempi: [], beats: [], beatsPerBar: 0, confidence: 0 };

  it.each([0, 1, 100, 22050 * 10])('says so of %i samples of silence', (length) => {
    expect(findBeats({ samples: new Float32Array(length), sampleRateHz: 22050 })).toEqual(nothing);
  });

  it('says so of one click', () => {
    const samples = new Float32Array(22050);
    samples[9000] = 1;
    expect(findBeats({ samples, sampleRateHz: 22050 })).toEqual(nothing);
  });
});

describe('what the player puts right', () => {
  const beats = steadyBeats(96, 20, 0.2);
  const evidence = beatEvidence(madeBand({ ...PLAIN_FOUR, beats, lengthSec: 20 }));
  const heard = beatsFrom(evidence);

  it('is the same as heard where nothing is put right', () => {
    expect(beatsFrom(evidence, [])).toEqual(heard);
  });

  it('counts bars from the beat that is the one', () => {
    const atSec = beats[6]! + 0.05;
    const found = beatsFrom(evidence, [{ kind: 'downbeat', atSec }]);
    expect(beatAgreement(everyNth(beats.slice(2), 4), downbeatsOf(found))).toBeGreaterThan(0.9);
  });

  it('goes twice as fast, and half as fast', () => {
    const twice = beatsFrom(evidence, [{ kind: 'twice-as-fast', atSec: 3 }]);
    expect(twice.tempoBpm).toBeCloseTo(192, 0);
    const half = beatsFrom(evidence, [{ kind: 'half-as-fast', atSec: 3 }]);
    expect(half.tempoBpm).toBeCloseTo(48, 0);
    const back = beatsFrom(evidence, [
      { kind: 'twice-as-fast', atSec: 3 },
      { kind: 'half-as-fast', atSec: 3 },
    ]);
    expect(beatAgreement(beats, secsOf(back))).toBeGreaterThan(0.95);
  });

  it('lies between the beats that were heard', () => {
    const off = secsOf(beatsFrom(evidence, [{ kind: 'off-beat', atSec: 3 }]));
    const halfway = beats.map((sec) => sec + 30 / 96);
    expect(beatAgreement(halfway, off)).toBeGreaterThan(0.9);
  });

  it('has as many beats in a bar as is said', () => {
    const found = beatsFrom(evidence, [
      { kind: 'bar-length', atSec: 3, beats: 3 },
      { kind: 'downbeat', atSec: beats[1]! },
    ]);
    expect(found.beatsPerBar).toBe(3);
    expect(beatAgreement(everyNth(beats.slice(1), 3), downbeatsOf(found))).toBeGreaterThan(0.9);
  });

  it('takes the level that somebody tapped', () => {
    const taps = everyNth(beats, 2)
      .slice(2, 8)
      .map((sec) => sec + 0.02);
    const found = beatsFrom(evidence, [{ kind: 'taps', atSec: taps[0]!, taps }]);
    expect(found.tempoBpm).toBeCloseTo(48, 0);
  });

  it('has a beat exactly where it was dragged, and the others where they were', () => {
    const toSec = beats[8]! + 0.045;
    const found = secsOf(beatsFrom(evidence, [{ kind: 'moved-beat', atSec: beats[8]!, toSec }]));
    expect(found).toContain(toSec);
    expect(beatAgreement(beats, found)).toBeGreaterThan(0.95);
  });

  it('leaves the beats where they are when only the one is another', () => {
    const found = beatsFrom(evidence, [{ kind: 'downbeat', atSec: beats[6]! }]);
    expect(secsOf(found)).toEqual(secsOf(heard));
  });

  it('begins anew where the tempo is another one', () => {
    const two = [...steadyBeats(96, 14, 0.2), ...steadyBeats(141, 30, 14.4)];
    const both = beatEvidence(madeBand({ ...PLAIN_FOUR, beats: two, lengthSec: 30 }));
    const found = secsOf(beatsFrom(both, [{ kind: 'anew', atSec: 14.2 }]));
    expect(beatAgreement(two, found)).toBeGreaterThan(0.9);
  });
});
