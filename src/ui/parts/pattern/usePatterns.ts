import type { PatternId, SectionId } from '../../../core/ids.ts';
import type { Project } from '../../../core/project.ts';
import { chosenPattern } from '../../../core/rhythm/chosenPattern.ts';
import type { Pattern } from '../../../core/rhythm/pattern.ts';
import type { Meter } from '../../../core/time/meter.ts';
import { addPattern, duplicatePattern, removePattern } from '../../../state/edits/pattern.ts';
import { setSectionPattern } from '../../../state/edits/sectionPatterns.ts';
import { addFamily } from '../../../state/edits/variations.ts';
import { freeName, newPatternId } from '../../../state/newIds.ts';
import { useParts } from '../tool/parts.ts';
import { patternRequest } from '../tool/playRequest.ts';
import { useProject, useView } from '../tool/useProject.ts';
import { emptyPattern } from './emptyPattern.ts';

/** The pattern that is shown: the one chosen on this device, or the first there is. */
export function useShownPattern(): Pattern | undefined {
  const chosen = useView((view) => view.patternId);
  return useProject((project) => chosenPattern(project, chosen));
}

/**
 * What can be done with the project's patterns as wholes; each is one undo entry. What is new is shown
 * at once, and heard where a pattern plays.
 */
export function usePatternActions() {
  const { store, view, playback } = useParts();

  function show(id: PatternId): void {
    view.set({ patternId: id });
    playback.turnTo(patternRequest(view.snapshot(), id));
  }

  function add(pattern: Pattern, label: string, playedIn?: SectionId): void {
    const project = store.snapshot();
    const id = newPatternId(project);
    const names = project.patterns.map(({ name }) => name);
    const added = { ...pattern, id, name: freeName(pattern.name, names) };
    const place = (whole: Project) =>
      playedIn === undefined ? whole : setSectionPattern(playedIn, id)(whole);
    store.edit((before) => place(addPattern(added)(before)), { label });
    show(id);
  }

  return {
    /** Adds a pattern under an id and a name of its own, and has a section play it where one is named. */
    add,
    /** Adds a pattern and, behind it, its variations. */
    addFamily: (family: readonly Pattern[]) => {
      const id = newPatternId(store.snapshot());
      store.edit(addFamily(family), { label: 'pattern file' });
      show(id);
    },
    addEmpty: (meter: Meter) => add(emptyPattern('', 'New pattern', meter), 'new pattern'),
    duplicate: (pattern: Pattern) => {
      const id = newPatternId(store.snapshot());
      store.edit(duplicatePattern(pattern.id, id), { label: 'duplicate pattern' });
      show(id);
    },
    remove: (pattern: Pattern) => {
      const { patterns } = store.snapshot();
      const place = patterns.findIndex(({ id }) => id === pattern.id);
      const neighbour = patterns[place + 1] ?? patterns[place - 1];
      if (neighbour) show(neighbour.id);
      store.edit(removePattern(pattern.id), { label: 'remove pattern' });
    },
    choose: (pattern: Pattern) => show(pattern.id),
  };
}
