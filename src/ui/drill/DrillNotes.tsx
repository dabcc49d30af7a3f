import type { Pattern } from '../../core/rhythm/pattern.ts';
import { TakeStory } from '../parts/takes/TakeStory.tsx';
import { usePlayerHearing } from '../parts/takes/useHearing.ts';
import { useSpokenStep } from '../parts/takes/useSpokenStep.ts';

/** Wherever the panel was scrolled to, what was just said is to be seen. */
function scrollIntoSight(words: HTMLElement | null): void {
  words?.scrollIntoView({ block: 'nearest' });
}

/** What is to be said of the rung that was left, or of the whole drill: in words, then in figures. */
export function DrillNotes({ pattern }: { readonly pattern: Pattern }) {
  const { result } = usePlayerHearing();
  const spoken = useSpokenStep(pattern);
  if (result?.of !== 'drill') return null;
  const { bpm, score } = result;
  return (
    <section
      key={JSON.stringify(result)}
      ref={scrollIntoSight}
      className="takes-notes"
      aria-labelledby="takes-notes-title"
    >
      <h3 id="takes-notes-title">{bpm === undefined ? 'How it went' : `How ${bpm} went`}</h3>
      {score ? <TakeStory score={score} spoken={spoken} /> : <p>Nothing was asked of you yet.</p>}
    </section>
  );
}
