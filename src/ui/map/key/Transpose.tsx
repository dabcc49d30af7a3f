import './transpose.css';
import { type ReactNode, useState } from 'react';
import { type Key, sameKey } from '../../../core/harmony/key.ts';
import { formatPitchClass, type KeyNumber } from '../../../core/harmony/pitch.ts';
import { unreachable } from '../../../core/result.ts';
import { transposeTo } from '../../../state/edits/song.ts';
import { Choice } from '../../kit/Choice.tsx';
import { SheetDialog } from '../../kit/SheetDialog.tsx';
import { MusicText } from '../../parts/song/ChordName.tsx';
import { keyName } from '../../parts/song/chordRoleWords.ts';
import { signatureText, tonicChoices } from '../../parts/song/songWords.ts';
import { useParts } from '../../parts/tool/parts.ts';
import { useProject } from '../../parts/tool/useProject.ts';
import {
  beginningAfter,
  INTERVAL_WORDS,
  type Move,
  type MoveInterval,
  moveTarget,
  noteNameIn,
  type SongBeginning,
  songBeginning,
  TOP_NOTES,
} from './transposing.ts';

/** Middle C an octave up: a top note as common for a tune as for a singer. */
const USUAL_TOP: KeyNumber = 72;

/** What each way of moving begins with; none of them moves the song before something is chosen. */
function firstMove(kind: Move['kind'], key: Key): Move {
  switch (kind) {
    case 'interval':
      return { kind, direction: 'up', interval: '2M' };
    case 'key':
      return { kind, tonic: key.tonic };
    case 'singer':
      return { kind, tune: USUAL_TOP, singer: USUAL_TOP };
    default:
      return unreachable(kind);
  }
}

function IntervalFields({
  move,
  onMove,
}: {
  readonly move: Extract<Move, { kind: 'interval' }>;
  readonly onMove: (move: Move) => void;
}) {
  return (
    <>
      <Choice
        label="Direction"
        options={[
          ['up', 'Up'],
          ['down', 'Down'],
        ]}
        chosen={move.direction}
        onChoose={(direction) => onMove({ ...move, direction })}
      />
      <label className="field">
        <span>By</span>
        <select
          value={move.interval}
          onChange={(event) => onMove({ ...move, interval: event.target.value as MoveInterval })}
        >
          {Object.entries(INTERVAL_WORDS).map(([interval, words]) => (
            <option key={interval} value={interval}>
              {words}
            </option>
          ))}
        </select>
      </label>
    </>
  );
}

function KeyFields({
  move,
  songKey,
  onMove,
}: {
  readonly move: Extract<Move, { kind: 'key' }>;
  readonly songKey: Key;
  readonly onMove: (move: Move) => void;
}) {
  return (
    <div className="keypanel-tonics" role="group" aria-label="New key">
      {tonicChoices(songKey.mode).map((tonic) => {
        const name = formatPitchClass(tonic);
        return (
          <button
            type="button"
            key={name}
            aria-pressed={name === formatPitchClass(move.tonic)}
            onClick={() => onMove({ ...move, tonic })}
          >
            <MusicText text={name} />
          </button>
        );
      })}
    </div>
  );
}

function NoteField({
  label,
  note,
  songKey,
  onNote,
}: {
  readonly label: string;
  readonly note: KeyNumber;
  readonly songKey: Key;
  readonly onNote: (note: KeyNumber) => void;
}) {
  return (
    <label className="field">
      <span>{label}</span>
      <select value={note} onChange={(event) => onNote(Number(event.target.value))}>
        {TOP_NOTES.toReversed().map((each) => (
          <option key={each} value={each}>
            {noteNameIn(songKey, each)}
          </option>
        ))}
      </select>
    </label>
  );
}

function SingerFields({
  move,
  songKey,
  onMove,
}: {
  readonly move: Extract<Move, { kind: 'singer' }>;
  readonly songKey: Key;
  readonly onMove: (move: Move) => void;
}) {
  return (
    <>
      <NoteField
        label="Highest note of the tune now"
        note={move.tune}
        songKey={songKey}
        onNote={(tune) => onMove({ ...move, tune })}
      />
      <NoteField
        label="Singer’s highest comfortable note"
        note={move.singer}
        songKey={songKey}
        onNote={(singer) => onMove({ ...move, singer })}
      />
      <p className="hint">C4 is middle C.</p>
    </>
  );
}

function MoveFields({
  move,
  songKey,
  onMove,
}: {
  readonly move: Move;
  readonly songKey: Key;
  readonly onMove: (move: Move) => void;
}): ReactNode {
  switch (move.kind) {
    case 'interval':
      return <IntervalFields move={move} onMove={onMove} />;
    case 'key':
      return <KeyFields move={move} songKey={songKey} onMove={onMove} />;
    case 'singer':
      return <SingerFields move={move} songKey={songKey} onMove={onMove} />;
    default:
      return unreachable(move);
  }
}

function Beginning({ name, of }: { readonly name: string; readonly of: SongBeginning }) {
  return (
    <div className="keypanel-beginning">
      <dt>{name}</dt>
      <dd>
        <strong>
          <MusicText text={keyName(of.key)} />
        </strong>
        <span>
          <MusicText text={signatureText(of.key)} />
        </span>
        <span className="keypanel-beginning-chords">
          {of.chords.map((chord, i) => (
            // The row only shows; chords that come twice are told apart by their place.
            <span key={`${i} ${chord}`}>
              <MusicText text={chord} />
            </span>
          ))}
        </span>
      </dd>
    </div>
  );
}

/** The sheet on which the song is moved into another key: how, what it leads to, and the move itself. */
export function Transpose({ onClose }: { readonly onClose: () => void }) {
  const { store } = useParts();
  const song = useProject((project) => project.song);
  const [move, setMove] = useState<Move>(() => firstMove('interval', song.key));
  const after = beginningAfter(song, move);
  // An octave leads to the same key, and moves pinned hands.
  const stays = move.kind !== 'interval' && sameKey(after.key, song.key);
  const carryOut = () => {
    store.edit(transposeTo(moveTarget(move, song.key)), { label: 'transpose' });
    onClose();
  };
  return (
    <SheetDialog title="Transpose the song" onClose={onClose}>
      <Choice
        label="By"
        options={[
          ['interval', 'By an interval'],
          ['key', 'To a key'],
          ['singer', 'For a singer'],
        ]}
        chosen={move.kind}
        onChoose={(kind) => setMove(firstMove(kind, song.key))}
      />
      <div className="keypanel-fields">
        <MoveFields move={move} songKey={song.key} onMove={setMove} />
      </div>
      <dl className="keypanel-beginnings" aria-live="polite">
        <Beginning name="Now" of={songBeginning(song)} />
        <Beginning name="Then" of={after} />
      </dl>
      <p className="hint">Chords, endings and pinned hands move together; undo brings them back.</p>
      <button type="button" className="strong" disabled={stays} onClick={carryOut}>
        Transpose
      </button>
    </SheetDialog>
  );
}
