import { useEffect, useRef, useSyncExternalStore } from 'react';
import { groupBy } from '../../core/rhythm/groupBy.ts';
import { keptAppSentence } from '../parts/tool/messages.ts';
import { useParts } from '../parts/tool/parts.ts';
import { useView } from '../parts/tool/useProject.ts';
import { KEY_BINDINGS, type KeyBinding } from './keyBindings.ts';
import { TaughtKeys } from './TaughtKeys.tsx';

const KEY_NAMES: Readonly<Record<string, string>> = {
  ' ': 'Space',
  PageDown: 'Page Down',
  PageUp: 'Page Up',
  ArrowLeft: '←',
  ArrowRight: '→',
  ArrowUp: '↑',
  ArrowDown: '↓',
  Enter: 'Enter',
  Home: 'Home',
};

function keyText({ key, control, shift }: KeyBinding): string {
  const name = KEY_NAMES[key] ?? key.toUpperCase();
  return [...(control ? ['Ctrl'] : []), ...(shift ? ['Shift'] : []), name].join(' + ');
}

/** The list of keys, what the instrument is taught, the cautions and the credits, over the page until closed. */
export function KeysAndCautions({
  open,
  onClose,
}: {
  readonly open: boolean;
  readonly onClose: () => void;
}) {
  const { view, keptApp } = useParts();
  const kept = useSyncExternalStore(keptApp.subscribe, keptApp.state);
  const restMinutes = useView((state) => state.restMinutes);
  const dialog = useRef<HTMLDialogElement>(null);
  useEffect(() => {
    if (open) dialog.current?.showModal();
    else dialog.current?.close();
  }, [open]);
  return (
    <dialog ref={dialog} className="sheet-dialog" aria-labelledby="keys-title" onClose={onClose}>
      <h2 id="keys-title">Keys and pedals</h2>
      <p className="hint">
        Page-turn pedals that send page keys, arrows, Space or Enter do the same as these.
      </p>
      <table>
        <tbody>
          {[...groupBy(KEY_BINDINGS, ({ does }) => does)].map(([does, bindings]) => (
            <tr key={does}>
              <th scope="row">{[...new Set(bindings.map(keyText))].join(' or ')}</th>
              <td>{does}</td>
            </tr>
          ))}
        </tbody>
      </table>
      <h2>From the instrument</h2>
      {/* Closed, it would go on taking what is pressed. */}
      {open && <TaughtKeys />}
      <h2>Take care</h2>
      <p>
        Headphones: start quietly and turn up only as far as you need; loud sound over a long time
        harms hearing. Hands: rest often, and stop if anything hurts. Ask a teacher or a doctor;
        local rules and their advice come first.
      </p>
      <label className="row">
        <span>Suggest a rest after</span>
        <select
          value={restMinutes}
          onChange={(event) => view.set({ restMinutes: Number(event.target.value) })}
        >
          {[15, 20, 25, 30, 45, 60].map((minutes) => (
            <option key={minutes} value={minutes}>
              {minutes} minutes of playing
            </option>
          ))}
          <option value={0}>never</option>
        </select>
      </label>
      <h2>Without a network</h2>
      <p>{keptAppSentence(kept)}</p>
      <h2>Credits</h2>
      <p className="hint">
        Piano samples: Alexander Holm, CC BY 3.0, shortened and trimmed. Spoken numbers: made with
        Flite, Carnegie Mellon University, cut and trimmed. Text type: Source Serif 4 and Source
        Sans 3, notation: Leland and Academico, all under the SIL Open Font License 1.1.{' '}
        <a href="licences.txt" target="_blank">
          All licences in full
        </a>
      </p>
      <button type="button" className="strong" onClick={onClose}>
        Close
      </button>
    </dialog>
  );
}
