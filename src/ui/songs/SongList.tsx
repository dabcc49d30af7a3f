import { useId, useRef, useSyncExternalStore } from 'react';
import { useParts } from '../parts/tool/parts.ts';
import { useProject } from '../parts/tool/useProject.ts';
import { lastOpenText, type SongRow, shownTitle, songRows } from './songRows.ts';

export type OpeningProps = {
  /** Called with every attempt to open another song; it says whether that lies open. */
  readonly onOpening: (opening: Promise<boolean>) => void;
};

type RowProps = OpeningProps & { readonly row: SongRow; readonly isCrossedOut: boolean };

/** One song: opened by its title, copied or crossed out beside it. */
function Row({ row, isCrossedOut, onOpening }: RowProps) {
  const { songs } = useParts();
  const { id, lastOpen } = row;
  const title = shownTitle(row.title);
  return (
    <li className="songs-row">
      <button
        type="button"
        className="songs-open"
        aria-current={lastOpen === 'now' ? 'true' : undefined}
        disabled={isCrossedOut}
        onClick={() => onOpening(songs.open(id))}
      >
        <span className="songs-title">{isCrossedOut ? <s>{title}</s> : title}</span>
        <span className="songs-when">
          {isCrossedOut ? 'goes when this sheet is closed' : lastOpenText(lastOpen)}
        </span>
      </button>
      {!isCrossedOut && (
        <button
          type="button"
          className="quiet"
          aria-label={`Copy “${title}”`}
          onClick={() => onOpening(songs.openCopy(id))}
        >
          Copy
        </button>
      )}
      <button
        type="button"
        className="quiet"
        aria-label={`${isCrossedOut ? 'Put back' : 'Delete'} “${title}”`}
        onClick={() => (isCrossedOut ? songs.putBack(id) : songs.crossOut(id))}
      >
        {isCrossedOut ? 'Put back' : 'Delete'}
      </button>
    </li>
  );
}

/** The button that lets a song file be chosen, and the field of the browser's that it stands for. */
function OpenFile({ onOpening }: OpeningProps) {
  const { songs } = useParts();
  const field = useRef<HTMLInputElement>(null);
  const take = (input: HTMLInputElement) => {
    const file = input.files?.[0];
    if (file) onOpening(songs.openFile(file));
    // Emptied, so that the same file can be chosen again once it is repaired.
    input.value = '';
  };
  return (
    <>
      <button type="button" onClick={() => field.current?.click()}>
        Open a song file …
      </button>
      <input
        ref={field}
        type="file"
        hidden
        aria-label="Song file"
        accept=".json,application/json"
        onChange={(event) => take(event.currentTarget)}
      />
    </>
  );
}

/** The songs that this device keeps, the open one first, and the ways to another one. */
export function SongList({ onOpening }: OpeningProps) {
  const { songs } = useParts();
  const { kept, crossedOut } = useSyncExternalStore(songs.subscribe, songs.state);
  const project = useProject((open) => open);
  const heading = useId();
  return (
    <section className="songs-part songs-kept" aria-labelledby={heading}>
      <h3 id={heading}>Songs on this device</h3>
      <div className="row">
        <button type="button" className="strong" onClick={() => onOpening(songs.openNew())}>
          New song
        </button>
        <OpenFile onOpening={onOpening} />
      </div>
      <ul className="songs-list" aria-labelledby={heading}>
        {songRows(kept, project).map((row) => (
          <Row
            key={row.id}
            row={row}
            isCrossedOut={crossedOut.includes(row.id)}
            onOpening={onOpening}
          />
        ))}
      </ul>
    </section>
  );
}
