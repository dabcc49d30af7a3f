import { setTitle } from '../../state/edits/song.ts';
import { Icon } from '../kit/Icon.tsx';
import { useParts } from '../parts/tool/parts.ts';
import { useProject, useView } from '../parts/tool/useProject.ts';
import { PAGES, type Page, type Theme } from '../parts/tool/viewState.ts';

export const PAGE_NAMES: Readonly<Record<Page, string>> = {
  map: 'Map',
  hands: 'Hands',
  rhythm: 'Rhythm',
  drill: 'Drill',
  play: 'Play',
};

function Title() {
  const { store } = useParts();
  const title = useProject((project) => project.song.title);
  return (
    <input
      type="text"
      className="head-title"
      aria-label="Title of the song"
      value={title}
      onChange={(event) =>
        store.edit(setTitle(event.target.value), { label: 'title', gesture: 'title' })
      }
    />
  );
}

function PageNames() {
  const { view } = useParts();
  const open = useView((state) => state.page);
  return (
    <nav className="pages" aria-label="Pages">
      {PAGES.map((page) => (
        <button
          type="button"
          key={page}
          aria-current={page === open ? 'page' : undefined}
          onClick={() => view.set({ page })}
        >
          {PAGE_NAMES[page]}
        </button>
      ))}
    </nav>
  );
}

function UndoRedo() {
  const { store } = useParts();
  const undoable = useProject(() => store.undoLabel());
  const redoable = useProject(() => store.redoLabel());
  return (
    <>
      <button
        type="button"
        aria-label={undoable ? `Undo: ${undoable}` : 'Undo'}
        title={undoable ? `Undo: ${undoable}` : 'Nothing to undo'}
        disabled={undoable === undefined}
        onClick={store.undo}
      >
        <Icon name="undo" />
      </button>
      <button
        type="button"
        aria-label={redoable ? `Redo: ${redoable}` : 'Redo'}
        title={redoable ? `Redo: ${redoable}` : 'Nothing to redo'}
        disabled={redoable === undefined}
        onClick={store.redo}
      >
        <Icon name="redo" />
      </button>
    </>
  );
}

/** Top of the sheet: the way to other songs, the title, the five pages, undo, the light. */
export function Head({
  theme,
  onShowSongs,
  onShowKeys,
}: {
  readonly theme: Theme;
  readonly onShowSongs: () => void;
  readonly onShowKeys: () => void;
}) {
  const { view } = useParts();
  const other: Theme = theme === 'paper' ? 'stage' : 'paper';
  return (
    <header className="head">
      <button type="button" className="head-songs" aria-label="Songs" onClick={onShowSongs}>
        <Icon name="songs" />
        <span>Songs</span>
      </button>
      <Title />
      <PageNames />
      <div className="head-tools">
        <UndoRedo />
        <button
          type="button"
          aria-label={other === 'stage' ? 'Dark, for the stage' : 'Light paper'}
          title={other === 'stage' ? 'Dark, for the stage' : 'Light paper'}
          onClick={() => view.set({ theme: other })}
        >
          <Icon name="lamp" />
        </button>
        <button
          type="button"
          aria-label="Keys and cautions"
          title="Keys and cautions"
          onClick={onShowKeys}
        >
          <Icon name="keys" />
        </button>
      </div>
    </header>
  );
}
