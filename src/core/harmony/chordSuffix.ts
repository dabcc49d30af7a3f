import { err, ok, type Result } from '../result.ts';
import type { Chord, ChordQuality, Tension } from './chord.ts';
import {
  FIGURES,
  KIND_QUALITIES,
  KIND_SPELLINGS,
  QUALITY_PRINTS,
  type QualityChange,
  STACKS,
  TENSIONS,
  WITH_FLAT_FIFTH,
  WITH_FOURTH,
  WITH_MAJOR_SEVENTH,
  WITH_MAJOR_SIXTH,
  WITH_SECOND,
  WITH_SHARP_FIFTH,
} from './chordSpellings.ts';

/** What follows the root of a chord symbol. */
export type ChordSuffix = Pick<Chord, 'quality' | 'tensions'>;

/** A suffix read so far: tensions that a figure stacks up can still be replaced by altered ones. */
type Draft = {
  readonly quality: ChordQuality;
  readonly stacked: readonly Tension[];
  readonly added: readonly Tension[];
};

/** A piece of a suffix: how it is spelled and what it makes of the draft; nothing where it does not fit. */
type Part = {
  readonly spelling: RegExp;
  readonly apply: (draft: Draft, sign: string) => Draft | undefined;
};

const FLAT_SIGNS = '[♭b−-]';
const SHARP_SIGNS = '[♯#+]';

const SHORT_ADDITIONS: Readonly<Record<string, Tension>> = { '2': '9', '4': '11' };

function changed(draft: Draft, change: QualityChange): Draft | undefined {
  const quality = change[draft.quality];
  return quality && { ...draft, quality };
}

function withTension(draft: Draft, text: string): Draft | undefined {
  const tension = TENSIONS.find((t) => t === text);
  return tension && { ...draft, added: [...draft.added, tension] };
}

function inPrintedSigns(text: string): string {
  return text
    .replace(new RegExp(`^${FLAT_SIGNS}`), '♭')
    .replace(new RegExp(`^${SHARP_SIGNS}`), '♯');
}

function withMajorFigure(draft: Draft, sign: string): Draft | undefined {
  const figure = /[\d/]*$/.exec(sign)?.[0] ?? '';
  const stack = STACKS[figure === '' && /[Δ∆△]/.test(sign) ? '7' : figure];
  if (!stack) return undefined;
  if (stack.on === '') return draft.quality === 'major' ? draft : undefined;
  const next = changed(draft, stack.on === '6' ? WITH_MAJOR_SIXTH : WITH_MAJOR_SEVENTH);
  return next && { ...next, stacked: stack.adds };
}

/** What a figure stacks on a quality: the suspended fourth is the eleventh and does not come twice. */
function stackedOn(quality: ChordQuality, tensions: readonly Tension[]): readonly Tension[] {
  return quality === 'dominant-seventh-suspended-fourth'
    ? tensions.filter((tension) => tension !== '11')
    : tensions;
}

function withFourth(draft: Draft): Draft | undefined {
  const next = changed(draft, WITH_FOURTH);
  return next && { ...next, stacked: stackedOn(next.quality, next.stacked) };
}

function withAddition(draft: Draft, sign: string): Draft | undefined {
  const degree = inPrintedSigns(sign.slice('add'.length));
  return degree === '6'
    ? changed(draft, WITH_MAJOR_SIXTH)
    : withTension(draft, SHORT_ADDITIONS[degree] ?? degree);
}

/** An altered dominant is read as ♯5 and ♯9 (common practice). */
function altered(draft: Draft): Draft | undefined {
  return draft.quality === 'dominant-seventh'
    ? withTension({ ...draft, quality: 'augmented-seventh' }, '♯9')
    : undefined;
}

/** What can follow kind and figure, in brackets or not; the first spelling that matches is taken. */
const PARTS: readonly Part[] = [
  { spelling: /(?:MAJ|Maj|maj|MA|Ma|ma|M|Δ|∆|△)(?:6\/9|69|13|11|9|7|6)?/, apply: withMajorFigure },
  { spelling: /sus2/, apply: (draft) => changed(draft, WITH_SECOND) },
  { spelling: /sus4?/, apply: withFourth },
  { spelling: /add[♭b♯#]?\d+/, apply: withAddition },
  { spelling: /alt/, apply: altered },
  { spelling: new RegExp(`${FLAT_SIGNS}5`), apply: (draft) => changed(draft, WITH_FLAT_FIFTH) },
  { spelling: new RegExp(`${SHARP_SIGNS}5`), apply: (draft) => changed(draft, WITH_SHARP_FIFTH) },
  {
    spelling: new RegExp(`(?:${FLAT_SIGNS}|${SHARP_SIGNS})(?:9|11|13)`),
    apply: (draft, sign) => withTension(draft, inPrintedSigns(sign)),
  },
  { spelling: /\+|aug/, apply: (draft) => changed(draft, WITH_SHARP_FIFTH) },
];

const BRACKETED_PARTS: readonly Part[] = [
  ...PARTS,
  { spelling: /9|11|13/, apply: withTension },
  { spelling: /[, ]/, apply: (draft) => draft },
];

/** The text that a pattern matches exactly at a place; undefined if it does not match there. */
export function matchAt(pattern: RegExp, text: string, at: number): string | undefined {
  const sticky = new RegExp(pattern.source, 'y');
  sticky.lastIndex = at;
  return sticky.exec(text)?.[0];
}

/** A draft and the place behind what was read; without a draft, the place where reading stopped. */
type Reading = { readonly draft: Draft | undefined; readonly at: number };

function readKindAndFigure(text: string, from: number): Reading {
  const spelled = KIND_SPELLINGS.find(([spelling]) => matchAt(spelling, text, from));
  const at = from + (spelled ? (matchAt(spelled[0], text, from) ?? '').length : 0);
  const figure = matchAt(FIGURES, text, at) ?? '';
  const stack = STACKS[figure];
  const quality = stack && KIND_QUALITIES[spelled?.[1] ?? 'plain'][stack.on];
  return quality
    ? { draft: { quality, stacked: stack.adds, added: [] }, at: at + figure.length }
    : { draft: undefined, at };
}

function readPart(text: string, draft: Draft, at: number, parts: readonly Part[]): Reading {
  const part = parts.find(({ spelling }) => matchAt(spelling, text, at));
  const sign = part && matchAt(part.spelling, text, at);
  const next = sign === undefined ? undefined : part?.apply(draft, sign);
  return { draft: next, at: next && sign ? at + sign.length : at };
}

function readDraft(text: string, from: number): Reading {
  let { draft, at } = readKindAndFigure(text, from);
  let bracketed = false;
  while (draft && at < text.length && (bracketed || text[at] !== '/')) {
    if (text[at] === (bracketed ? ')' : '(')) {
      bracketed = !bracketed;
      at++;
    } else ({ draft, at } = readPart(text, draft, at, bracketed ? BRACKETED_PARTS : PARTS));
  }
  return { draft: bracketed ? undefined : draft, at };
}

/** Tensions in order: an altered one takes the place of the plain one that a figure stacks up. */
function settledTensions(stacked: readonly Tension[], added: readonly Tension[]): Tension[] {
  const replaced = (plain: Tension) => added.some((t) => t !== plain && t.endsWith(plain));
  return TENSIONS.filter((t) => added.includes(t) || (stacked.includes(t) && !replaced(t)));
}

/**
 * Reads what stands behind a root or a scale degree, from place `from` to the end or to a slash:
 * `m7♭5`, `sus4`, nothing for a major triad. Gives the suffix and the place behind it, or the place
 * of the first character that is not understood.
 */
export function readChordSuffix(
  text: string,
  from: number,
): Result<{ readonly suffix: ChordSuffix; readonly end: number }, number> {
  const { draft, at } = readDraft(text, from);
  if (!draft) return err(at);
  const tensions = settledTensions(draft.stacked, draft.added);
  return ok({ suffix: { quality: draft.quality, tensions }, end: at });
}

/** The printed form of what follows a root; `readChordSuffix` reads it back. */
export function formatChordSuffix({ quality, tensions }: ChordSuffix): string {
  const { before, figures, after } = QUALITY_PRINTS[quality];
  if (figures.length === 0) return before + after + tensions.map((t) => `add${t}`).join('');
  const alterations = tensions.filter((tension) => /[♭♯]/.test(tension));
  const figure = figures.find((candidate) => {
    const stacked = stackedOn(quality, STACKS[candidate]?.adds ?? []);
    return settledTensions(stacked, alterations).join() === tensions.join();
  });
  return figure === undefined
    ? `${before}${figures[0]}${after}(${tensions.join(',')})`
    : before + figure + after + alterations.join('');
}
