import { useState, useSyncExternalStore } from 'react';
import type { UnreadableProject } from '../../state/storage.ts';
import { Icon } from '../kit/Icon.tsx';
import { saveFile } from '../kit/saveFile.ts';
import { midiSentence, useMidiState } from '../parts/input/midiHeard.ts';
import {
  leftClosedSentence,
  savingSentence,
  scoreSentence,
  unreadableSentence,
} from '../parts/tool/messages.ts';
import { useParts } from '../parts/tool/parts.ts';
import { usePlayback, useView } from '../parts/tool/useProject.ts';

function Unreadable({ song }: { readonly song: UnreadableProject }) {
  const [isShown, setShown] = useState(true);
  if (!isShown) return null;
  return (
    <p className="message">
      {unreadableSentence(song)}
      <button type="button" onClick={() => saveFile(`${song.title}.json`, song.text)}>
        Save its file
      </button>
      <button type="button" className="quiet" aria-label="Close" onClick={() => setShown(false)}>
        <Icon name="cross" />
      </button>
    </p>
  );
}

/** That the song which lay open did not come up, and was left closed. */
function NotOpenedAgain({ title }: { readonly title: string }) {
  const [isShown, setShown] = useState(true);
  if (!isShown) return null;
  return (
    <p className="message">
      {leftClosedSentence(title)}
      <button type="button" className="quiet" aria-label="Close" onClick={() => setShown(false)}>
        <Icon name="cross" />
      </button>
    </p>
  );
}

/** That what the instrument was taught is not heard; a player who presses a pedal in vain must know. */
function NotHeard() {
  const midi = useMidiState();
  const isTaught = useView((state) => Object.keys(state.taught).length > 0);
  const [isShown, setShown] = useState(true);
  if (midi.status !== 'refused' || !isTaught || !isShown) return null;
  return (
    <p className="message">
      The keys and pedals that you taught are not heard. {midiSentence(midi)}
      <button type="button" className="quiet" aria-label="Close" onClick={() => setShown(false)}>
        <Icon name="cross" />
      </button>
    </p>
  );
}

/** That a newer version is ready; the open one goes on until the player says otherwise. */
function NewerVersion() {
  const { keptApp } = useParts();
  const { newer } = useSyncExternalStore(keptApp.subscribe, keptApp.state);
  const playing = usePlayback();
  const [isShown, setShown] = useState(true);
  if (!newer || !isShown || playing.status !== 'stopped') return null;
  return (
    <p className="message">
      A newer Vampwright is ready. It opens the next time, or now.
      <button type="button" onClick={keptApp.useNewer}>
        Open it now
      </button>
      <button type="button" className="quiet" aria-label="Close" onClick={() => setShown(false)}>
        <Icon name="cross" />
      </button>
    </p>
  );
}

/** Lines above the foot when something outside went wrong: the song that was kept, the instrument, the sound, the saving. */
export function Message({
  answer,
  onAnswered,
}: {
  /** What is to be said of a file that was dropped. */
  readonly answer: string | undefined;
  readonly onAnswered: () => void;
}) {
  const { autosave, opening, playback } = useParts();
  const playing = usePlayback();
  const saving = useSyncExternalStore(autosave.subscribe, autosave.status);
  const problem = playing.status === 'stopped' ? playing.problem : undefined;
  const notSaved = savingSentence(saving);
  return (
    <div role="status">
      {opening.problem?.kind === 'unreadable' && <Unreadable song={opening.problem} />}
      {opening.problem?.kind === 'left-closed' && <NotOpenedAgain title={opening.problem.title} />}
      <NotHeard />
      <NewerVersion />
      {answer && (
        <p className="message">
          {answer}
          <button type="button" className="quiet" aria-label="Close" onClick={onAnswered}>
            <Icon name="cross" />
          </button>
        </p>
      )}
      {notSaved && <p className="message">{notSaved}</p>}
      {problem && (
        <p className="message">
          {scoreSentence(problem)}
          <button type="button" className="quiet" aria-label="Close" onClick={playback.dismiss}>
            <Icon name="cross" />
          </button>
        </p>
      )}
    </div>
  );
}
