import { describe, expect, it } from 'vitest';
import { clickTrack } from '../../../src/core/rhythm/click.ts';
import { heldNotes } from '../../../src/core/rhythm/heldNotes.ts';
import { type MusicPlan, musicOf, musicOrHeld } from '../../../src/core/rhythm/music.ts';
import { pedalSpans } from '../../../src/core/rhythm/pedal.ts';
import { realise } from '../../../src/core/rhythm/realise.ts';
import { realiseBand } from '../../../src/core/rhythm/realiseBand.ts';
import { errorOf, meter, valueOf } from '../../support/music.ts';
import { chartTimeline, pattern, plainVoicings, source } from '../../support/patterns.ts';

const GRID = { meter: meter('4/4'), bars: 1, divisions: [2, 2, 2, 2] as const };

const GROOVE = pattern(
  '4/4',
  { left: 'R---R---', right: '--C---C-' },
  { pedal: 'by-chord', sources: [source(GRID, 'kick', 'x---x---')] },
);
const WALTZ = pattern('3/4', { left: 'R--', right: '-CC' });

const timeline = chartTimeline('| C | F |');
const voicings = plainVoicings(timeline);

const PLAN: MusicPlan = {
  timeline,
  voicings,
  patternAt: () => GROOVE,
  loop: true,
  click: { beats: 'all' },
};

describe('the music of a timeline', () => {
  it('is hands, band, click and pedal of the same bars, round and round where it loops', () => {
    const hands = valueOf(realise(timeline, voicings, () => GROOVE, { loop: true }));
    expect(valueOf(musicOf(PLAN))).toEqual({
      hands,
      band: realiseBand(timeline, voicings, () => GROOVE, { loop: true }),
      click: clickTrack(timeline, { beats: 'all' }),
      pedals: pedalSpans(timeline, () => GROOVE, hands),
    });
  });

  it('has no click where none is asked for', () => {
    const { click: _, ...silent } = PLAN;
    expect(valueOf(musicOf(silent)).click).toEqual([]);
    expect(valueOf(musicOf(PLAN)).click).not.toEqual([]);
  });

  it('names the bar whose meter is not its pattern’s', () => {
    const patternAt: MusicPlan['patternAt'] = (_, i) => (i === 1 ? WALTZ : GROOVE);
    expect(errorOf(musicOf({ ...PLAN, patternAt }))).toMatchObject({ bar: 1 });
  });
});

describe('music that may be held', () => {
  it('is the patterns’ where they fit', () => {
    expect(musicOrHeld(PLAN)).toEqual(valueOf(musicOf(PLAN)));
  });

  it.each<[string, MusicPlan['patternAt']]>([
    ['no bar has a pattern', () => undefined],
    ['a pattern has another meter', () => WALTZ],
  ])('holds every chord where %s', (_, patternAt) => {
    const held = musicOrHeld({ ...PLAN, patternAt });
    expect(held.hands).toEqual(heldNotes(timeline, voicings));
    expect(held.band).toEqual([]);
    expect(held.click).toEqual(clickTrack(timeline, { beats: 'all' }));
  });
});
