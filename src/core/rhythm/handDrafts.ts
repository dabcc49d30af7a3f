import type { Ticks } from '../time/ticks.ts';
import type { HandName } from '../voicing/voicing.ts';
import type { StrokeLength, StrokePlay } from './handRules.ts';
import type { Touch } from './pattern.ts';
import { PLAYED_PRESENCE, type Source, type Stroke, type StrokeTone } from './sources.ts';
import { BASS_TONES, type BassTone, VOICE_TONES, type VoiceTone } from './tones.ts';

type Tone = BassTone | VoiceTone;

/** A hit before its length is settled. */
export type Draft = {
  readonly at: Ticks;
  readonly play: readonly Tone[];
  readonly touch: Touch;
  readonly length: StrokeLength;
  readonly ownLength: Ticks;
};

/** Strokes of at least this share of their source's strongest are accents, under that ghosts, … */
const ACCENT_SHARE = 0.87;
const GHOST_SHARE = 0.55;

/** … unless they all are about alike: then none stands out. */
const ALIKE_RANGE = 0.15;

/** Accents that more than this share of a hand's hits would get tell nothing and are left out. */
const ACCENTED_SHARE = 0.6;

function weightOf(strokes: readonly Stroke[]): number {
  return strokes.reduce((sum, s) => sum + s.presence * s.strength, 0);
}

/** The strokes that are played in half of the bars or more, of the part's busiest source. */
export function strokesOf(sources: readonly Source[], part: Source['part']): readonly Stroke[] {
  return sources
    .filter((source) => source.part === part)
    .map(({ strokes }) => strokes.filter((s) => s.presence >= PLAYED_PRESENCE))
    .reduce<readonly Stroke[]>((best, s) => (weightOf(s) > weightOf(best) ? s : best), []);
}

/** How each stroke is touched, beside the others of its source. */
function touchOf(stroke: Stroke, all: readonly Stroke[]): Touch {
  const strengths = all.map((s) => s.strength);
  const strongest = Math.max(...strengths);
  if (strongest - Math.min(...strengths) < ALIKE_RANGE) return 'plain';
  if (stroke.strength < GHOST_SHARE * strongest) return 'ghost';
  return stroke.strength >= ACCENT_SHARE * strongest ? 'accent' : 'plain';
}

/** Whether a stroke is an accent beside the others of its source. */
export function isStandingOut(stroke: Stroke, all: readonly Stroke[]): boolean {
  return touchOf(stroke, all) === 'accent';
}

/** Voices that lie under one hand without moving it: a triad and its octave. */
const VOICES_IN_REACH = 4;

/** Number of a single voice from the bottom; 0 for any other tone. */
function voiceNumber(tone: StrokeTone): number {
  return Number(/^voice-(\d)$/.exec(tone)?.[1] ?? 0);
}

/** Picked voices, drawn together where they use more than lie under one hand; other tones as they are. */
function inReach(strokes: readonly Stroke[]): Stroke[] {
  const highest = Math.max(...strokes.flatMap(({ what }) => what.map(voiceNumber)));
  if (highest <= VOICES_IN_REACH) return [...strokes];
  const drawn = (tone: StrokeTone): StrokeTone => {
    const voice = voiceNumber(tone);
    return voice === 0
      ? tone
      : (`voice-${Math.ceil((voice * VOICES_IN_REACH) / highest)}` as StrokeTone);
  };
  return strokes.map((stroke) => ({ ...stroke, what: [...new Set(stroke.what.map(drawn))] }));
}

/** The tones that a hand can play of those asked for; what it can't becomes its plainest tone. */
function tonesFor(hand: HandName, play: StrokePlay, stroke: Pick<Stroke, 'what'>): Tone[] {
  const asked: readonly string[] = play === 'own' ? stroke.what : play;
  const known: readonly Tone[] = hand === 'left' ? BASS_TONES : VOICE_TONES;
  const tones = known.filter((tone) => asked.includes(tone));
  return tones.length > 0 ? tones : [hand === 'left' ? 'root' : 'all'];
}

/** Strokes of a source as hits of a hand. */
export function draftsOf(
  hand: HandName,
  strokes: readonly Stroke[],
  { play, length }: { readonly play: StrokePlay; readonly length: StrokeLength },
): Draft[] {
  return inReach(strokes).map((stroke) => ({
    at: stroke.at,
    play: tonesFor(hand, play, stroke),
    touch: touchOf(stroke, strokes),
    length,
    ownLength: stroke.length,
  }));
}

/** Both lists as one, ascending; where they meet the first one's tones stay, and the heavier touch. */
export function merged(first: readonly Draft[], second: readonly Draft[]): Draft[] {
  const weights: Readonly<Record<Touch, number>> = { ghost: 0, plain: 1, accent: 2 };
  const bySecond = new Map(second.map((draft) => [draft.at, draft]));
  const kept = first.map((draft) => {
    const other = bySecond.get(draft.at);
    return other && weights[other.touch] > weights[draft.touch]
      ? { ...draft, touch: other.touch }
      : draft;
  });
  const taken = new Set(first.map((draft) => draft.at));
  return [...kept, ...second.filter((draft) => !taken.has(draft.at))].toSorted(
    (a, b) => a.at - b.at,
  );
}

/** Accents where the other source strikes too, unless nearly every hit would get one. */
export function accented(drafts: readonly Draft[], strokes: readonly Stroke[]): Draft[] {
  const struck = new Set(
    strokes.filter((s) => touchOf(s, strokes) !== 'ghost').map((stroke) => stroke.at),
  );
  const result = drafts.map((draft) =>
    struck.has(draft.at) && draft.touch === 'plain'
      ? { ...draft, touch: 'accent' as const }
      : draft,
  );
  const accents = result.filter((draft) => draft.touch === 'accent').length;
  return accents <= ACCENTED_SHARE * result.length ? result : [...drafts];
}

/** The accents; where there are none, all that is not a ghost. */
export function standingOut(drafts: readonly Draft[]): Draft[] {
  const accents = drafts.filter((draft) => draft.touch === 'accent');
  return accents.length > 0 ? accents : drafts.filter((draft) => draft.touch !== 'ghost');
}
