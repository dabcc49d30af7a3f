import '../../parts/picture/workshop.css';
import { useEffect, useMemo, useRef, useState } from 'react';
import { formatChordSymbol } from '../../../core/harmony/chordSymbol.ts';
import type { Pattern } from '../../../core/rhythm/pattern.ts';
import type { ShelfPattern } from '../../../core/rhythm/shelf.ts';
import { useWidth } from '../../kit/useWidth.ts';
import { useHeardTempo } from '../../parts/pattern/useHeardTempo.ts';
import { usePatternActions } from '../../parts/pattern/usePatterns.ts';
import { useTrial } from '../../parts/pattern/useTrial.ts';
import { useParts } from '../../parts/tool/parts.ts';
import { useProject } from '../../parts/tool/useProject.ts';
import { ShelfEntry } from './ShelfEntry.tsx';
import { ShelfWishes } from './ShelfWishes.tsx';
import { shelfColumns } from './shelfColumns.ts';
import { foundOnShelf, grooveOfPattern, metersOf, NO_WISH } from './shelfSearch.ts';

type Props = { readonly shown: Pattern; readonly onClose: () => void };

/** The shelf of traditional patterns, a sheet over the page: found by what is wanted, heard, taken into the project. */
export function Shelf({ shown, onClose }: Props) {
  const { shelf } = useParts();
  const { add } = usePatternActions();
  const trial = useTrial();
  const bpm = useHeardTempo();
  const chord = useProject((project) => project.practice.drill.chord);
  const dialog = useRef<HTMLDialogElement>(null);
  const list = useRef<HTMLUListElement>(null);
  const { columns, pictureWidth } = shelfColumns(useWidth(list));
  const [wish, setWish] = useState(NO_WISH);
  const [byLikeness, setByLikeness] = useState(false);
  useEffect(() => dialog.current?.showModal(), []);
  const groove = useMemo(() => grooveOfPattern(shown), [shown]);
  const meters = useMemo(() => metersOf(shelf), [shelf]);
  const found = useMemo(
    () => foundOnShelf(shelf, wish, byLikeness ? groove : undefined),
    [shelf, wish, byLikeness, groove],
  );
  const close = () => {
    trial.stop();
    onClose();
  };
  const take = (entry: ShelfPattern) => {
    add(entry.pattern, 'pattern from the shelf');
    close();
  };
  const hasBand = shown.sources.length > 0;
  return (
    <dialog
      ref={dialog}
      className="workshop-shelf"
      aria-labelledby="workshop-shelf-title"
      onClose={close}
    >
      <header className="workshop-shelf-head">
        <h2 id="workshop-shelf-title">The shelf</h2>
        <input
          type="search"
          aria-label="Words to find a pattern by"
          placeholder="Words: ballad, latin, waltz, thumb …"
          value={wish.words}
          onChange={(event) => setWish({ ...wish, words: event.target.value })}
        />
        <button type="button" onClick={close}>
          Close
        </button>
        <ShelfWishes
          wish={wish}
          meters={meters}
          bpm={bpm}
          likeWhat={groove && (hasBand ? 'this groove' : 'these hands')}
          byLikeness={byLikeness}
          onWish={setWish}
          onByLikeness={setByLikeness}
        />
        <p role="status" className="workshop-shelf-count">
          {found.length === 1 ? '1 pattern' : `${found.length} patterns`}, heard on{' '}
          {formatChordSymbol(chord)} at {Math.round(bpm)}
        </p>
      </header>
      <ul ref={list} className="workshop-entries" data-columns={columns}>
        {found.map(({ entry, like }) => (
          <ShelfEntry
            key={entry.pattern.id}
            entry={entry}
            like={like}
            pictureWidth={pictureWidth}
            bpm={bpm}
            isHeard={trial.heard === entry.pattern}
            onHear={() => trial.hear(entry.pattern)}
            onTake={() => take(entry)}
          />
        ))}
      </ul>
      {found.length === 0 && (
        <p className="workshop-nothing">
          Nothing on the shelf is like that. Take a word or a choice away.
        </p>
      )}
    </dialog>
  );
}
