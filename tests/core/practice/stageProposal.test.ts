import { describe, expect, it } from 'vitest';
import { formatChordSymbol } from '../../../src/core/harmony/chordSymbol.ts';
import { chordChanges, hardestChange } from '../../../src/core/practice/chordChange.ts';
import { barsOfPassage, isThere, type Stage } from '../../../src/core/practice/stage.ts';
import { proposedStages } from '../../../src/core/practice/stageProposal.ts';
import { unreachable } from '../../../src/core/result.ts';
import type { Section } from '../../../src/core/song/song.ts';
import { timelineOf } from '../../../src/core/song/timeline.ts';
import { chord, section, slots, song } from '../../support/music.ts';
import { chartTimeline, pattern, plainVoicings } from '../../support/patterns.ts';

/** Sixteenths that level 2 does not let stand. */
const FULL = pattern(
  '4/4',
  { left: 'R---5---R---5---', right: 'C.C.CCC.C.C.C.CC' },
  { id: 'full' },
);
const EASY = pattern('4/4', { left: 'R---', right: 'C-C-' }, { id: 'easy' });

const VERSE = section('verse', { slots: slots('| C | Am | F | G |'), patternId: 'full' });
const CHORUS = section('chorus', { slots: slots('| F | C | Dm | G |'), patternId: 'easy' });
const BRIDGE = section('bridge', { slots: slots('| A♭ | E♭ |'), patternId: 'full' });

/** What is proposed for a pattern, stage by stage: `one-chord tool right`, `two-chords C Am`, `section verse`. */
function proposed(sections: readonly Section[], form: string, drilled = FULL, held = 'C') {
  const played = song(sections, form);
  const voicings = plainVoicings(timelineOf(played));
  const patterns = [EASY, FULL];
  return proposedStages({ song: played, patterns, voicings }, drilled, chord(held));
}

function words({ passage, tool, level }: Stage): string {
  const more = level ? ` level ${level}` : '';
  switch (passage.kind) {
    case 'one-chord':
      return `one-chord, tool ${tool}${more}`;
    case 'two-chords':
      return `${formatChordSymbol(passage.first)} ${formatChordSymbol(passage.second)}`;
    case 'section':
      return passage.sectionId;
    case 'join':
      return `${passage.from}>${passage.to}`;
    default:
      return unreachable(passage);
  }
}

describe('the stages that are proposed', () => {
  it('lead from each hand alone over both at a low level, two chords and sections to the hard joins', () =>
    // In root position C to Am moves furthest among the verse's and the bridge's changes, G to C among
    // the joins; G to F asks for another rhythm besides, G to A♭ for another scale.
    expect(proposed([VERSE, CHORUS, BRIDGE], 'verse chorus verse bridge').map(words)).toEqual([
      'one-chord, tool right',
      'one-chord, tool left',
      'one-chord, tool none level 2',
      'one-chord, tool none',
      'C Am',
      'verse',
      'bridge',
      'chorus>verse',
      'verse>chorus',
      'verse>bridge',
    ]));

  it('end with the section where the song has one only, as it has no join', () =>
    expect(proposed([VERSE], 'verse').map(({ passage }) => passage.kind)).toEqual([
      'one-chord',
      'one-chord',
      'one-chord',
      'one-chord',
      'two-chords',
      'section',
    ]));

  it('take the chord after the held one where no section plays the pattern', () => {
    const stages = proposed([CHORUS], 'chorus', FULL, 'Dm').map(words);
    expect(stages.slice(-2)).toEqual(['one-chord, tool none', 'Dm G']);
  });

  it('stay on the one chord where there is nothing else', () => {
    expect(proposed([], '').map(({ passage }) => passage.kind)).toEqual(Array(4).fill('one-chord'));
    const still = section('still', { slots: slots('| C | N.C. | C |'), patternId: 'full' });
    expect(proposed([still], 'still').map(words).slice(4)).toEqual(['still']);
  });

  it('leave out the low level where it is the whole part, and the hands apart where one rests', () => {
    expect(proposed([], '', EASY).map(words)).toEqual([
      'one-chord, tool right',
      'one-chord, tool left',
      'one-chord, tool none',
    ]);
    const rightAlone = pattern('4/4', { right: 'C-C-' }, { id: 'right' });
    expect(proposed([], '', rightAlone).map(words)).toEqual(['one-chord, tool none']);
  });

  it('are all there in the song, each with a name of its own', () => {
    const stages = proposed([VERSE, CHORUS, BRIDGE], 'verse chorus verse bridge');
    const timeline = timelineOf(song([VERSE, CHORUS, BRIDGE], 'verse chorus verse bridge'));
    expect(stages.every((stage) => isThere(timeline, stage))).toBe(true);
    expect(new Set(stages.map(({ id }) => id)).size).toBe(stages.length);
  });
});

describe('a passage', () => {
  const timeline = timelineOf(song([VERSE, CHORUS], 'verse chorus verse'));

  it('is the first playing of its section, or the bars on both sides of the first such join', () => {
    expect(barsOfPassage(timeline, { kind: 'section', sectionId: 'chorus' })).toEqual({
      firstBar: 4,
      endBar: 8,
    });
    expect(barsOfPassage(timeline, { kind: 'join', from: 'chorus', to: 'verse' })).toEqual({
      firstBar: 7,
      endBar: 9,
    });
  });

  it('is also the join of a section that follows itself', () => {
    const twice = timelineOf(song([VERSE], 'verse verse'));
    expect(barsOfPassage(twice, { kind: 'join', from: 'verse', to: 'verse' })).toEqual({
      firstBar: 3,
      endBar: 5,
    });
  });

  it('is not there where the song does not play it', () => {
    const gone = { id: 'x', tool: 'none', passage: { kind: 'section', sectionId: 'x' } } as const;
    const join = { kind: 'join', from: 'chorus', to: 'chorus' } as const;
    expect(isThere(timeline, gone)).toBe(false);
    expect(isThere(timeline, { ...gone, passage: join })).toBe(false);
    expect(isThere(timeline, { ...gone, passage: { kind: 'one-chord' } })).toBe(true);
  });
});

describe('the chord changes of a song', () => {
  it('are those between different chords within a section, silence apart', () => {
    const timeline = timelineOf(
      song([section('a', { slots: slots('| C / C G | N.C. | F |') }), BRIDGE], 'a bridge'),
    );
    const changes = chordChanges(timeline, plainVoicings(timeline));
    expect(changes.map(({ atTick }) => atTick)).toEqual([3 * 480, 4 * 1920]);
  });

  it('are hard as far as both hands move', () => {
    const timeline = chartTimeline('| C | F | G |');
    const changes = chordChanges(timeline, plainVoicings(timeline));
    // F to G in root position: the left hand 2 semitones, each of three notes of the right 2.
    expect(changes.map(({ motion }) => motion)).toEqual([20, 8]);
    expect(hardestChange(changes)).toBe(changes[0]);
    expect(hardestChange([])).toBeUndefined();
  });
});
