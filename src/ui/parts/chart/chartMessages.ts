import type { ChordTextError } from '../../../core/harmony/chordText.ts';
import { unreachable } from '../../../core/result.ts';
import type { ChartError } from '../../../core/song/chartBar.ts';
import type { ChartPlace } from '../../../core/song/chartText.ts';
import type { MeterError } from '../../../core/time/meter.ts';

/** Why a typed chord (symbol, numeral or number) was not understood, where it stops, what to type instead. */
export function chordSymbolSentence(error: ChordTextError): string {
  const { text, at } = error;
  const symbol = text.trim();
  const read = text.slice(0, at).trim();
  const rest = text.slice(at).trim();
  switch (error.kind) {
    case 'no-root':
      return symbol === ''
        ? 'Type a chord that begins with a capital letter from A to G, such as D, F♯m or B♭7.'
        : `“${symbol}” does not begin with a note. Begin with a capital letter from A to G, such as F♯m7.`;
    case 'unknown-quality':
      return read === ''
        ? `“${symbol}” is no kind of chord that is known here.`
        : `“${symbol}” is understood as far as “${read}”, but not “${rest}” after it. Kinds of chord are written as in m7, maj7, 7♯9, sus4, dim or °.`;
    case 'unknown-bass':
      return `After the slash of “${symbol}” stands the bass note, a capital letter from A to G, such as C/E.`;
    case 'no-degree':
      return `“${symbol}” names no step of the key. Numerals go from I to VII, numbers from 1 to 7.`;
    case 'unknown-target':
      return `After the slash of “${symbol}” stands a step of the key, such as V7/ii, I/3 or 1/3.`;
    default:
      return unreachable(error);
  }
}

/** Why a text is no meter, and how meters are written. */
export function meterSentence(error: MeterError): string {
  switch (error.kind) {
    case 'not-a-meter':
      return `“${error.text}” is no meter. Write beats over note value, such as 4/4, 6/8 or 2+2+3/8, with at most 32 beats.`;
    case 'unit':
      return `In “${error.text}” the lower figure must be 2, 4, 8 or 16.`;
    case 'groups-do-not-add-up':
      return `The groups of “${error.text}” do not add up to ${error.beats}.`;
    default:
      return unreachable(error);
  }
}

/** Where something stands in a chart's text, counted from 1 as people do. */
function placeText({ bar, line, column }: ChartPlace): string {
  const place = line > 1 ? `line ${line}, column ${column + 1}` : `column ${column + 1}`;
  return `Bar ${bar}, ${place}`;
}

function counted(count: number, one: string): string {
  return `${count} ${one}${count === 1 ? '' : 's'}`;
}

/** What is wrong at a place, as the rest of a sentence after the place. */
function faultText(error: Extract<ChartError, ChartPlace>): string {
  switch (error.kind) {
    case 'empty-bar':
      return 'this bar is empty. Write a chord, / to go on with the chord before, or N.C.';
    case 'beats-do-not-fit':
      return error.tokens > error.beats
        ? `“${error.text}” is one too many: the bar has ${counted(error.beats, 'beat')} but ${error.tokens} signs. Take some out, or begin the bar with its own meter.`
        : `${counted(error.tokens, 'sign')} for ${counted(error.beats, 'beat')} leaves it open where the chords change. Write one sign for each beat, with / where a chord goes on.`;
    case 'nothing-to-hold':
      return 'there is no chord before that / could go on with. Begin with a chord or N.C.';
    case 'nothing-to-repeat':
      return 'there is no bar before that % could repeat.';
    case 'repeat-with-chords':
      return '% repeats the whole bar before, so nothing else can stand in its bar.';
    case 'repeat-of-other-meter':
      return '% can’t repeat the bar before, which has another meter. Write the chords out.';
    case 'bad-meter':
      return meterSentence(error.error);
    case 'unknown-chord':
      return chordSymbolSentence(error.error);
    default:
      return unreachable(error);
  }
}

/** Why a text is no chart: where, what, and what to do. */
export function chartSentence(error: ChartError): string {
  switch (error.kind) {
    case 'empty-chart':
      return 'A section needs at least one bar. Write a chord, or N.C. for a bar without one.';
    case 'too-much-text':
      return `This text has ${shown(error.characters)} characters; a section’s chart has ${shown(error.most)} at the most. Divide it into sections.`;
    case 'too-many-bars':
      return `These are ${shown(error.bars)} bars; a section has ${shown(error.most)} at the most. Divide it into sections, or leave some out.`;
    default:
      return `${placeText(error)}: ${faultText(error)}`;
  }
}

/** Why what was typed into a cell of the chart was not understood. */
export function entrySentence(error: ChordTextError | ChartError): string {
  return isChordError(error) ? chordSymbolSentence(error) : chartSentence(error);
}

function isChordError(error: ChordTextError | ChartError): error is ChordTextError {
  return 'at' in error && !('bar' in error);
}

/** A number as it is read, with its thousands apart. */
function shown(count: number): string {
  return count.toLocaleString('en');
}
