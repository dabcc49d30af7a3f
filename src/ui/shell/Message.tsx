import { useSyncExternalStore } from 'react';
import { savingSentence, scoreSentence } from '../messages.ts';
import { useParts } from '../parts.ts';
import { usePlayback } from '../useProject.ts';
import { Icon } from './Icon.tsx';

/** One line above the foot when something outside went wrong: the sound, or the saving. */
export function Message() {
  const { autosave, playback } = useParts();
  const playing = usePlayback();
  const saving = useSyncExternalStore(autosave.subscribe, autosave.status);
  const problem = playing.status === 'stopped' ? playing.problem : undefined;
  const sentence = problem ? scoreSentence(problem) : savingSentence(saving);
  return (
    <div role="status">
      {sentence && (
        <p className="message">
          {sentence}
          {problem && (
            <button type="button" className="quiet" aria-label="Close" onClick={playback.dismiss}>
              <Icon name="cross" />
            </button>
          )}
        </p>
      )}
    </div>
  );
}
