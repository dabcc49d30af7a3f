import type { Pattern } from '../../core/rhythm/pattern.ts';
import { setPedal } from '../../state/edits/pattern.ts';
import { useParts } from '../parts/tool/parts.ts';

/** Whether the pattern is played with the pedal, changed with each chord; a press changes it. */
export function PedalToggle({ pattern }: { readonly pattern: Pattern }) {
  const { store } = useParts();
  return (
    <button
      type="button"
      aria-label="Pedal, changed with each chord"
      aria-pressed={pattern.pedal !== undefined}
      title="The sustaining pedal, changed with each chord"
      onClick={() =>
        store.edit(setPedal(pattern.id, pattern.pedal ? undefined : 'by-chord'), {
          label: 'pedal',
        })
      }
    >
      Pedal
    </button>
  );
}
