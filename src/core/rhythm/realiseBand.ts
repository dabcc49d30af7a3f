import type { Chord } from '../harmony/chord.ts';
import type { KeyNumber } from '../harmony/pitch.ts';
import type { Timeline } from '../song/timeline.ts';
import { barTicks } from '../time/meter.ts';
import { keysOfHand, type Voicing } from '../voicing/voicing.ts';
import { bassGuitarKey, bassGuitarRoot, DRUM_SOUND, guitarKeys } from './bandKeys.ts';
import { type ChordLine, chordLine } from './chordLine.ts';
import type { DrumPart } from './drumVoices.ts';
import { type LaidBar, layBars, swingOf } from './laidBars.ts';
import type { Note } from './note.ts';
import { cutOverlaps, moveNotes } from './noteList.ts';
import { onlyWhereMeterFits, type PatternAt } from './patternAt.ts';
import { type BarEvent, eventsInBar, type PlacedEvent, placeEvents } from './placedEvents.ts';
import type { RealiseOptions } from './realise.ts';
import { soundingNotes } from './sounding.ts';
import {
  PLAYED_PRESENCE,
  SOURCE_PARTS,
  type SourcePart,
  type Stroke,
  USUAL_TONE,
} from './sources.ts';
import { bassKeys, isVoiceTone, voiceKeys } from './toneKeys.ts';
import type { BassTone, VoiceTone } from './tones.ts';

type PitchedPart = Exclude<SourcePart, DrumPart>;

/** Velocity of a stroke: its strength as a share of MIDI's 127. */
export function strokeVelocity(strength: number): number {
  return Math.min(127, Math.max(1, Math.round(strength * 127)));
}

/**
 * The notes that the band plays: the sources of the patterns over the chords of a timeline, swung
 * and sorted as `realise` does it; each note's part is that of its source. `voicings` as for
 * `realise`. Bars without a pattern, or in another meter than their pattern's, are silent.
 *
 * Drums sound as `DRUM_SOUND` says, whatever the chord, through N.C. as well. The bass plays its
 * degrees on a bass guitar (`bassGuitarKey`); picking and strumming take voices out of six strings
 * (`guitarKeys`), a sung line out of the right hand's voicing. A stroke without pitch sounds the
 * root in the bass, the whole chord in strumming, the top voice in picking and singing.
 *
 * Chords change under strokes as under hits. A pitched stroke takes the chord it leads into where a
 * hand's hit at the same tick anticipates (the band pushes with the hands), and where it starts less
 * than a felt beat before a change and sounds over it, as players mean it. The band
 * plays no endings: its bars simply go on. Strokes under `PLAYED_PRESENCE` are left out.
 */
export function realiseBand(
  timeline: Timeline,
  voicings: readonly Voicing[],
  patternAt: PatternAt,
  options: RealiseOptions = {},
): Note[] {
  const laid = layBars(timeline, onlyWhereMeterFits(patternAt));
  if (!laid.ok) throw new Error(`bar ${laid.error.bar} has a pattern of another meter`);
  const course = options.loop ? 'loop' : 'once';
  const line = chordLine(timeline, course);
  const notes = SOURCE_PARTS.flatMap((part) => {
    const strokes = placeEvents(timeline, laid.value, course, (bar) => strokesInBar(bar, part));
    return isDrum(part) ? drumNotes(part, strokes) : pitchedNotes(part, strokes, line, voicings);
  });
  return moveNotes(cutOverlaps(notes), swingOf(timeline, laid.value));
}

function isDrum(part: SourcePart): part is DrumPart {
  return part in DRUM_SOUND;
}

/** A stroke, and whether a hand anticipates at its tick. */
type HeardStroke = Stroke & { readonly isPushed: boolean };

function strokesInBar({ pattern, patternBar }: LaidBar, part: SourcePart): BarEvent<HeardStroke>[] {
  const hits = [...pattern.left, ...pattern.right];
  const pushes = new Set(hits.filter((hit) => hit.anticipates).map((hit) => hit.at));
  return pattern.sources
    .filter((source) => source.part === part)
    .flatMap((source) =>
      eventsInBar(
        source.strokes
          .filter((stroke) => stroke.presence >= PLAYED_PRESENCE)
          .map((stroke) => ({ ...stroke, isPushed: pushes.has(stroke.at) })),
        patternBar,
        barTicks(pattern.meter),
      ),
    )
    .toSorted((a, b) => a.inBar - b.inBar);
}

function drumNotes(part: DrumPart, strokes: readonly PlacedEvent<Stroke>[]): Note[] {
  return strokes.map(({ event, startTick, endTick, patternTick }) => ({
    part,
    keyNumber: DRUM_SOUND[part],
    startTick,
    durationTicks: endTick - startTick,
    velocity: strokeVelocity(event.strength),
    patternTick,
  }));
}

function pitchedNotes(
  part: PitchedPart,
  strokes: readonly PlacedEvent<HeardStroke>[],
  line: ChordLine,
  voicings: readonly Voicing[],
): Note[] {
  const chordOf = (place: number): Chord | undefined => {
    const chord = line.spanAt(place)?.chord;
    return chord === 'no-chord' ? undefined : chord;
  };
  return soundingNotes<HeardStroke>(strokes, line, {
    part,
    anticipates: (stroke, ticksToChange, beatTicks) =>
      stroke.isPushed || (ticksToChange < beatTicks && stroke.length > ticksToChange),
    soundingTicks: (_stroke, ticks) => ticks,
    velocityOf: (stroke) => strokeVelocity(stroke.strength),
    keysOf: (stroke, place, nextPlace) => {
      const chord = chordOf(place);
      if (!chord) return [];
      const next = chordOf(nextPlace ?? place + 1) ?? chord;
      const voices =
        part === 'sung'
          ? keysOfHand(voicings[place % line.count] ?? [], 'right')
          : guitarKeys(chord);
      const keys = stroke.what.flatMap((what) => {
        const tone = what === 'unpitched' ? USUAL_TONE[part] : what;
        return part === 'bass'
          ? [bassGuitarKey(isVoiceTone(tone) ? 'root' : tone, chord, bassGuitarRoot(next))]
          : chordKeys(tone, chord, voices, next);
      });
      return [...new Set(keys)].toSorted((a, b) => a - b);
    },
  });
}

/** A tone of the parts that play chords: a voice of the held ones, or (a picking thumb) a bass tone over the lowest. */
function chordKeys(
  tone: BassTone | VoiceTone,
  chord: Chord,
  voices: readonly KeyNumber[],
  next: Chord,
): KeyNumber[] {
  if (isVoiceTone(tone)) return voiceKeys(tone, voices);
  return bassKeys(tone, chord, voices.slice(0, 1), guitarKeys(next)[0]!);
}
