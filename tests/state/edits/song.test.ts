import { describe, expect, it } from 'vitest';
import { setEntryEnding } from '../../../src/state/edits/ending.ts';
import { addFormEntry, moveFormEntry, setMeter } from '../../../src/state/edits/form.ts';
import {
  setKey,
  setNotes,
  setTempo,
  setTitle,
  transposeTo,
} from '../../../src/state/edits/song.ts';
import { chord, majorKey, meter, otherEnding, section, slots, song } from '../../support/music.ts';
import { project } from '../../support/project.ts';

const PROJECT = project();

function bpmAfter(bpm: number): number {
  return setTempo(bpm)(PROJECT).song.tempo.bpm;
}

describe('the song itself', () => {
  it('takes another title, key and remarks', () => {
    expect(setTitle('Slow Ferry')(PROJECT).song.title).toBe('Slow Ferry');
    expect(setKey(majorKey('E♭'))(PROJECT).song.key).toEqual(majorKey('E♭'));
    expect(setNotes('Watch the bass.')(PROJECT).song.notes).toBe('Watch the bass.');
  });

  it('moves to another key with its chords', () => {
    const { song: moved } = transposeTo('2M')(PROJECT);
    expect(moved.key).toEqual(majorKey('D'));
    expect(moved.sections[0]!.slots).toEqual(slots('| D | G |'));
    expect({ ...moved, key: PROJECT.song.key, sections: PROJECT.song.sections }).toEqual(
      PROJECT.song,
    );
  });

  it('takes a tempo in felt beats, within what can be set', () => {
    expect([bpmAfter(97), bpmAfter(3), bpmAfter(900)]).toEqual([97, 20, 320]);
  });

  it.each([
    ['title', setTitle(PROJECT.song.title)],
    ['key', setKey(majorKey('C'))],
    ['remarks', setNotes(PROJECT.song.notes)],
    ['tempo', setTempo(PROJECT.song.tempo.bpm)],
    ['key it is moved to', transposeTo(majorKey('C'))],
    ['interval it is moved by', transposeTo('1P')],
  ])('stays the very same where the %s says what it said', (_, edit) =>
    expect(edit(PROJECT)).toBe(PROJECT),
  );
});

describe('the beat that the tempo counts', () => {
  const inTwo = section('lilt', { meter: meter('6/8'), slots: slots('| C | G |', '6/8') });
  const mixed = project({
    song: song([section('verse', { slots: slots('| C |') }), inTwo], 'verse lilt'),
  });

  it('becomes the dotted quarter when the song starts in 6/8, with note values as fast as before', () => {
    const { tempo } = moveFormEntry(1, 0)(mixed).song;
    expect(tempo).toEqual({ bpm: 80, beatTicks: 720 });
  });

  it('becomes the dotted quarter when the first section is put into 6/8', () =>
    expect(setMeter('verse', meter('6/8'))(mixed).song.tempo).toEqual({ bpm: 80, beatTicks: 720 }));

  it('is the one of an ending with which the song begins', () => {
    const { id } = mixed.song.form[0]!;
    const last = otherEnding(1, '| 6/8 G |');
    expect(setEntryEnding(id, last)(mixed).song.tempo).toEqual({ bpm: 80, beatTicks: 720 });
  });

  it('stays where another than the first section changes', () => {
    expect(setMeter('lilt', meter('9/8'))(mixed).song.tempo).toBe(mixed.song.tempo);
    expect(addFormEntry('lilt')(mixed).song.tempo).toBe(mixed.song.tempo);
  });

  it('is the one of the first bar where that bar has a meter of its own', () => {
    const opening = section('opening', {
      slots: slots('| 6/8 C | G |'),
      barMeters: [{ bar: 0, meter: meter('6/8') }],
    });
    const before = project({ song: song([opening, inTwo], 'lilt opening') });
    expect(moveFormEntry(1, 0)(before).song.tempo.beatTicks).toBe(720);
  });
});

it('takes the chords that the drill holds along when the song is transposed', () => {
  const stages = [
    { id: 'two', passage: { kind: 'two-chords', first: chord('G7'), second: chord('Cm') } },
    { id: 'one', passage: { kind: 'one-chord' } },
  ] as const;
  const { practice } = PROJECT;
  const drilled = {
    ...PROJECT,
    practice: { ...practice, drill: { ...practice.drill, chord: chord('E♭7'), stages } },
  };
  const { drill } = transposeTo('2M')(drilled).practice;
  expect(drill.chord).toEqual(chord('F7'));
  expect(drill.stages?.map(({ passage }) => passage)).toEqual([
    { kind: 'two-chords', first: chord('A7'), second: chord('Dm') },
    { kind: 'one-chord' },
  ]);
});
