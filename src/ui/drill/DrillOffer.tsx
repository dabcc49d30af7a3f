import { drillPattern } from '../../app/score.ts';
import { drillInSong } from '../../state/edits/practice.ts';
import { useShownPattern } from '../parts/pattern/usePatterns.ts';
import { useParts } from '../parts/tool/parts.ts';
import { usePlayback, useProject, useView } from '../parts/tool/useProject.ts';

/** Offers to drill the pattern that was just open on Rhythm, on the key's own chord and up to the song's tempo. */
export function DrillOffer() {
  const { store } = useParts();
  const open = useShownPattern();
  const drilled = useProject(drillPattern);
  const wasOpened = useView((view) => view.patternId !== undefined);
  const isStopped = usePlayback().status === 'stopped';
  if (!wasOpened || !open || !drilled || open.id === drilled.id || !isStopped) return null;
  return (
    <p className="practice-offer">
      You had “{open.name}” open.{' '}
      <button
        type="button"
        onClick={() => store.edit(drillInSong(open.id), { label: 'what is drilled' })}
      >
        Drill it in this key
      </button>
    </p>
  );
}
