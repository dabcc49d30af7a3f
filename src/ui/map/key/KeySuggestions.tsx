import type { Key } from '../../../core/harmony/key.ts';
import { MusicText } from '../../parts/song/ChordName.tsx';
import { keyName } from '../../parts/song/chordRoleWords.ts';
import { useKeySuggestions } from './useKeySuggestions.ts';

/** A key less likely than this is not worth a word, however few there are (our own choice). */
const WORTH_A_WORD = 0.02;

const MOST = 3;

/** How sure a key is, in per cent; never wholly, as chords alone prove no key. */
function sureness(confidence: number): string {
  return confidence > 0.99 ? 'over 99 %' : `${Math.round(100 * confidence)} %`;
}

/** The keys that the song's chords speak for and how sure that is; each can be looked at. */
export function KeySuggestions({ onShow }: { readonly onShow: (key: Key) => void }) {
  const suggestions = useKeySuggestions().filter(({ confidence }) => confidence >= WORTH_A_WORD);
  if (suggestions.length === 0) return null;
  return (
    <div className="keypanel-suggestions" role="group" aria-label="Keys that the chords speak for">
      <small>The chords speak for</small>
      {suggestions.slice(0, MOST).map(({ key, confidence }) => (
        <button type="button" key={keyName(key)} onClick={() => onShow(key)}>
          <MusicText text={keyName(key)} /> <small>{sureness(confidence)}</small>
        </button>
      ))}
    </div>
  );
}
