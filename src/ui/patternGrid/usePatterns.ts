import type { Pattern } from '../../core/rhythm/pattern.ts';
import type { Meter } from '../../core/time/meter.ts';
import { addPattern, duplicatePattern, removePattern } from '../../state/edits/pattern.ts';
import { freeName, newPatternId } from '../../state/newIds.ts';
import { useParts } from '../parts.ts';
import { useProject, useView } from '../useProject.ts';
import { emptyPattern } from './emptyPattern.ts';

/** The pattern that is shown: the one chosen on this device, or the first there is. */
export function useShownPattern(): Pattern | undefined {
  const patterns = useProject((project) => project.patterns);
  const chosen = useView((view) => view.patternId);
  return patterns.find((pattern) => pattern.id === chosen) ?? patterns[0];
}

/** What can be done with the project's patterns as wholes; each is one undo entry, and what is new is shown at once. */
export function usePatternActions() {
  const { store, view } = useParts();

  function add(pattern: Pattern, label: string): void {
    const project = store.snapshot();
    const id = newPatternId(project);
    const names = project.patterns.map(({ name }) => name);
    const added = { ...pattern, id, name: freeName(pattern.name, names) };
    store.edit(addPattern(added), { label });
    view.set({ patternId: id });
  }

  return {
    /** Adds a pattern under an id and a name of its own. */
    add,
    addEmpty: (meter: Meter) => add(emptyPattern('', 'New pattern', meter), 'new pattern'),
    duplicate: (pattern: Pattern) => {
      const id = newPatternId(store.snapshot());
      store.edit(duplicatePattern(pattern.id, id), { label: 'duplicate pattern' });
      view.set({ patternId: id });
    },
    remove: (pattern: Pattern) => {
      const { patterns } = store.snapshot();
      const place = patterns.findIndex(({ id }) => id === pattern.id);
      const neighbour = patterns[place + 1] ?? patterns[place - 1];
      store.edit(removePattern(pattern.id), { label: 'remove pattern' });
      view.set({ patternId: neighbour?.id });
    },
    choose: (pattern: Pattern) => view.set({ patternId: pattern.id }),
  };
}
