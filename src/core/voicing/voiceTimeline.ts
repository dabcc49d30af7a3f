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
 * is voiced once, as a loop (`voiceSection`), so that its hands are the same at each return: spans
 * of the same section identity and slot share one voicing. The error names the first span that two
 * hands cannot play under the settings.
 */
export function voiceTimeline(
  timeline: Timeline,
  settings: VoicingSettings,
): Result<Voicing[], { readonly kind: 'nothing-playable'; readonly span: ChordSpan }> {
  const voiced = new Map<SectionId, ReadonlyMap<number, Voicing>>();
  const voicings: Voicing[] = [];
  for (const [place, { sectionId }] of timeline.sections.entries()) {
    const spans = timeline.chords.filter((span) => span.section === place);
    if (!voiced.has(sectionId)) {
      const hands = voiceSection(spans, settings, 'loop');
      if (!hands.ok) return err({ kind: 'nothing-playable', span: spans[hands.error.place]! });
      voiced.set(sectionId, new Map(spans.map(({ slot }, i) => [slot, hands.value[i]!])));
    }
    for (const { slot } of spans) {
      const voicing = voiced.get(sectionId)?.get(slot);
      if (!voicing) throw new Error(`section ${sectionId} has a slot ${slot} in one return only`);
      voicings.push(voicing);
    }
  }
  return ok(voicings);
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
