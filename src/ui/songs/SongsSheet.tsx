import './songs.css';
import { useEffect, useId, useRef, useSyncExternalStore } from 'react';
import { fileNameOf } from '../../app/fileName.ts';
import type { SongsProblem } from '../../app/songs.ts';
import { Icon } from '../kit/Icon.tsx';
import { saveFile } from '../kit/saveFile.ts';
import { useParts } from '../parts/tool/parts.ts';
import { HandOn } from './HandOn.tsx';
import { type OpeningProps, SongList } from './SongList.tsx';
import { songsSentence } from './songsMessages.ts';
import { useTrack } from './useTrack.ts';

/** What can be done about a problem beside reading it. */
function Remedy({ problem, onOpening }: OpeningProps & { readonly problem: SongsProblem }) {
  const { songs } = useParts();
  if (problem.kind === 'unreadable')
    return (
      <button
        type="button"
        onClick={() => saveFile(fileNameOf([problem.title], 'json'), problem.text)}
      >
        Save its file
      </button>
    );
  if (problem.kind === 'open-song-not-kept')
    return (
      <button type="button" onClick={() => onOpening(songs.openAnyway())}>
        Lose it and go on
      </button>
    );
  return null;
}

function Problem({ onOpening }: OpeningProps) {
  const { songs } = useParts();
  const { problem } = useSyncExternalStore(songs.subscribe, songs.state);
  return (
    <div role="alert">
      {problem && (
        <p className="message">
          {songsSentence(problem)}
          <Remedy problem={problem} onOpening={onOpening} />
          <button type="button" className="quiet" aria-label="Close" onClick={songs.dismiss}>
            <Icon name="cross" />
          </button>
        </p>
      )}
    </div>
  );
}

/** All songs of this device and the ways to hand the open one on, over the page until closed. */
export function SongsSheet({
  open,
  onClose,
}: {
  readonly open: boolean;
  readonly onClose: () => void;
}) {
  const { songs } = useParts();
  const dialog = useRef<HTMLDialogElement>(null);
  const track = useTrack();
  const heading = useId();
  useEffect(() => {
    if (!open) return dialog.current?.close();
    dialog.current?.showModal();
    void songs.refresh();
    return undefined;
  }, [open, songs]);
  const leave = () => {
    void songs.deleteCrossedOut();
    onClose();
  };
  const closeOnceOpen = async (opening: Promise<boolean>) => {
    if (await opening) onClose();
  };
  return (
    <dialog ref={dialog} className="songs" aria-labelledby={heading} onClose={leave}>
      <header className="songs-head">
        <h2 id={heading}>Songs</h2>
        <button type="button" className="quiet songs-close" onClick={onClose}>
          <Icon name="cross" />
          Close
        </button>
      </header>
      <Problem onOpening={(opening) => void closeOnceOpen(opening)} />
      {/* Closed, it would be drawn anew at every edit of the song. */}
      {open && (
        <div className="songs-parts">
          <SongList onOpening={(opening) => void closeOnceOpen(opening)} />
          <HandOn track={track} />
        </div>
      )}
    </dialog>
  );
}
