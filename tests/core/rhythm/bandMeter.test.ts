import { describe, expect, it } from 'vitest';
import { crossedOne, oneEvidence, rebarred } from '../../../src/core/rhythm/bandMeter.ts';
import { bandNote, bandOf, bandTrack, times } from '../../support/bands.ts';
import { meter } from '../../support/music.ts';

/** Bass notes on new roots every bar and a kick with them, so many beats after the file's bar lines. */
function offBy(beats: number, bars = 8) {
  const at = (bar: number) => 480 * (4 * bar + beats);
  const bass = Array.from({ length: bars }, (_, i) => bandNote(36 + ((5 * i) % 12), at(i), 1800));
  const kick = Array.from({ length: bars }, (_, i) => bandNote(36, at(i)));
  return bandOf([bandTrack(bass, 'bass'), bandTrack(kick, 'drums')], times(bars + 1));
}

const ROLES = ['bass', 'drums'] as const;

describe('what speaks for the one', () => {
  it('is on the first beat where the bar lines are right', () => {
    const evidence = oneEvidence(offBy(0), ROLES, meter('4/4'));
    expect(evidence[0]).toBeGreaterThan(0.9);
    expect(crossedOne(evidence)).toBeUndefined();
  });

  it('tells on which beat the music begins its bars where it crosses them', () =>
    expect(crossedOne(oneEvidence(offBy(2), ROLES, meter('4/4')))).toBe(2));

  it('is alike for all beats where nothing speaks', () =>
    expect(oneEvidence(offBy(0, 0), ROLES, meter('3/4'))).toEqual([1 / 3, 1 / 3, 1 / 3]));
});

describe('bars put right', () => {
  it('begin where the one is said to be, with what came before kept in a bar of its own', () => {
    const band = offBy(1);
    const anew = rebarred(band, { meter: meter('4/4'), oneTick: 480, speed: 1 });
    expect(crossedOne(oneEvidence(anew, ROLES, meter('4/4')))).toBeUndefined();
    expect(anew.tracks[0]!.notes.map(({ startTick }) => startTick % 1920)).toEqual(
      Array(8).fill(0),
    );
    expect(anew.tracks.map(({ notes }) => notes.length)).toEqual(
      band.tracks.map(({ notes }) => notes.length),
    );
  });

  it('are felt twice or half as fast at the same sounding speed', () => {
    for (const speed of [0.5, 2] as const) {
      const band = offBy(0);
      const anew = rebarred(band, { meter: meter('4/4'), oneTick: 0, speed });
      expect(anew.tracks[0]!.notes[1]!.startTick).toBe(1920 * speed);
      expect(anew.tempoMap[0]!.tempo.bpm).toBe(120 * speed);
    }
  });

  it('take another meter throughout and reach to the last note', () => {
    const anew = rebarred(offBy(0), { meter: meter('3/4'), oneTick: 0, speed: 1 });
    expect(anew.bars.every((bar, i) => bar.startTick === 1440 * i)).toBe(true);
    expect(anew.bars.at(-1)!.startTick + 1440).toBeGreaterThanOrEqual(anew.lengthTicks);
  });
});
