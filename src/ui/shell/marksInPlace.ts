import { sameBars } from '../../core/song/sameMoment.ts';
import { selectTimeline } from '../../state/selectors.ts';
import type { Parts } from '../parts/tool/parts.ts';

/**
 * Keeps the marked bars on the same music while the form and the charts are edited, from now on until
 * the function that it gives is called; marks whose section is gone are forgotten.
 */
export function keepMarksInPlace({ store, view }: Pick<Parts, 'store' | 'view'>): () => void {
  let timeline = selectTimeline(store.snapshot());
  return store.subscribe(() => {
    const before = timeline;
    timeline = selectTimeline(store.snapshot());
    const { range } = view.snapshot();
    if (range && timeline !== before) view.set({ range: sameBars(before, timeline, range) });
  });
}
