import {
  type Key,
  parallelKey,
  relativeKey,
  sameKey,
  writableKey,
} from '../../../core/harmony/key.ts';
import { MusicText } from '../../parts/song/ChordName.tsx';
import { keyName } from '../../parts/song/chordRoleWords.ts';

/** The relative and the parallel key, to be looked at; a key that is looked at can become the song's. */
export function KeyNeighbours({
  songKey,
  shown,
  onShow,
  onTake,
}: {
  readonly songKey: Key;
  readonly shown: Key;
  readonly onShow: (key: Key) => void;
  readonly onTake: (key: Key) => void;
}) {
  const neighbours = [
    ['Relative', relativeKey(shown)],
    ['Parallel', writableKey(parallelKey(shown))],
  ] as const;
  const isOther = !sameKey(songKey, shown);
  return (
    <div className="keypanel-neighbours" role="group" aria-label="Neighbouring keys">
      {neighbours.map(([relation, key]) => (
        <button type="button" key={relation} onClick={() => onShow(key)}>
          <small>{relation}</small> <MusicText text={keyName(key)} />
        </button>
      ))}
      {isOther && (
        <>
          <button type="button" onClick={() => onShow(songKey)}>
            <small>Back to</small> <MusicText text={keyName(songKey)} />
          </button>
          <button type="button" onClick={() => onTake(shown)}>
            Make it the song’s key
          </button>
        </>
      )}
    </div>
  );
}
