import { expect, it } from 'vitest';
import { formatChartBars } from '../../../../src/core/song/chart.ts';
import { voiceSection } from '../../../../src/core/voicing/voiceTimeline.ts';
import { DEFAULT_VOICING, heldKeys } from '../../../../src/core/voicing/voicing.ts';
import {
  barRequest,
  chordRequest,
  rowRequest,
  sectionRequest,
} from '../../../../src/ui/map/key/hearing.ts';
import { chord, meter, section, slots, valueOf } from '../../../support/music.ts';

const VERSE = section('verse', { slots: slots('| C | / / G / | N.C. |'), patternId: 'p' });
const HANDS = valueOf(voiceSection(VERSE.slots, DEFAULT_VOICING, 'loop'));

function chartOf(request: ReturnType<typeof barRequest>): string | undefined {
  return request && formatChartBars(request.phrase, request.phrase.meter);
}

it('plays a row of chords at its pace', () =>
  expect(chartOf(rowRequest([chord('G7'), chord('C')], meter('3/4'), 'half-bar'))).toBe(
    '| G7 / C |',
  ));

it('plays the section in its own hands', () => {
  const { phrase, patternId } = sectionRequest(VERSE, HANDS, { patternId: 'p' });
  expect(chartOf(sectionRequest(VERSE, HANDS))).toBe('| C | / / G / | N.C. |');
  expect(phrase.slots.map((slot) => slot.fixedKeys)).toEqual(HANDS.map(heldKeys));
  expect(patternId).toBe('p');
});

it('plays what sounds in one bar, a chord that goes on included', () => {
  expect(chartOf(barRequest(VERSE, 1, HANDS))).toBe('| C / G / |');
  expect(barRequest(VERSE, 3, HANDS)).toBeUndefined();
});

it('plays one chord for a bar, and nothing where none is', () => {
  expect(chartOf(chordRequest(VERSE, 1, HANDS))).toBe('| G |');
  expect(chordRequest(VERSE, 2, HANDS)).toBeUndefined();
});
