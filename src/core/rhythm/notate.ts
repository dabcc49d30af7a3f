import { type ChordSpan, type Timeline, type TimelineBar } from '../song/timeline.ts';
import { barTicks, beatStarts } from '../time/meter.ts';
import type { Ticks } from '../time/ticks.ts';
import type { HandName } from '../voicing/voicing.ts';
import type { Note } from './note.ts';
import type { Sheet, SheetBar, SheetChord, SheetEvent, SheetNote, SheetVoice } from './sheet.ts';
import { type Stem, staffVoices, stemsOf } from './staffVoices.ts';
import { nearestStepTick, type WrittenBar, writtenBar, writtenSpans } from './writtenLengths.ts';

/**
 * The hands' notes as they are written on two staves, bar by bar: note values split at beats and
 * bars with ties (`writtenSpans`; short notes end there instead), rests, triplets and other tuplets, beams within beats, staccato
 * and accents, one or two voices a staff, chord symbols where chords change and at the start. The
 * notes are straight: realise the patterns `withoutSwing`, swing is a word over the staff. What
 * stands between the finest steps that can be written moves to the nearest; other parts than the
 * hands, and what lies outside the timeline, are left out.
 */
export function notate(notes: readonly Note[], timeline: Timeline): Sheet {
  const voices: Readonly<Record<HandName, readonly (readonly Stem[])[]>> = {
    left: staffVoices(stemsOf(notes, 'left', timeline)),
    right: staffVoices(stemsOf(notes, 'right', timeline)),
  };
  return {
    bars: timeline.bars.map(
      (bar, index): SheetBar => ({
        startTick: bar.startTick,
        meter: bar.meter,
        section: bar.section,
        chords: chordsIn(timeline, bar, index),
        staves: {
          left: staffOf(voices.left, bar),
          right: staffOf(voices.right, bar),
        },
      }),
    ),
  };
}

function chordsIn(timeline: Timeline, bar: TimelineBar, index: number): SheetChord[] {
  const end = bar.startTick + barTicks(bar.meter);
  return timeline.chords
    .filter(({ startTick }) => startTick >= bar.startTick && startTick < end)
    .filter((span, i) => i > 0 || span.startTick > bar.startTick || isNew(timeline, span, index))
    .map(({ startTick, chord }) => ({ startTick, chord }));
}

/** Whether a chord at a bar line is to be written: always in a new section, otherwise where it is another chord. */
function isNew(timeline: Timeline, span: ChordSpan, bar: number): boolean {
  const before = timeline.chords[timeline.chords.indexOf(span) - 1];
  const newSection = timeline.bars[bar - 1]?.section !== timeline.bars[bar]?.section;
  return newSection || JSON.stringify(before?.chord) !== JSON.stringify(span.chord);
}

/** The voices of a staff in one bar, the higher first; the first fills the bar, the second may be missing. */
function staffOf(voices: readonly (readonly Stem[])[], bar: TimelineBar): SheetVoice[] {
  const end = bar.startTick + barTicks(bar.meter);
  const inBar = voices.map((stems) =>
    stems.filter(
      (stem) =>
        stem.startTick < end &&
        (isShort(stem) ? stem.startTick >= bar.startTick : stem.endTick > bar.startTick),
    ),
  );
  const used = inBar.filter((stems, i) => i === 0 || stems.length > 0);
  const busy = used.length > 1 ? used.filter((stems) => stems.length > 0) : used;
  return busy.toSorted((a, b) => averageKey(b) - averageKey(a)).map((stems) => voiceOf(stems, bar));
}

function averageKey(stems: readonly Stem[]): number {
  const keys = stems.flatMap((stem) => stem.keys);
  return keys.reduce((sum, key) => sum + key, 0) / keys.length;
}

/** A stretch of one bar (ticks from its bar line) that a stem fills, or a rest. */
type Filled = { readonly from: Ticks; readonly to: Ticks; readonly stem?: Stem };

function voiceOf(stems: readonly Stem[], bar: TimelineBar): SheetVoice {
  const length = barTicks(bar.meter);
  const ticks = stems.flatMap(({ startTick, endTick }) => [startTick, endTick]);
  const written = writtenBar(
    bar.meter,
    ticks.map((tick) => tick - bar.startTick),
  );
  const snapped = (tick: Ticks) =>
    Math.min(length, Math.max(0, nearestStepTick(written, tick - bar.startTick)));
  const filled = stems
    .map((stem) => ({ stem, from: snapped(stem.startTick), to: snapped(stem.endTick) }))
    .filter(({ from, to }) => to > from)
    .map((stretch) => untied(stretch, written, bar));
  if (filled.length === 0) return [barRest(bar)];
  const events = withRests(filled, length).flatMap((stretch) => eventsOf(stretch, written, bar));
  return withTupletEdges(withBeams(events, bar), written, bar);
}

function isShort({ articulations }: Stem): boolean {
  return articulations.includes('staccato');
}

/** A short note ends where it would have to be tied: what follows it is silent anyway. */
function untied<F extends Filled & { readonly stem: Stem }>(
  stretch: F,
  written: WrittenBar,
  bar: TimelineBar,
): F {
  const { from, to, stem } = stretch;
  const first = isShort(stem) ? writtenSpans(written, from, to, 'note')[0] : undefined;
  if (!first) return stretch;
  return { ...stretch, to: first.to, stem: { ...stem, endTick: bar.startTick + first.to } };
}

function barRest(bar: TimelineBar): SheetEvent {
  return {
    startTick: bar.startTick,
    durationTicks: barTicks(bar.meter),
    written: { value: 1, dots: 0 },
    notes: [],
    articulations: [],
    isBarRest: true,
  };
}

function withRests(filled: readonly Filled[], length: Ticks): Filled[] {
  const stretches = filled.flatMap((stretch, i): Filled[] => {
    const before = filled[i - 1]?.to ?? 0;
    return before < stretch.from ? [{ from: before, to: stretch.from }, stretch] : [stretch];
  });
  const last = filled.at(-1)!.to;
  return last < length ? [...stretches, { from: last, to: length }] : stretches;
}

function eventsOf({ from, to, stem }: Filled, written: WrittenBar, bar: TimelineBar): SheetEvent[] {
  const spans = writtenSpans(written, from, to, stem ? 'note' : 'rest');
  return spans.map((span, i) => ({
    startTick: bar.startTick + span.from,
    durationTicks: span.to - span.from,
    written: span.written,
    ...(stem ? struckEvent(stem, i, spans.length, bar) : { notes: [], articulations: [] }),
  }));
}

/** The heads of a stem in one of the written values it is split into inside a bar. */
function struckEvent(
  { startTick, endTick, keys, pitches, articulations }: Stem,
  index: number,
  count: number,
  bar: TimelineBar,
): Pick<SheetEvent, 'notes' | 'articulations'> {
  const tiedFromBefore = index > 0 || startTick < bar.startTick;
  const tiedToNext = index < count - 1 || endTick > bar.startTick + barTicks(bar.meter);
  return {
    notes: keys.map(
      (keyNumber, i): SheetNote => ({
        keyNumber,
        pitch: pitches[i]!,
        tiedFromBefore,
        tiedToNext,
      }),
    ),
    articulations: tiedFromBefore ? [] : articulations,
  };
}

/** Joins neighbouring notes shorter than a quarter inside each felt beat. */
function withBeams(events: readonly SheetEvent[], bar: TimelineBar): SheetEvent[] {
  const starts = beatStarts(bar.meter);
  const beatOf = ({ startTick }: SheetEvent) =>
    starts.findLastIndex((start) => start <= startTick - bar.startTick);
  const joins = (a: SheetEvent | undefined, b: SheetEvent | undefined) =>
    a !== undefined &&
    b !== undefined &&
    beatOf(a) === beatOf(b) &&
    [a, b].every(({ notes, written }) => notes.length > 0 && written.value >= 8);
  return events.map((event, i) => {
    const before = joins(events[i - 1], event);
    const after = joins(event, events[i + 1]);
    if (!before && !after) return event;
    return { ...event, beam: before ? (after ? 'continue' : 'end') : 'begin' };
  });
}

/** Marks the first and the last event of every tuplet. */
function withTupletEdges(
  events: readonly SheetEvent[],
  { tuplets }: WrittenBar,
  bar: TimelineBar,
): SheetEvent[] {
  const isIn = (event: SheetEvent | undefined, at: Ticks, end: Ticks) =>
    event?.written.tuplet !== undefined &&
    event.startTick - bar.startTick >= at &&
    event.startTick - bar.startTick < end;
  return events.map((event, i) => {
    const tuplet = tuplets.find(({ at, end }) => isIn(event, at, end));
    if (!tuplet) return event;
    if (!isIn(events[i - 1], tuplet.at, tuplet.end)) return { ...event, tupletEdge: 'start' };
    return isIn(events[i + 1], tuplet.at, tuplet.end) ? event : { ...event, tupletEdge: 'stop' };
  });
}
