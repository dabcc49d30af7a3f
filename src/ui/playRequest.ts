import type { PlayRequest } from '../app/score.ts';
import type { Store } from '../state/store.ts';
import type { ViewStore } from './viewState.ts';

/** What the foot's Play plays, by the open page: the pattern on Rhythm, the drill on Drill, else the song or what is marked of it. */
export function playRequestOf(store: Store, view: ViewStore): PlayRequest {
  const { page, patternId, range, times, rung, stage } = view.snapshot();
  const { patterns } = store.snapshot();
  const shown = patterns.find((pattern) => pattern.id === patternId) ?? patterns[0];
  if (page === 'drill') return { kind: 'drill', rung, ...(stage && { stage }) };
  if (page === 'rhythm' && shown) return { kind: 'pattern', patternId: shown.id };
  return { kind: 'song', times, ...(range && { range }) };
}
