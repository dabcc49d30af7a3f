import type { ChordQuality, Tension } from './chord.ts';

/** Tensions in the order in which a chord lists them. */
export const TENSIONS: readonly Tension[] = ['♭9', '9', '♯9', '11', '♯11', '♭13', '13'];

/** The signs before the figures of a chord symbol: what kind of third and fifth it has. */
export type Kind = 'plain' | 'minor' | 'diminished' | 'augmented' | 'half-diminished';

/**
 * Spellings of each kind at the start of what follows the root; plain has none. `m` does not begin
 * a minor chord in `ma7` or `maj7`, but does in `madd9`.
 */
export const KIND_SPELLINGS: ReadonlyArray<readonly [RegExp, Kind]> = [
  [/(?:MIN|Min|min|MI|Mi|mi|m(?!a(?!dd))|-|−)/, 'minor'],
  [/(?:DIM|Dim|dim|°|º|o)/, 'diminished'],
  [/(?:AUG|Aug|aug|\+)/, 'augmented'],
  [/(?:ø|Ø)/, 'half-diminished'],
];

/** Figures after the kind, longest first. */
export const FIGURES = /(?:6\/9|69|13|11|9|7|6|5)/;

/** The quality of a kind with its figure; 9, 11 and 13 are a 7 with tensions, 6/9 is a 6 with a 9. */
export const KIND_QUALITIES: Readonly<Record<Kind, Readonly<Record<string, ChordQuality>>>> = {
  plain: { '': 'major', '5': 'power', '6': 'major-sixth', '7': 'dominant-seventh' },
  minor: { '': 'minor', '6': 'minor-sixth', '7': 'minor-seventh' },
  diminished: { '': 'diminished', '7': 'diminished-seventh' },
  augmented: { '': 'augmented', '5': 'augmented', '7': 'augmented-seventh' },
  'half-diminished': { '': 'half-diminished-seventh', '7': 'half-diminished-seventh' },
};

/** What a figure stacks on the sixth or seventh it stands for. */
export const STACKS: Readonly<
  Record<string, { readonly on: string; readonly adds: readonly Tension[] }>
> = {
  '': { on: '', adds: [] },
  '5': { on: '5', adds: [] },
  '6': { on: '6', adds: [] },
  '69': { on: '6', adds: ['9'] },
  '6/9': { on: '6', adds: ['9'] },
  '7': { on: '7', adds: [] },
  '9': { on: '7', adds: ['9'] },
  '11': { on: '7', adds: ['9', '11'] },
  '13': { on: '7', adds: ['9', '11', '13'] },
};

/** What a later part of the symbol makes of a quality; where there is no entry the two do not go together. */
export type QualityChange = Readonly<Partial<Record<ChordQuality, ChordQuality>>>;

export const WITH_MAJOR_SIXTH: QualityChange = { major: 'major-sixth', minor: 'minor-sixth' };

export const WITH_MAJOR_SEVENTH: QualityChange = {
  major: 'major-seventh',
  minor: 'minor-major-seventh',
  augmented: 'augmented-major-seventh',
};

export const WITH_FLAT_FIFTH: QualityChange = {
  minor: 'diminished',
  'minor-seventh': 'half-diminished-seventh',
  'dominant-seventh': 'dominant-seventh-flat-five',
};

export const WITH_SHARP_FIFTH: QualityChange = {
  major: 'augmented',
  'dominant-seventh': 'augmented-seventh',
  'major-seventh': 'augmented-major-seventh',
};

export const WITH_FOURTH: QualityChange = {
  major: 'suspended-fourth',
  'dominant-seventh': 'dominant-seventh-suspended-fourth',
};

export const WITH_SECOND: QualityChange = { major: 'suspended-second' };

/** Figures with which a quality can be printed, least first; every other tension is written out. */
type PrintedFigures = readonly string[];

const SIXTHS: PrintedFigures = ['6', '6/9'];
const SEVENTHS: PrintedFigures = ['7', '9', '11', '13'];

/** How a quality is printed: signs, a figure, signs; qualities without figures add each tension. */
export type QualityPrint = {
  readonly before: string;
  readonly figures: PrintedFigures;
  readonly after: string;
};

/** The one printed spelling of each quality. */
export const QUALITY_PRINTS: Readonly<Record<ChordQuality, QualityPrint>> = {
  major: { before: '', figures: [], after: '' },
  minor: { before: 'm', figures: [], after: '' },
  augmented: { before: '+', figures: [], after: '' },
  diminished: { before: 'dim', figures: [], after: '' },
  'suspended-second': { before: 'sus2', figures: [], after: '' },
  'suspended-fourth': { before: 'sus4', figures: [], after: '' },
  power: { before: '5', figures: [], after: '' },
  'major-sixth': { before: '', figures: SIXTHS, after: '' },
  'minor-sixth': { before: 'm', figures: SIXTHS, after: '' },
  'dominant-seventh': { before: '', figures: SEVENTHS, after: '' },
  'major-seventh': { before: 'maj', figures: SEVENTHS, after: '' },
  'minor-seventh': { before: 'm', figures: SEVENTHS, after: '' },
  'minor-major-seventh': { before: 'mMaj', figures: SEVENTHS, after: '' },
  'diminished-seventh': { before: 'dim', figures: ['7'], after: '' },
  'half-diminished-seventh': { before: 'm', figures: SEVENTHS, after: '♭5' },
  'augmented-seventh': { before: '', figures: SEVENTHS, after: '♯5' },
  'augmented-major-seventh': { before: 'maj', figures: SEVENTHS, after: '♯5' },
  'dominant-seventh-flat-five': { before: '', figures: SEVENTHS, after: '♭5' },
  'dominant-seventh-suspended-fourth': { before: '', figures: SEVENTHS, after: 'sus4' },
};
