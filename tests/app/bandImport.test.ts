import { describe, expect, it } from 'vitest';
import { openBand, patternName, proposePattern } from '../../src/app/bandImport.ts';
import { patternFaults } from '../../src/formats/patternFaults.ts';
import {
  gridNotes,
  meterOf,
  midiFile,
  note,
  program,
  tempoOf,
  trackName,
} from '../support/midi.ts';
import { errorOf, valueOf } from '../support/music.ts';

const NAMED = { id: 'new', name: 'New' };

function drum(key: number, text: string) {
  return gridNotes(text, 120, { key, channel: 9, length: 30, times: 8 });
}

/** Two bars of rock for eight times, a bass and a kit, in sixteenths of 4/4 at 480 ticks. */
function rockFile(): Uint8Array {
  return midiFile({
    tracks: [
      [
        trackName('Low end'),
        program(0, 33),
        ...gridNotes('x... .... x... .... | x... ..x. x... ....', 120, {
          key: 28,
          length: 440,
          times: 8,
        }),
      ],
      [
        trackName('Kit'),
        ...drum(36, 'x... .... x... .... | x... ..x. x... ....'),
        ...drum(38, '.... X... .... X... | .... X... .... X...'),
        ...drum(42, 'x.x. x.x. x.x. x.x. | x.x. x.x. x.x. x.x.'),
      ],
    ],
  });
}

describe('from a file to a pattern', () => {
  const opened = valueOf(openBand(rockFile()));

  it('proposes a role for each track and sixteen steady bars', () => {
    expect(opened.choice).toMatchObject({
      roles: ['bass', 'drums'],
      firstBar: 0,
      lastBar: 15,
      period: 'auto',
    });
  });

  it('folds the band onto two bars and derives both hands', () => {
    const { pattern, fold } = valueOf(proposePattern(opened.band, opened.choice, NAMED));
    expect(fold).toMatchObject({ bars: 2, barsAgreeing: 16 });
    expect(pattern).toMatchObject({ id: 'new', name: 'New', bars: 2 });
    expect(pattern.sources.map((source) => source.part)).toEqual([
      'bass',
      'kick',
      'hi-hat',
      'snare',
    ]);
    expect(pattern.left.map((hit) => hit.at)).toEqual([0, 960, 1920, 2640, 2880]);
    expect(pattern.left.every((hit) => hit.play[0] === 'root')).toBe(true);
    expect(pattern.right.map((hit) => hit.at)).toEqual([480, 1440, 2400, 3360]);
    expect(patternFaults(pattern, 'pattern')).toEqual([]);
  });

  it('tells the band’s tempo in beats of its meter', () => {
    const jig = midiFile({
      tracks: [
        [
          tempoOf(400_000),
          meterOf(6, 8),
          trackName('Kit'),
          ...gridNotes('x..x..', 240, { key: 36, channel: 9, times: 8 }),
        ],
      ],
    });
    const { band, choice } = valueOf(openBand(jig));
    // 400 ms a quarter are 150 quarters or 100 dotted quarters a minute.
    expect(valueOf(proposePattern(band, choice, NAMED)).bpm).toBeCloseTo(100, 6);
  });

  it('follows a corrected role', () => {
    const roles = ['other', 'drums'] as const;
    const choice = { ...opened.choice, roles };
    const { pattern } = valueOf(proposePattern(opened.band, choice, NAMED));
    expect(pattern.sources.map((source) => source.part)).not.toContain('bass');
  });

  it('folds onto the period that is asked for', () => {
    const choice = { ...opened.choice, period: 1 as const };
    expect(valueOf(proposePattern(opened.band, choice, NAMED)).pattern.bars).toBe(1);
  });

  it('refuses bars that are not there', () => {
    const choice = { ...opened.choice, lastBar: 16 };
    expect(errorOf(proposePattern(opened.band, choice, NAMED))).toEqual({
      kind: 'no-such-bars',
      bars: 16,
    });
  });

  it('says that nobody plays where every track is left out', () => {
    const choice = { ...opened.choice, roles: ['other', 'other'] as const };
    expect(errorOf(proposePattern(opened.band, choice, NAMED))).toEqual({ kind: 'nothing-played' });
  });
});

it('refuses bars of more than one meter and says where it changes', () => {
  const bytes = midiFile({
    tracks: [[meterOf(4, 4), meterOf(3, 4, 1920), ...note({ key: 40, at: 3000 })]],
  });
  const { band, choice } = valueOf(openBand(bytes));
  const both = { ...choice, firstBar: 0, lastBar: 1 };
  expect(errorOf(proposePattern(band, both, NAMED))).toEqual({
    kind: 'meter-changes',
    atBar: 1,
    from: '4/4',
    to: '3/4',
  });
});

it('passes on why a file cannot be read', () => {
  expect(errorOf(openBand(new Uint8Array([1, 2, 3])))).toMatchObject({ kind: 'not-midi' });
});

it.each([
  ['my_slow groove.mid', 'my slow groove'],
  ['folder/Verse.2.midi', 'Verse.2'],
  ['.mid', 'Band'],
])('names the pattern of %s %s', (file, name) => {
  expect(patternName(file)).toBe(name);
});
