import { type Key, MODES, writableKey } from '../../core/harmony/key.ts';
import { formatPitchClass, samePitchClass } from '../../core/harmony/pitch.ts';
import { setKey } from '../../state/edits/song.ts';
import { MusicText } from '../parts/song/ChordName.tsx';
import { keyName } from '../parts/song/chordRoleWords.ts';
import { signatureText, tonicChoices } from '../parts/song/songWords.ts';
import { useParts } from '../parts/tool/parts.ts';
import { useProject } from '../parts/tool/useProject.ts';
import { useKeySuggestions } from './key/useKeySuggestions.ts';

/** From this confidence on another key than the song's is worth a word (our own choice). */
const WORTH_A_WORD = 0.5;

/** The key that the chords of the song, as it is played, speak for, where it is another than the one that is set. */
function useOtherKey(songKey: Key) {
  const [surest] = useKeySuggestions();
  if (!surest || surest.confidence < WORTH_A_WORD) return undefined;
  const isSame =
    surest.key.mode === songKey.mode && samePitchClass(surest.key.tonic, songKey.tonic);
  return isSame ? undefined : surest;
}

/** The song's key, and the one that its chords speak for. */
export function KeyFields() {
  const { store } = useParts();
  const key = useProject((project) => project.song.key);
  const other = useOtherKey(key);
  const tonics = tonicChoices(key.mode);
  const choose = (next: Key) => store.edit(setKey(writableKey(next)), { label: 'key' });
  return (
    <>
      <div className="songmap-pair">
        <label className="field">
          <span>Key</span>
          <select
            value={tonics.findIndex((tonic) => samePitchClass(tonic, key.tonic))}
            onChange={(event) => {
              const tonic = tonics[Number(event.target.value)];
              if (tonic) choose({ tonic, mode: key.mode });
            }}
          >
            {tonics.map((tonic, i) => (
              <option key={formatPitchClass(tonic)} value={i}>
                {formatPitchClass(tonic)}
              </option>
            ))}
          </select>
        </label>
        <label className="field">
          <span>{signatureText(key)}</span>
          <select
            aria-label="Mode"
            value={key.mode}
            onChange={(event) => {
              const mode = MODES.find((each) => each === event.target.value);
              if (mode) choose({ tonic: key.tonic, mode });
            }}
          >
            {MODES.map((mode) => (
              <option key={mode}>{mode}</option>
            ))}
          </select>
        </label>
      </div>
      {other && (
        <p className="songmap-note">
          The chords sound like <MusicText text={keyName(other.key)} /> (
          {Math.round(100 * other.confidence)} % sure).{' '}
          <button type="button" onClick={() => choose(other.key)}>
            Take it
          </button>
        </p>
      )}
    </>
  );
}
