import type { KeyboardEvent, RefObject } from 'react';
import { DIVISIONS, type Division } from '../../../core/rhythm/pattern.ts';
import { Popup } from '../../kit/Popup.tsx';
import { DIVISION_WORDS } from '../pattern/divisionWords.ts';

type Props = {
  readonly beat: number;
  readonly division: Division;
  readonly anchor: RefObject<Element | null>;
  readonly onChoose: (division: Division) => void;
  readonly onClose: () => void;
};

/** Moves the focus among the items of a menu, round and round. */
function walk(event: KeyboardEvent<HTMLElement>): void {
  const by = { ArrowDown: 1, ArrowRight: 1, ArrowUp: -1, ArrowLeft: -1 }[event.key];
  if (by === undefined) return;
  event.preventDefault();
  const items = [...event.currentTarget.querySelectorAll('button')];
  const here = items.findIndex((item) => item === document.activeElement);
  items.at((here + by) % items.length)?.focus();
}

/** Into how many steps a beat is divided. */
export function DivisionMenu({ beat, division, anchor, onChoose, onClose }: Props) {
  return (
    <Popup label={`Divide beat ${beat}`} role="menu" anchor={anchor} onClose={onClose}>
      <div className="pattern-menu" onKeyDown={walk} role="presentation">
        <p className="pattern-menu-title">Beat {beat}</p>
        {DIVISIONS.map((each) => (
          <button
            key={each}
            type="button"
            role="menuitemradio"
            aria-checked={each === division}
            onClick={() => onChoose(each)}
          >
            <b>{each}</b> {DIVISION_WORDS[each]}
          </button>
        ))}
      </div>
    </Popup>
  );
}
