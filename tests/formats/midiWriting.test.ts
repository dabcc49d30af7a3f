import { assert, constantFrom, integer, property, record, uniqueArray } from 'fast-check';
import { expect, it } from 'vitest';
import type { Key } from '../../src/core/harmony/key.ts';
import type { BandNote } from '../../src/core/rhythm/band.ts';
import type { Note, Part } from '../../src/core/rhythm/note.ts';
import type { Timeline } from '../../src/core/song/timeline.ts';
import { barTicks } from '../../src/core/time/meter.ts';
import { steadyTempo } from '../../src/core/time/tempoMap.ts';
import { decodeMidi, encodeMidi, type MidiBand } from '../../src/formats/midi.ts';
import { hexText } from '../support/midi.ts';
import { meter, valueOf } from '../support/music.ts';

function timelineOfBars(meters: readonly string[], sectionName = 'Verse'): Timeline {
  let startTick = 0;
  const bars = meters.map((text, barInSection) => {
    const bar = { startTick, meter: meter(text), section: 0, barInSection };
    startTick += barTicks(bar.meter);
    return bar;
  });
  const section = {
    startTick: 0,
    endTick: startTick,
    sectionId: 's',
    name: sectionName,
    repeat: 0,
    bars: bars.length,
  };
  return { bars, chords: [], sections: [section], lengthTicks: startTick };
}

function noteOf(part: Part, keyNumber: number, startTick: number, durationTicks = 240): Note {
  return { part, keyNumber, startTick, durationTicks, velocity: 80 };
}

function decoded(bytes: Uint8Array): MidiBand {
  return valueOf(decodeMidi(bytes));
}

function noteText(note: Note | BandNote): string {
  return [note.startTick, note.durationTicks, note.keyNumber, note.velocity].join(' ');
}

function bytesOf(meters: readonly string[], key?: Key): string {
  return hexText(
    encodeMidi(
      [noteOf('right', 60, 0)],
      timelineOfBars(meters),
      steadyTempo(120),
      ...(key ? [key] : []),
    ),
  );
}

it('writes 4/4 and 6/8 as the specification does', () => {
  expect(bytesOf(['4/4'])).toContain('00FF580404021808');
  expect(bytesOf(['6/8'])).toContain('00FF580406032408');
});

it.each([
  [40, '16E360'],
  [120, '07A120'],
  [133, '06E238'],
  [240, '03D090'],
])('writes %i bpm as the microseconds %s', (bpm, hex) => {
  const bytes = encodeMidi([noteOf('left', 40, 0)], timelineOfBars(['4/4']), steadyTempo(bpm));
  expect(hexText(bytes)).toContain(`FF5103${hex}`);
});

// B♭ major FE 00, E minor 01 01, C♭ major F9 00 [SMF].
it.each([
  ['B', -1, 'major', 'FE00'],
  ['E', 0, 'minor', '0101'],
  ['C', -1, 'major', 'F900'],
] as const)('writes the key signature of %s %i %s', (letter, alteration, mode, hex) => {
  expect(bytesOf(['4/4'], { tonic: { letter, alteration }, mode })).toContain(`FF5902${hex}`);
});

it('writes each part as its own track, drums and click on channel 10', () => {
  const notes = [
    noteOf('left', 40, 0),
    noteOf('right', 64, 0),
    noteOf('kick', 36, 0),
    noteOf('click', 76, 0),
    noteOf('bass', 28, 0),
  ];
  const band = decoded(encodeMidi(notes, timelineOfBars(['4/4']), steadyTempo(120)));
  expect(band.tracks.map((t) => [t.name, t.channel, t.program])).toEqual([
    ['Right hand', 0, 0],
    ['Left hand', 1, 0],
    ['Bass', 2, 33],
    ['Kick', 9, 0],
    ['Click', 9, 0],
  ]);
});

it('writes the pedal of both hands as controller 64, let up before keys of the same tick', () => {
  const notes = [noteOf('left', 40, 0), noteOf('right', 64, 0), noteOf('right', 65, 480)];
  const pedals = [{ downTick: 60, upTick: 480 }];
  const bytes = hexText(
    encodeMidi(notes, timelineOfBars(['4/4']), steadyTempo(120), undefined, pedals),
  );
  // Control change, status Bn, controller 40 hex, down 7F, up 00 (MIDI 1.0; from memory).
  expect(bytes).toContain('3CB0407F');
  expect(bytes).toContain('3CB1407F');
  // The delta time before the key's note-on is 0.
  expect(bytes).toContain('B040000090');
});

it('moves a count-in of two bars into the file by whole bars', () => {
  const notes = [noteOf('click', 76, -2 * 1440), noteOf('right', 60, 0)];
  const band = decoded(encodeMidi(notes, timelineOfBars(['3/4', '4/4']), steadyTempo(90)));
  expect(band.tracks.map((t) => t.notes[0]?.startTick)).toEqual([2 * 1440, 0]);
  expect(band.bars.slice(0, 4).map((bar) => [bar.startTick, bar.meter.beats])).toEqual([
    [0, 3],
    [1440, 3],
    [2880, 3],
  ]);
});

it('marks the sections with their names in UTF-8', () => {
  const bytes = encodeMidi(
    [noteOf('right', 60, 0)],
    timelineOfBars(['4/4'], 'B♭ verse'),
    steadyTempo(120),
  );
  const marker = hexText(new TextEncoder().encode('B♭ verse'));
  expect(hexText(bytes)).toContain(`FF060A${marker}`);
});

it('lets go of a key before it is struck again', () => {
  const notes = [noteOf('right', 60, 0, 960), noteOf('right', 60, 480, 480)];
  const band = decoded(encodeMidi(notes, timelineOfBars(['4/4']), steadyTempo(120)));
  expect(band.tracks[0]?.notes.map((n) => [n.startTick, n.durationTicks])).toEqual([
    [0, 480],
    [480, 480],
  ]);
});

it('refuses what is no MIDI note', () => {
  expect(() =>
    encodeMidi([noteOf('right', 128, 0)], timelineOfBars(['4/4']), steadyTempo(120)),
  ).toThrow('no MIDI note');
});

it('reads back what it wrote', () => {
  const parts: readonly Part[] = ['left', 'right', 'bass', 'snare'];
  const notes = uniqueArray(
    record({
      part: constantFrom(...parts),
      keyNumber: integer({ min: 0, max: 127 }),
      slot: integer({ min: 0, max: 31 }),
      durationTicks: integer({ min: 1, max: 240 }),
      velocity: integer({ min: 1, max: 127 }),
    }),
    { selector: (n) => `${n.part} ${n.keyNumber} ${n.slot}`, minLength: 1 },
  );
  const bpm = integer({ min: 20, max: 320 });
  assert(
    property(notes, bpm, constantFrom('4/4', '6/8', '7/8', '5/4'), (drawn, speed, text) => {
      const written = drawn.map(({ slot, ...n }): Note => ({ ...n, startTick: slot * 240 }));
      const timeline = timelineOfBars([text, text, text]);
      const band = decoded(encodeMidi(written, timeline, steadyTempo(speed)));
      const read = band.tracks.flatMap((track) => track.notes);
      expect(read.map(noteText).toSorted()).toEqual(written.map(noteText).toSorted());
      expect(band.tempoMap).toHaveLength(1);
      expect(band.bars[0]?.meter).toEqual(meter(text));
    }),
  );
});
