import { useRef, useState } from 'react';
import type { Project } from '../../../core/project.ts';
import type { Pattern } from '../../../core/rhythm/pattern.ts';
import { saidStrokes, writeRhythm } from '../../../state/edits/writeRhythm.ts';
import { useParts } from '../../parts/tool/parts.ts';
import { readSaid, saidBy } from './readSaid.ts';
import { type NamedTarget, partOf, sourceKey } from './targets.ts';

/** What is being typed: the text, and the project before the first key, from which every change counts. */
type Typing = { readonly text: string; readonly base: Project; readonly gesture: string };

function patternIn(project: Project, { id }: Pattern): Pattern | undefined {
  return project.patterns.find((pattern) => pattern.id === id);
}

/**
 * Typing the counts of a target: what can be read stands in the pattern at once, and one run of
 * typing is one undo entry.
 */
export function useSaying(pattern: Pattern, { target, spoken }: NamedTarget) {
  const { store } = useParts();
  const [typing, setTyping] = useState<Typing>();
  const runs = useRef(0);

  function begun(): Typing {
    runs.current++;
    return { text: '', base: store.snapshot(), gesture: `said rhythm ${runs.current}` };
  }

  return {
    /** What is typed, or what the target plays. */
    text: typing?.text ?? saidBy(pattern, target),
    isTyping: typing !== undefined,
    type: (text: string) => {
      const now = { ...(typing ?? begun()), text };
      setTyping(now);
      const before = patternIn(now.base, pattern);
      const said = before && readSaid(text, before);
      if (!before || !said?.ok) return;
      const strokes = saidStrokes(said.value.at, said.value, partOf(before, target));
      const next = writeRhythm(pattern.id, target, { ...said.value, strokes })(now.base);
      store.edit(() => next, { label: `say ${spoken}`, gesture: now.gesture });
    },
    /** Ends the run of typing; gives the key of the source that it made, if it made one. */
    leave: (): string | undefined => {
      setTyping(undefined);
      const before = typing && patternIn(typing.base, pattern);
      const made = pattern.sources.find(({ id }) => before?.sources.every((s) => s.id !== id));
      return made && sourceKey(made.id);
    },
  };
}
