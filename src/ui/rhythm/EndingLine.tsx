import type { Pattern } from '../../core/rhythm/pattern.ts';
import type { Scope } from '../../state/edits/hits.ts';
import { addEnding, removeEnding } from '../../state/edits/pattern.ts';
import { Icon } from '../kit/Icon.tsx';
import { useParts } from '../parts/tool/parts.ts';

type Props = {
  readonly pattern: Pattern;
  readonly scope: Scope;
  readonly onScope: (scope: Scope) => void;
  /** An ending was made: shows what it can be graced with. */
  readonly onEnding: () => void;
};

/** The ending bar, which a section closes with: made, shown, taken away. */
export function EndingLine({ pattern, scope, onScope, onEnding }: Props) {
  const { store } = useParts();
  if (!pattern.ending)
    return (
      <button
        type="button"
        onClick={() => {
          store.edit(addEnding(pattern.id), { label: 'ending bar' });
          onScope('ending');
          onEnding();
        }}
      >
        Add an ending
      </button>
    );
  return (
    <div role="group" aria-label="What is shown" className="pattern-buttons">
      {(['main', 'ending'] as const).map((each) => (
        <button
          key={each}
          type="button"
          aria-pressed={scope === each}
          onClick={() => onScope(each)}
        >
          {each === 'main' ? 'Bars' : 'Ending'}
        </button>
      ))}
      {scope === 'ending' && (
        <button
          type="button"
          aria-label="Remove the ending"
          onClick={() => {
            store.edit(removeEnding(pattern.id), { label: 'remove ending' });
            onScope('main');
          }}
        >
          <Icon name="cross" />
        </button>
      )}
    </div>
  );
}
