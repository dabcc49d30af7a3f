import { useParts } from '../tool/parts.ts';
import { useView } from '../tool/useProject.ts';
import type { Page } from '../tool/viewState.ts';

/** Shows a page's music as notes on staves, or as the page draws it. */
export function NotesToggle({ page }: { readonly page: Page }) {
  const { view } = useParts();
  const notated = useView((state) => state.notated);
  const isNotated = notated.includes(page);
  const others = notated.filter((other) => other !== page);
  return (
    <button
      type="button"
      aria-pressed={isNotated}
      title="Show as notes on staves"
      onClick={() => view.set({ notated: isNotated ? others : [...others, page] })}
    >
      Notes
    </button>
  );
}
