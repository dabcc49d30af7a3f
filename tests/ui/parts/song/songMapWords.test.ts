import { describe, expect, it } from 'vitest';
import { timelineOf } from '../../../../src/core/song/timeline.ts';
import {
  chosenPlace,
  entryBars,
  markedInEntry,
  markedText,
  playingName,
  rangeOfBars,
} from '../../../../src/ui/parts/song/marking.ts';
import {
  beatWords,
  clockText,
  signatureText,
  tonicChoices,
} from '../../../../src/ui/parts/song/songWords.ts';
import { stretchBpm, tappedBpm, withTap } from '../../../../src/ui/parts/transport/tapTempo.ts';
import {
  majorKey,
  minorKey,
  otherEnding,
  section,
  slots,
  song,
  withEndings,
} from '../../../support/music.ts';

const verse = section('Verse', { slots: slots('| C | F | G | C |') });
const bridge = section('Bridge', { slots: slots('| Am | F |') });
const timeline = timelineOf(song([verse, bridge], 'Verse Bridge Verse'));

describe('playings', () => {
  it('are numbered where a section returns', () => {
    expect([0, 1, 2].map((place) => playingName(timeline, place))).toEqual([
      'Verse 1',
      'Bridge',
      'Verse 2',
    ]);
  });

  it('keep a number that belongs to the name apart', () => {
    const second = section('Verse 2', { slots: slots('| C |') });
    const twice = timelineOf(song([{ ...second, id: 'v2' }], 'v2 v2'));
    expect(playingName(twice, 1)).toBe('Verse 2 (2)');
  });

  it('take their bars one after the other', () => {
    expect(entryBars(timeline, 2)).toEqual({ firstBar: 6, endBar: 10 });
  });
});

describe('marked bars', () => {
  it('are named by section, and by bar where they are not all of it', () => {
    expect(markedText(timeline, { firstBar: 6, endBar: 10 })).toBe('Verse 2');
    expect(markedText(timeline, { firstBar: 7, endBar: 9 })).toBe('Verse 2, bars 2 to 3');
    expect(markedText(timeline, { firstBar: 4, endBar: 5 })).toBe('Bridge, bar 1');
    expect(markedText(timeline, { firstBar: 2, endBar: 6 })).toBe('Verse 1, bar 3 to Bridge');
    expect(markedText(timeline, { firstBar: 0, endBar: 5 })).toBe('Verse 1 to Bridge, bar 1');
  });

  it('are nothing beyond the end of the song', () => {
    expect(markedText(timeline, { firstBar: 20, endBar: 22 })).toBe('');
  });

  it('are seen in each playing that they reach', () => {
    const range = { firstBar: 3, endBar: 5 };
    expect(markedInEntry(timeline, 0, range)).toEqual({ firstBar: 3, endBar: 4 });
    expect(markedInEntry(timeline, 1, range)).toEqual({ firstBar: 0, endBar: 1 });
    expect(markedInEntry(timeline, 2, range)).toBeUndefined();
    expect(markedInEntry(timeline, 0, undefined)).toBeUndefined();
  });

  it('may be drawn backwards', () => {
    expect(rangeOfBars(timeline, 2, 3, 1)).toEqual({ firstBar: 7, endBar: 10 });
  });

  it('stay within a playing that ends sooner than its section', () => {
    const sooner = withEndings(song([verse, bridge], 'Verse Bridge'), {
      0: otherEnding(3, '| G |'),
    });
    expect(rangeOfBars(timelineOf(sooner), 0, 1, 3)).toEqual({ firstBar: 1, endBar: 2 });
  });
});

describe('the chosen playing', () => {
  const form = [
    { id: 'e0', sectionId: 'Verse' },
    { id: 'e1', sectionId: 'Bridge' },
    { id: 'e2', sectionId: 'Verse' },
  ];

  it('is the chosen entry where it plays the section, else the first that does', () => {
    expect(chosenPlace(form, 'Verse', 'e2')).toBe(2);
    expect(chosenPlace(form, 'Verse', 'e1')).toBe(0);
    expect(chosenPlace(form, 'Bridge', undefined)).toBe(1);
    expect(chosenPlace(form, 'Coda', undefined)).toBeUndefined();
  });
});

const tap = (...times: number[]) => times.reduce<number[]>(withTap, []);

describe('tapping the tempo', () => {
  it('gives the tempo from the third tap on', () => {
    expect(tappedBpm(tap(0, 0.5))).toBeUndefined();
    expect(tappedBpm(tap(0, 0.5, 1))).toBe(120);
    expect(tappedBpm(tap(0, 0.48, 1.02, 1.5))).toBe(120);
  });

  it('begins anew after a long wait', () => {
    expect(tap(0, 0.5, 1, 9)).toEqual([9]);
  });

  it('stays within the tempos that can be set', () => {
    expect(tappedBpm(tap(0, 0.1, 0.2))).toBe(320);
  });
});

describe('a section against a stop watch', () => {
  it('gives the tempo at which it lasts as long', () => {
    expect(stretchBpm(8 * 1920, 480, 16)).toBe(120);
    expect(stretchBpm(4 * 1440, 720, 8)).toBe(60);
  });

  it('gives none where no tempo fits', () => {
    expect(stretchBpm(1920, 480, 0.1)).toBeUndefined();
    expect(stretchBpm(1920, 480, 600)).toBeUndefined();
  });
});

describe('words for the song', () => {
  it('tell minutes and seconds', () => {
    expect([0, 59.4, 59.6, 242].map(clockText)).toEqual(['0:00', '0:59', '1:00', '4:02']);
  });

  it('name the note that the tempo counts', () => {
    expect([240, 480, 720, 960].map((ticks) => beatWords(ticks).name)).toEqual([
      'eighth',
      'quarter',
      'dotted quarter',
      'half',
    ]);
  });

  it('offer the fifteen keys of each mode that can be written', () => {
    expect(tonicChoices('major')).toHaveLength(15);
    expect(tonicChoices('minor')).toHaveLength(15);
  });

  // Signatures: docs/sources.md#key-signatures.
  it('tell the signature', () => {
    expect(signatureText(majorKey('D'))).toBe('2 sharps');
    expect(signatureText(minorKey('D'))).toBe('1 flat');
    expect(signatureText(majorKey('C'))).toBe('no sharps or flats');
  });
});
