import { useState } from 'react';
import type { Pattern } from '../../core/rhythm/pattern.ts';
import { formatMeter } from '../../core/time/meter.ts';
import { renamePattern } from '../../state/edits/pattern.ts';
import { PopupButton } from '../kit/PopupButton.tsx';
import { usePatternActions } from '../parts/pattern/usePatterns.ts';
import { useParts } from '../parts/tool/parts.ts';
import { useProject } from '../parts/tool/useProject.ts';
import { FromPatternFile, SaveAsFile } from './shelf/PatternFiles.tsx';
import { Shelf } from './shelf/Shelf.tsx';

function bars({ bars: count, meter }: Pattern): string {
  return `${count} ${count === 1 ? 'bar' : 'bars'} of ${formatMeter(meter)}`;
}

function Choices({ shown, close }: { readonly shown: Pattern; readonly close: () => void }) {
  const patterns = useProject((project) => project.patterns);
  const { choose } = usePatternActions();
  return (
    <ul className="pattern-choices">
      {patterns.map((pattern) => (
        <li key={pattern.id} data-variation={pattern.variationOf !== undefined}>
          <button
            type="button"
            aria-current={pattern.id === shown.id}
            onClick={() => {
              choose(pattern);
              close();
            }}
          >
            <span>{pattern.name}</span> <small>{bars(pattern)}</small>
          </button>
        </li>
      ))}
    </ul>
  );
}

/** The name of the pattern, to be changed, and a sheet with all patterns and where new ones come from. */
export function PatternChooser({
  shown,
  onBringBand,
}: {
  readonly shown: Pattern;
  readonly onBringBand: () => void;
}) {
  const { store } = useParts();
  const actions = usePatternActions();
  const isLast = useProject((project) => project.patterns.length === 1);
  const [isShelfOpen, setShelfOpen] = useState(false);
  return (
    <>
      <input
        type="text"
        className="pattern-name"
        aria-label="Name of the pattern"
        value={shown.name}
        onChange={(event) =>
          store.edit(renamePattern(shown.id, event.target.value), {
            label: 'name of the pattern',
            gesture: `name of ${shown.id}`,
          })
        }
      />
      <PopupButton name="Patterns">
        {(close) => {
          const then = (act: () => void) => () => {
            act();
            close();
          };
          return (
            <div className="pattern-menu">
              <Choices shown={shown} close={close} />
              <p className="pattern-menu-title">New</p>
              <button type="button" onClick={then(() => actions.addEmpty(shown.meter))}>
                Empty
              </button>
              <button type="button" onClick={then(() => setShelfOpen(true))}>
                From the shelf …
              </button>
              <button type="button" onClick={then(onBringBand)}>
                From a MIDI file …
              </button>
              <FromPatternFile onTaken={close} />
              <p className="pattern-menu-title">This one</p>
              <button type="button" onClick={then(() => actions.duplicate(shown))}>
                Duplicate
              </button>
              <SaveAsFile shown={shown} />
              <button type="button" disabled={isLast} onClick={then(() => actions.remove(shown))}>
                Remove
              </button>
            </div>
          );
        }}
      </PopupButton>
      {isShelfOpen && <Shelf shown={shown} onClose={() => setShelfOpen(false)} />}
    </>
  );
}
