import type { Pitch } from '../../../core/harmony/pitch.ts';
import type { Articulation, SheetBar, SheetEvent, SheetNote } from '../../../core/rhythm/sheet.ts';
import { formatMeter } from '../../../core/time/meter.ts';
import type { Ticks } from '../../../core/time/ticks.ts';
import type { HandName } from '../../../core/voicing/voicing.ts';
import { chordText } from './columns.ts';
import { type Notation, STAVES } from './notation.ts';
import { type SheetCount, sheetCounts } from './sheetCounts.ts';

const SIGN_WORDS: Readonly<Record<string, string>> = {
  '♭': ' flat ',
  '♯': ' sharp ',
  '♮': ' natural ',
  '°': ' diminished ',
  ø: ' half-diminished ',
  Δ: ' major ',
};

const SIGNS: Readonly<Record<number, string>> = {
  [-2]: ' double flat',
  [-1]: ' flat',
  0: '',
  1: ' sharp',
  2: ' double sharp',
};

const MARK_WORDS: Readonly<Record<Articulation, string>> = {
  staccato: 'short',
  accent: 'accented',
  ghost: 'hardly heard',
};

const TUPLET_WORDS: Readonly<Record<number, string>> = {
  2: 'duplet',
  3: 'triplet',
  4: 'quadruplet',
};

/**
 * What a sheet shows, as one says it: what it is, its meter and key, then bar by bar the chords and
 * what each hand strikes on which counts, how (short, accented), and what is held from the bar
 * before. A bar that is like the one before it is told as such. Octaves change at C, middle C is C4.
 */
export function spokenNotation(notation: Notation): string {
  const bars = notation.sheet.bars.map((bar) => barWords(bar, notation.kind));
  const told = bars.map((words, i) => {
    const isSame = i > 0 && words === bars[i - 1];
    return `Bar ${i + 1}${isSame ? ' is the same.' : words}`;
  });
  return [`${notation.title}, ${headWords(notation)}.`, ...told].join(' ');
}

function headWords({ sheet, key, kind }: Notation): string {
  const { tonic, mode } = key;
  const keyWords = `in ${tonic.letter}${SIGNS[tonic.alteration] ?? ''} ${mode}`;
  const meter = sheet.bars[0]?.meter;
  if (kind === 'chords' || !meter) return `chords ${keyWords}`;
  const { length } = sheet.bars;
  return `${length === 1 ? '1 bar' : `${length} bars`} of ${formatMeter(meter)} ${keyWords}`;
}

function barWords(bar: SheetBar, kind: Notation['kind']): string {
  const chords = bar.chords.map((chord) => spokenChord(chordText(chord))).join(', ');
  const hands = STAVES.map((hand) => `${hand} hand ${handWords(bar, hand, kind)}`).join('; ');
  return `${chords ? `, ${chords}` : ''}: ${hands}.`;
}

function spokenChord(text: string): string {
  const words = text.split('').map((letter) => SIGN_WORDS[letter] ?? letter);
  return words.join('').replaceAll('  ', ' ').trim();
}

/** What is struck at one moment, and how it is said. */
type Struck = { readonly what: string; readonly when: string };

function handWords(bar: SheetBar, hand: HandName, kind: Notation['kind']): string {
  const events = bar.staves[hand]
    .flat()
    .filter(({ notes }) => notes.length > 0)
    .toSorted((a, b) => a.startTick - b.startTick);
  const held = events
    .filter(({ startTick }) => startTick === bar.startTick)
    .flatMap(({ notes }) => notes.filter(({ tiedFromBefore }) => tiedFromBefore));
  const counts = kind === 'in-time' ? sheetCounts(bar) : [];
  const struck = events.flatMap((event): Struck[] => {
    const notes = event.notes.filter(({ tiedFromBefore }) => !tiedFromBefore);
    if (notes.length === 0) return [];
    return [{ what: struckWords(notes, event.articulations), when: whenWords(event, counts) }];
  });
  const words = [
    ...(held.length > 0 ? [`${notesWords(held)} held from before`] : []),
    ...gathered(struck),
  ];
  return words.length === 0 ? 'rests' : words.join(', ');
}

/** The same thing struck several times is named once, with all its counts. */
function gathered(struck: readonly Struck[]): string[] {
  const whens = new Map<string, string[]>();
  for (const { what, when } of struck) whens.set(what, [...(whens.get(what) ?? []), when]);
  return [...whens].map(([what, when]) => `${what} ${when.join(', ')}`.trim());
}

function struckWords(notes: readonly SheetNote[], marks: readonly Articulation[]): string {
  return [notesWords(notes), ...marks.map((mark) => MARK_WORDS[mark])].join(' ');
}

function notesWords(notes: readonly SheetNote[]): string {
  const names = notes.map(({ pitch }) => pitchWords(pitch));
  return names.length < 2 ? names.join('') : `${names.slice(0, -1).join(' ')} and ${names.at(-1)}`;
}

function pitchWords({ letter, alteration, octave }: Pitch): string {
  const sign = SIGNS[alteration] ?? '';
  return sign === '' ? `${letter}${octave}` : `${letter}${sign} ${octave}`;
}

/** "on 2", "on 2 and", "on 2 a of the triplet"; nothing where nothing is counted. */
function whenWords({ startTick, written }: SheetEvent, counts: readonly SheetCount[]): string {
  const count = counts.find(({ tick }) => tick === startTick);
  if (!count) return counts.length === 0 ? '' : 'between the counts';
  if (isNumber(count)) return `on ${count.text}`;
  const beat = beatBefore(startTick, counts);
  const syllable = count.text === '&' ? 'and' : count.text;
  const tuplet = written.tuplet && TUPLET_WORDS[written.tuplet.actual];
  return `on ${beat} ${syllable}${tuplet ? ` of the ${tuplet}` : ''}`;
}

function beatBefore(tick: Ticks, counts: readonly SheetCount[]): string {
  return counts.findLast((count) => count.tick <= tick && isNumber(count))?.text ?? '';
}

function isNumber({ text }: SheetCount): boolean {
  return /^\d/.test(text);
}
