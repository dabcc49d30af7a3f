import { expect, it } from 'vitest';
import { openBand, proposePattern } from '../../../../src/app/bandImport.ts';
import { bandFileSentence, proposalSentence } from '../../../../src/ui/rhythm/band/bandMessages.ts';
import { gridNotes, hexBytes, meterOf, midiFile } from '../../../support/midi.ts';
import { errorOf, valueOf } from '../../../support/music.ts';

const BASS = gridNotes('x.x.x.x.', 240, { key: 40, times: 8 });
const WHOLE = midiFile({ tracks: [BASS] });

function sentenceFor(bytes: Uint8Array): string {
  return bandFileSentence(errorOf(openBand(bytes)));
}

it('says of every file that is no band what is wrong with it, and where', () => {
  expect(sentenceFor(new TextEncoder().encode('A shopping list'))).toMatch(
    /no MIDI file.*byte 1\)/,
  );
  expect(sentenceFor(WHOLE.slice(0, 40))).toMatch(/breaks off too soon \(track 1, byte 41\)/);
  expect(sentenceFor(midiFile({ division: 0xe728, tracks: [BASS] }))).toMatch(
    /film frames \(25 a second, byte 13\)/,
  );
  expect(sentenceFor(midiFile({ format: 2, tracks: [BASS] }))).toMatch(/several pieces.*byte 9\)/);
  expect(sentenceFor(midiFile({ tracks: [[]] }))).toMatch(/no notes/);
  expect(sentenceFor(hexBytes('4D546864 00000006 0009 0001 0060'))).toMatch(/head.*byte 9/);
});

it('says of bars that give no pattern why, counted from 1', () => {
  const { band, choice } = valueOf(
    openBand(midiFile({ tracks: [[...BASS, meterOf(4, 4), meterOf(3, 4, 4 * 1920)]] })),
  );
  const sentence = (bars: { firstBar: number; lastBar: number }, roles = choice.roles) =>
    proposalSentence(
      errorOf(proposePattern(band, { ...choice, ...bars, roles }, { id: 'p', name: 'Band' })),
    );
  expect(sentence({ firstBar: 0, lastBar: 99 })).toMatch(`bars 1 to ${band.bars.length}`);
  expect(sentence({ firstBar: 2, lastBar: 5 })).toMatch(
    'In bar 5 the meter changes from 4/4 to 3/4',
  );
  expect(sentence({ firstBar: 0, lastBar: 3 }, ['other'])).toMatch('Nobody plays');
});
