import * as fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { formatChordSymbol } from '../../src/core/harmony/chordSymbol.ts';
import { AS_WRITTEN, arrangedProject, PLAYED_SEMITONES } from '../../src/state/arrangement.ts';
import { setTitle } from '../../src/state/edits/song.ts';
import { selectNotes, selectTimeline } from '../../src/state/selectors.ts';
import { section, slots, song, valueOf } from '../support/music.ts';
import { pattern } from '../support/patterns.ts';
import { project } from '../support/project.ts';

const BUSY = project({ patterns: [pattern('4/4', { left: 'R...5...', right: 'CCCCCCCC' })] });

const symbols = (whole: ReturnType<typeof project>) =>
  selectTimeline(whole).chords.map(({ chord }) =>
    chord === 'no-chord' ? 'N.C.' : formatChordSymbol(chord),
  );

describe('a song as it is played this time', () => {
  it('is the project itself where nothing is to be otherwise', () => {
    expect(arrangedProject(BUSY, AS_WRITTEN)).toBe(BUSY);
  });

  it('stands in the key so many semitones away, spelled plainly', () => {
    const verse = section('verse', { slots: slots('| Dm7 | G7 |'), patternId: 'p' });
    const inC = project({ song: song([verse], 'verse') });
    expect(symbols(arrangedProject(inC, { semitones: 3 }))).toEqual(['Fm7', 'B♭7']);
    expect(symbols(arrangedProject(inC, { semitones: -1 }))).toEqual(['C♯m7', 'F♯7']);
  });

  it('moves hands that are fixed along with it', () => {
    const written = slots('| C | F |');
    const pinned = [
      { ...written[0]!, fixedKeys: { left: [48], right: [60, 64, 67] } },
      written[1]!,
    ];
    const inC = project({ song: song([section('verse', { slots: pinned })], 'verse') });
    const { chords } = selectTimeline(arrangedProject(inC, { semitones: 2 }));
    expect(chords[0]?.fixedKeys).toEqual({ left: [50], right: [62, 66, 69] });
  });

  it('plays of each pattern what the level leaves, at the song’s tempo', () => {
    const count = (level: 1 | 3) => {
      const notes = valueOf(selectNotes(arrangedProject(BUSY, { semitones: 0, level })));
      return new Set(notes.map(({ startTick }) => startTick)).size;
    };
    expect(count(1)).toBeLessThan(count(3));
  });

  it('has the same bars in every key', () => {
    const { lowest, highest } = PLAYED_SEMITONES;
    fc.assert(
      fc.property(fc.integer({ min: lowest, max: highest }), (semitones) => {
        const arranged = arrangedProject(BUSY, { semitones });
        expect(selectTimeline(arranged).bars).toEqual(selectTimeline(BUSY).bars);
        expect(selectNotes(arranged).ok).toBe(true);
      }),
    );
  });

  it('is the very same object until something changes, its song also after another edit', () => {
    const up = { semitones: 2 };
    const first = arrangedProject(BUSY, up);
    expect(arrangedProject(BUSY, { semitones: 2 })).toBe(first);
    const edited = { ...BUSY, patterns: [...BUSY.patterns] };
    expect(arrangedProject(edited, up).song).toBe(first.song);
    expect(arrangedProject(setTitle('Another')(BUSY), up).song).not.toBe(first.song);
  });
});
