import { expect, it } from 'vitest';
import { drillTimeline } from '../../../src/core/practice/drill.ts';
import { meter, pitchClass } from '../../support/music.ts';

const dMinor = { root: pitchClass('D'), quality: 'minor', tensions: [] } as const;

it('holds one chord over all bars of one section', () => {
  const drill = drillTimeline(dMinor, meter('6/8'), 3);
  expect(drill.bars.map((bar) => bar.startTick)).toEqual([0, 1440, 2880]);
  expect(drill.chords).toEqual([
    { startTick: 0, endTick: 4320, chord: dMinor, section: 0, slot: 0 },
  ]);
  expect(drill.sections).toHaveLength(1);
  expect(drill.sections[0]?.bars).toBe(3);
  expect(drill.lengthTicks).toBe(4320);
});

it.each([0, -1, 1.5])('has no drill of %d bars', (bars) =>
  expect(() => drillTimeline(dMinor, meter('4/4'), bars)).toThrow('whole bars'),
);
