import type { SectionId } from '../ids.ts';
import { err, ok, type Result } from '../result.ts';
import type { ChordSpan, Timeline } from '../song/timeline.ts';
import { type ChordToVoice, candidateLayers, isSilent } from './candidateLayers.ts';
import { stepsOf, type VoicingCourse } from './course.ts';
import { shortestPath } from './shortestPath.ts';
import { holdCost, stepCost } from './terms.ts';
import { heldKeys, type Voicing, type VoicingSettings } from './voicing.ts';

/**
 * The hands for every chord span of a timeline, in order; N.C. gets the empty voicing. Every section
 * is voiced once, as a loop (`voiceSection`) over as much of it as some playing plays of its own bars,
 * so that its hands are the same at each return: spans of the same section identity and slot share
 * one voicing. The other ending of a playing is voiced as a path from the hands before it to those
 * after it, both of which stay as they are. The error names the first span that two hands cannot play
 * under the settings.
 */
export function voiceTimeline(
  timeline: Timeline,
  settings: VoicingSettings,
): Result<Voicing[], { readonly kind: 'nothing-playable'; readonly span: ChordSpan }> {
  const { chords } = timeline;
  const unplayable = candidateLayers(chords, settings).findIndex((layer) => layer.length === 0);
  if (unplayable >= 0) return err({ kind: 'nothing-playable', span: chords[unplayable]! });
  const hands = sectionHands(timeline, settings);
  for (const { from, to } of endingStretches(chords)) {
    const before = neighbour(chords, hands, from - 1, -1);
    const after = neighbour(chords, hands, to, 1);
    const stretch = [...before, ...chords.slice(from, to), ...after];
    const voiced = playable(voiceSection(stretch, settings, 'path')).slice(before.length);
    hands.splice(from, to - from, ...voiced.slice(0, to - from));
  }
  return ok(hands.map((voicing) => voicing!));
}

/** The voicings of chords that are known to be playable. */
function playable(voiced: ReturnType<typeof voiceSection>): Voicing[] {
  if (!voiced.ok) throw new Error(`chord ${voiced.error.place} has lost its candidates`);
  return voiced.value;
}

/** For each span its section's hands; nothing yet for those in endings. */
function sectionHands(timeline: Timeline, settings: VoicingSettings): (Voicing | undefined)[] {
  const written = new Map<SectionId, ChordSpan[]>();
  const sectionOf = ({ section }: ChordSpan) => timeline.sections[section]!.sectionId;
  for (const span of timeline.chords) {
    const known = written.get(sectionOf(span)) ?? [];
    if (!span.inEnding && span.slot === known.length)
      written.set(sectionOf(span), [...known, span]);
  }
  const voiced = new Map(
    [...written].map(([id, spans]) => [id, playable(voiceSection(spans, settings, 'loop'))]),
  );
  return timeline.chords.map((span) =>
    span.inEnding ? undefined : voiced.get(sectionOf(span))?.[span.slot],
  );
}

/** Where spans in endings follow each other: places of the first and behind the last. */
function endingStretches(chords: readonly ChordSpan[]): { from: number; to: number }[] {
  const stretches: { from: number; to: number }[] = [];
  for (const [place, { inEnding }] of chords.entries()) {
    const last = stretches.at(-1);
    if (!inEnding) continue;
    if (last?.to === place) last.to = place + 1;
    else stretches.push({ from: place, to: place + 1 });
  }
  return stretches;
}

/** The chord that sounds next to a place, on either side, pinned to its hands; none where these are not known yet. */
function neighbour(
  chords: readonly ChordSpan[],
  hands: readonly (Voicing | undefined)[],
  from: number,
  step: 1 | -1,
): ChordToVoice[] {
  for (let place = from; hands[place]; place += step) {
    const voicing = hands[place]!;
    if (voicing.length > 0) return [{ chord: chords[place]!.chord, fixedKeys: heldKeys(voicing) }];
  }
  return [];
}

/**
 * The hands of least `voicingCost` for a list of chords, exactly: one voicing for each, in order.
 * Chosen from `voicingCandidates`; a chord with `fixedKeys` has these alone. N.C. gets the empty
 * voicing, and the hands move from the chord before it to the chord after. Of hands that cost the
 * same, those that come first among the candidates of the earliest chord where they differ. The
 * error names the first chord (its place, 0-based) that two hands cannot play under the settings.
 */
export function voiceSection(
  chords: readonly ChordToVoice[],
  settings: VoicingSettings,
  course: VoicingCourse,
): Result<Voicing[], { readonly kind: 'nothing-playable'; readonly place: number }> {
  const layers = candidateLayers(chords, settings);
  const path = shortestPath(
    layers.filter((layer) => !isSilent(layer)),
    (from, to) => stepCost(from, to, settings.weights),
    { closed: course === 'loop', nodeCost: (held) => holdCost(held, settings) },
  );
  if (!path)
    return err({
      kind: 'nothing-playable',
      place: layers.findIndex((layer) => layer.length === 0),
    });
  const sounding = path.nodes.values();
  return ok(layers.map((layer) => (isSilent(layer) ? [] : sounding.next().value!.voicing)));
}

/**
 * The cost that `voiceSection` minimises, of any voicings in playing order: `holdCost` of each,
 * `stepCost` from each to the next and, in a loop, from the last back to the first. Empty voicings
 * are passed over: the hands move from the one before to the one after. No voicings cost nothing.
 */
export function voicingCost(
  voicings: readonly Voicing[],
  settings: VoicingSettings,
  course: VoicingCourse,
): number {
  const held = voicings.filter((voicing) => voicing.length > 0).map(heldKeys);
  const holding = held.reduce((total, keys) => total + holdCost(keys, settings), 0);
  return stepsOf(held, course).reduce(
    (total, [from, to]) => total + stepCost(from, to, settings.weights),
    holding,
  );
}
