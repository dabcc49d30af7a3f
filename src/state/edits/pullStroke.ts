import type { PatternId } from '../../core/ids.ts';
import {
  type LeftHit,
  type Pattern,
  patternTicks,
  type RightHit,
  TOUCHES,
  type Touch,
} from '../../core/rhythm/pattern.ts';
import type { Source, SourcePart, Stroke, StrokeTone } from '../../core/rhythm/sources.ts';
import { BASS_TONES, type BassTone, VOICE_TONES, type VoiceTone } from '../../core/rhythm/tones.ts';
import type { Ticks } from '../../core/time/ticks.ts';
import type { HandName } from '../../core/voicing/voicing.ts';
import { STROKE_STRENGTH } from '../../formats/patternEvents.ts';
import type { Edit } from './edit.ts';
import { addHit, scopeSteps } from './hits.ts';

/** What each hand plays for a stroke that does not say so itself. */
export const PULLED_TONES: Readonly<
  Record<SourcePart, { readonly left: BassTone; readonly right: VoiceTone }>
> = {
  bass: { left: 'root', right: 'bottom' },
  picking: { left: 'root', right: 'top' },
  strumming: { left: 'root', right: 'all' },
  sung: { left: 'root', right: 'top' },
  kick: { left: 'root', right: 'all' },
  snare: { left: 'fifth', right: 'all' },
  'hi-hat': { left: 'octave', right: 'upper' },
  tom: { left: 'fifth', right: 'all' },
  cymbal: { left: 'octave', right: 'all' },
  percussion: { left: 'octave', right: 'upper' },
};

/** The touch whose strength in a pattern file lies nearest; the weaker of two. */
function touchOf({ strength }: Stroke): Touch {
  const distance = (touch: Touch) => Math.abs(STROKE_STRENGTH[touch] - strength);
  return TOUCHES.reduce((near, touch) => (distance(touch) < distance(near) ? touch : near));
}

function amongTones<T extends StrokeTone>(what: readonly StrokeTone[], tones: readonly T[]): T[] {
  return tones.filter((tone) => what.includes(tone));
}

/** The step of the pattern's grid that lies nearest to a tick; the earlier of two that are as near. */
function nearestStep(pattern: Pattern, tick: Ticks): Ticks {
  const distances = scopeSteps(pattern, 'main').map(({ at }) => ({
    at,
    distance: Math.abs(at - tick),
  }));
  return distances.reduce((near, step) => (step.distance < near.distance ? step : near)).at;
}

function pulledHit(pattern: Pattern, stroke: Stroke): Omit<LeftHit & RightHit, 'play'> {
  const at = nearestStep(pattern, stroke.at);
  const length = Math.min(stroke.length, patternTicks(pattern) - at);
  return { at, length, touch: touchOf(stroke), held: true };
}

/**
 * Adds to a hand what one stroke of the band plays, on the nearest step: the tones the stroke names,
 * as far as the hand has them, or else the part's usual tone (`PULLED_TONES`); as long as it sounds,
 * touched as strongly. A hit that stands there takes the tones in. Nothing where there is no such
 * stroke.
 */
export function pullStroke(
  patternId: PatternId,
  sourceId: Source['id'],
  tick: Ticks,
  hand: HandName,
): Edit {
  return (project) => {
    const pattern = project.patterns.find(({ id }) => id === patternId);
    const source = pattern?.sources.find(({ id }) => id === sourceId);
    const stroke = source?.strokes.find(({ at }) => at === tick);
    if (!pattern || !source || !stroke) return project;
    const hit = pulledHit(pattern, stroke);
    const usual = PULLED_TONES[source.part];
    if (hand === 'left') {
      const named = amongTones(stroke.what, BASS_TONES);
      return addHit(patternId, 'left', { ...hit, play: named.length > 0 ? named : [usual.left] })(
        project,
      );
    }
    const named = amongTones(stroke.what, VOICE_TONES);
    return addHit(patternId, 'right', { ...hit, play: named.length > 0 ? named : [usual.right] })(
      project,
    );
  };
}
