import { describe, expect, it } from 'vitest';
import { parseChordSymbol } from '../../src/core/harmony/chordSymbol.ts';
import { formatMeter } from '../../src/core/time/meter.ts';
import { secondsAt } from '../../src/core/time/tempoMap.ts';
import type { HeardRecording } from '../../src/signal/heardRecording.ts';
import { recordedBand } from '../../src/signal/recordedBand.ts';
import { valueOf } from '../support/music.ts';

/** Nothing heard but beats at these times, the first at this position of its bar. */
function heardBeats(times: readonly number[], first = 0, beatsPerBar = 4): HeardRecording {
  return {
    tempoBpm: 120,
    tempi: [],
    beats: times.map((sec, i) => ({ sec, positionInBar: (first + i) % beatsPerBar })),
    beatsPerBar,
    beatConfidence: 1,
    onsets: [],
    drums: [],
    bass: [],
    picks: [],
    chords: [],
    key: undefined,
    sections: [],
  };
}

const EVEN = Array.from({ length: 17 }, (_, i) => 0.3 + i / 2);

describe('a recording as a band', () => {
  it('has its strokes on the beats they were heard on, in bars from the first downbeat on', () => {
    const heard = {
      ...heardBeats(EVEN),
      drums: EVEN.map((sec, i) => ({
        sec,
        piece: i % 2 ? ('snare' as const) : ('kick' as const),
        probability: 1,
        strength: 0.8,
      })),
      bass: [{ sec: 0.3, durationSec: 1, keyNumber: 36, strength: 1, probability: 1 }],
    };
    const band = recordedBand(heard)!;
    const [drums, bass] = band.tracks;
    const bar = band.bars.findIndex(({ startTick }) => startTick === bass!.notes[0]!.startTick);
    expect(bar).toBeGreaterThanOrEqual(0);
    expect(bass!.notes[0]).toMatchObject({ keyNumber: 36, durationTicks: 960, velocity: 127 });
    expect(drums!.notes.map(({ startTick }) => startTick - bass!.notes[0]!.startTick)).toEqual(
      EVEN.map((_, i) => 480 * i),
    );
    expect(band.tracks.map(({ guess }) => guess)).toEqual(['drums', 'bass']);
  });

  it('keeps the time of every beat, however the tempo drifts', () => {
    const drifting = [0, 0.5, 1.02, 1.57, 2.15, 2.76, 3.4, 4.07, 4.77];
    const heard = {
      ...heardBeats(drifting),
      drums: drifting.map((sec) => ({ sec, piece: 'kick' as const, strength: 1, probability: 1 })),
    };
    const band = recordedBand(heard)!;
    const ticks = band.tracks[0]!.notes.map(({ startTick }) => startTick);
    const zero = secondsAt(band.tempoMap, ticks[0]!);
    ticks.forEach((tick, i) =>
      expect(secondsAt(band.tempoMap, tick) - zero).toBeCloseTo(drifting[i]!, 9),
    );
  });

  it('puts an upbeat before the first downbeat, and gives a bar with a beat too many its own meter', () => {
    const positions = [2, 3, 0, 1, 2, 3, 0, 1, 2, 3, 4, 0, 1, 2, 3];
    const beats = positions.map((positionInBar, i) => ({ sec: 0.1 + i / 2, positionInBar }));
    const heard = {
      ...heardBeats([]),
      beats,
      drums: [{ sec: beats[2]!.sec, piece: 'kick' as const, strength: 1, probability: 1 }],
    };
    const band = recordedBand(heard)!;
    expect(band.bars.map(({ startTick }) => startTick)).toContain(
      band.tracks[0]!.notes[0]!.startTick,
    );
    expect(band.bars.map(({ meter }) => formatMeter(meter))).toContain('5/4');
  });

  it('holds the chords as a part that feeds no hand', () => {
    const chord = valueOf(parseChordSymbol('Am'));
    const heard = {
      ...heardBeats(EVEN),
      chords: [{ fromSec: 0.3, toSec: 2.3, chord, weight: 0.9, alternatives: [] }],
    };
    const [chords] = recordedBand(heard)!.tracks;
    expect(chords).toMatchObject({ name: 'Chords', guess: 'other' });
    expect(chords!.notes.map(({ keyNumber }) => keyNumber % 12)).toEqual([0, 4, 9]);
  });

  it('is not made up where no beat or nothing else was heard', () => {
    expect(recordedBand(heardBeats([]))).toBeUndefined();
    expect(recordedBand(heardBeats(EVEN))).toBeUndefined();
  });
});
