import type { PatternRequest, PlayRequest } from '../../../app/score.ts';
import type { PatternId } from '../../../core/ids.ts';
import type { Store } from '../../../state/store.ts';
import type { ViewState, ViewStore } from './viewState.ts';

/** What the foot's Play plays, by the open page: the pattern on Rhythm, the drill on Drill, else the song or what is marked of it. */
export function playRequestOf(store: Store, view: ViewStore): PlayRequest {
  const { page, patternId, range, times, rung, stage } = view.snapshot();
  const { patterns } = store.snapshot();
  const shown = patterns.find((pattern) => pattern.id === patternId) ?? patterns[0];
  if (page === 'drill') return { kind: 'drill', rung, ...(stage && { stage }) };
  if (page === 'rhythm' && shown) return patternRequest(view.snapshot(), shown.id);
  return { kind: 'song', times, ...(range && { range }) };
}

/** A pattern of the project, heard over what is chosen on this device: the held chord or a section. */
export function patternRequest(
  { heardOver }: Pick<ViewState, 'heardOver'>,
  patternId: PatternId,
): PatternRequest {
  return { kind: 'pattern', patternId, ...(heardOver !== undefined && { over: heardOver }) };
}
