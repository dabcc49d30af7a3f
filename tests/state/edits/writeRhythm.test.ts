import { describe, expect, it } from 'vitest';
import { parseCounts } from '../../../src/core/rhythm/counts.ts';
import type { Division, Pattern } from '../../../src/core/rhythm/pattern.ts';
import {
  type RhythmTarget,
  saidStrokes,
  type WritingManner,
  writeRhythm,
} from '../../../src/state/edits/writeRhythm.ts';
import { valueOf } from '../../support/music.ts';
import { pattern, source, ticksOf } from '../../support/patterns.ts';
import { project } from '../../support/project.ts';

const PLAIN = pattern('4/4', { left: 'R---5---', right: '..C-..C.' });
const BANDED = { ...PLAIN, sources: [source(PLAIN, 'snare', '..x...x.')] };

const LEFT = { kind: 'hand', hand: 'left' } as const;
const RIGHT = { kind: 'hand', hand: 'right' } as const;

/** The pattern after a rhythm was said into it. */
function said(
  text: string,
  target: RhythmTarget,
  before: Pattern = BANDED,
  manner: WritingManner = 'replace',
): Pattern {
  const counts = valueOf(parseCounts(text, before.meter, before.divisions));
  const part = target.kind === 'new-source' ? target.part : undefined;
  const strokes = saidStrokes(counts.at, counts, part);
  const edit = writeRhythm('p', target, { ...counts, strokes }, manner);
  return edit(project({ patterns: [before] })).patterns[0]!;
}

describe('a rhythm written into a hand', () => {
  it('takes the place of its hits; one at the same tick keeps what it plays', () => {
    const { left } = said('1 & 3 4', LEFT);
    expect(left.map(({ at, play, length }) => [at, length, play[0]])).toEqual([
      [0, 240, 'root'],
      [240, 480, 'root'],
      [960, 480, 'fifth'],
      [1440, 480, 'root'],
    ]);
  });

  it('comes to its hits where it is added', () => {
    const { right } = said('2 & 4', RIGHT, BANDED, 'add');
    expect(ticksOf(right)).toEqual([480, 720, 1440]);
    expect(right.map(({ play }) => play[0])).toEqual(['all', 'all', 'all']);
  });

  it('leaves the other hand and the band alone', () => {
    const { right, sources } = said('1 2 3 4', LEFT);
    expect([right, sources]).toEqual([BANDED.right, BANDED.sources]);
  });

  it('is repeated in a longer pattern', () => {
    const two = pattern('2/4', { left: 'R---....' }, { bars: 2 });
    expect(ticksOf(said('1 &', LEFT, two).left)).toEqual([0, 240, 960, 1200]);
  });

  it('makes a shorter pattern longer, whose own bars are repeated', () => {
    const long = said('1 2 | 3 4', LEFT);
    expect(long).toMatchObject({ bars: 2, divisions: [2, 2, 2, 2, 2, 2, 2, 2] });
    expect(ticksOf(long.left)).toEqual([0, 480, 2880, 3360]);
    expect(ticksOf(long.right)).toEqual([480, 1440, 2400, 3360]);
    expect(ticksOf(long.sources[0]!.strokes)).toEqual([480, 1440, 2400, 3360]);
  });
});

describe('the division of a beat', () => {
  const divided = (text: string, before: Pattern) => said(text, LEFT, before).divisions;

  it('stays where it holds the rhythm', () =>
    expect(divided('1 & 2 3', BANDED)).toEqual([2, 2, 2, 2]));

  it('is that of the rhythm where no hit stands between the beats', () =>
    expect(divided('1 trip let 2', BANDED)).toEqual([3, 2, 2, 2]));

  it('is one that holds both where hits stand there', () => {
    const busy = pattern('4/4', { right: '.C.C....' });
    expect(divided('1 e 2 trip let', busy)).toEqual([4, 6, 2, 2]);
  });

  it('stays where nothing holds both, and the rhythm keeps its ticks', () => {
    const divisions: Division[] = [4, 2, 2, 2];
    const busy = pattern('4/4', { right: '.C.C......' }, { divisions });
    const mixed = said('1 trip let', LEFT, busy);
    expect(mixed.divisions).toEqual([4, 2, 2, 2]);
    expect(ticksOf(mixed.left)).toEqual([0, 160, 320]);
    expect(ticksOf(mixed.right)).toEqual([120, 360]);
  });
});

describe('a rhythm written into the band', () => {
  it('replaces the strokes of a source, or comes to them', () => {
    const snare = { kind: 'source', id: 'snare' } as const;
    const strokes = (manner: WritingManner) =>
      ticksOf(said('1 &', snare, BANDED, manner).sources[0]!.strokes);
    expect(strokes('replace')).toEqual([0, 240]);
    expect(strokes('add')).toEqual([0, 240, 480, 1440]);
  });

  it('can be a source of its own, named by its part or numbered', () => {
    const kick = { kind: 'new-source', part: 'kick', name: 'Kick' } as const;
    const once = said('1 3', kick);
    const twice = said('2', kick, once);
    expect(twice.sources.map(({ id, part }) => [id, part])).toEqual([
      ['snare', 'snare'],
      ['kick', 'kick'],
      ['kick-1', 'kick'],
    ]);
    expect(once.left).toEqual(BANDED.left);
  });

  it('sounds what its part usually does, until its next stroke round and round', () => {
    const bass = said('2 4', { kind: 'new-source', part: 'bass', name: 'Bass' });
    expect(bass.sources[1]?.strokes).toEqual([
      { at: 480, length: 960, strength: 0.7, presence: 1, what: ['root'] },
      { at: 1440, length: 960, strength: 0.7, presence: 1, what: ['root'] },
    ]);
  });
});

it('does nothing where there is no such pattern', () => {
  const before = project();
  const rhythm = { bars: 1, divisions: [1, 1, 1, 1] as const, strokes: [] };
  expect(writeRhythm('gone', LEFT, rhythm)(before)).toBe(before);
});
