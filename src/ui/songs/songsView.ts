import type { SongsParts } from '../../app/songs.ts';
import type { Project } from '../../core/project.ts';
import {
  FIRST_VIEW,
  type ViewChange,
  type ViewState,
  type ViewStore,
} from '../parts/tool/viewState.ts';

/** What belongs to one song alone: what was shown and marked of it, and how fast it was played. */
const FRESH_SONG: ViewChange = {
  sectionId: undefined,
  patternId: undefined,
  range: undefined,
  times: FIRST_VIEW.times,
  rung: FIRST_VIEW.rung,
  stage: undefined,
  plan: FIRST_VIEW.plan,
  speedPercent: FIRST_VIEW.speedPercent,
  arrangement: FIRST_VIEW.arrangement,
};

function draftsWithout(drafts: ViewState['chartDrafts'], id: Project['id']) {
  return Object.fromEntries(
    Object.entries(drafts).filter(([place]) => !place.startsWith(`${id}/`)),
  );
}

/** Keeps a device's view in step with its songs: another song is shown afresh, a deleted one leaves no drafts. */
export function songsView(view: ViewStore): Pick<SongsParts, 'onOpened' | 'onDeleted'> {
  return {
    onOpened: () => view.set(FRESH_SONG),
    onDeleted: (id) => view.set({ chartDrafts: draftsWithout(view.snapshot().chartDrafts, id) }),
  };
}
