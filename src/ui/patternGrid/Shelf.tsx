import { useEffect, useRef, useState } from 'react';
import type { ShelfPattern } from '../../core/rhythm/shelf.ts';
import { formatMeter } from '../../core/time/meter.ts';
import { useParts } from '../parts.ts';
import { usePatternActions } from './usePatterns.ts';

const ALL_METERS = 'every meter';

function Item({ item, onTake }: { readonly item: ShelfPattern; readonly onTake: () => void }) {
  const { pattern, use, origin, tempoRange } = item;
  return (
    <li>
      <button type="button" onClick={onTake}>
        <b>{pattern.name}</b>
        <span className="pattern-shelf-meter">{formatMeter(pattern.meter)}</span>
        <span>{use}</span>
        <small>
          {tempoRange[0]} – {tempoRange[1]} beats a minute; {origin}
        </small>
      </button>
    </li>
  );
}

/** The shelf of traditional patterns, in a sheet over the page; one that is pressed is taken into the project. */
export function Shelf({ onClose }: { readonly onClose: () => void }) {
  const { shelf } = useParts();
  const { add } = usePatternActions();
  const dialog = useRef<HTMLDialogElement>(null);
  const [meter, setMeter] = useState(ALL_METERS);
  useEffect(() => dialog.current?.showModal(), []);
  const meters = [...new Set(shelf.map(({ pattern }) => formatMeter(pattern.meter)))];
  const offered = shelf.filter(
    ({ pattern }) => meter === ALL_METERS || formatMeter(pattern.meter) === meter,
  );
  return (
    <dialog
      ref={dialog}
      className="sheet-dialog pattern-shelf"
      aria-labelledby="pattern-shelf-title"
      onClose={onClose}
    >
      <div className="pattern-shelf-head">
        <h2 id="pattern-shelf-title">Traditional patterns</h2>
        <select aria-label="Meter" value={meter} onChange={(event) => setMeter(event.target.value)}>
          {[ALL_METERS, ...meters].map((each) => (
            <option key={each}>{each}</option>
          ))}
        </select>
        <button type="button" onClick={onClose}>
          Close
        </button>
      </div>
      <ul>
        {offered.map((item) => (
          <Item
            key={item.pattern.id}
            item={item}
            onTake={() => {
              add(item.pattern, 'pattern from the shelf');
              onClose();
            }}
          />
        ))}
      </ul>
    </dialog>
  );
}
