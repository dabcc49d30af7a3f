import { expect, it } from 'vitest';
import { createViewStore } from '../../../src/ui/parts/tool/viewState.ts';
import { songsView } from '../../../src/ui/songs/songsView.ts';

function viewStore() {
  return createViewStore({ getItem: () => null, setItem: () => undefined });
}

it('shows another song afresh, on the page and in the light that lie open', () => {
  const view = viewStore();
  view.set({ page: 'drill', theme: 'stage' });
  const before = view.snapshot();
  view.set({
    sectionId: 'verse',
    patternId: 'p',
    range: { firstBar: 2, endBar: 4 },
    times: 3,
    rung: 3,
    speedPercent: 60,
  });
  songsView(view).onOpened();
  const { sectionId, patternId, range, ...after } = view.snapshot();
  expect([sectionId, patternId, range]).toEqual([undefined, undefined, undefined]);
  expect(after).toEqual(before);
});

it('forgets the chart drafts of a deleted song, as a later one may get its id', () => {
  const view = viewStore();
  view.set({ chartDrafts: { 'song-1/verse': '| H |', 'song-12/verse': '| ? |' } });
  songsView(view).onDeleted('song-1');
  expect(view.snapshot().chartDrafts).toEqual({ 'song-12/verse': '| ? |' });
});
