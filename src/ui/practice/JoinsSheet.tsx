import './sheets.css';
import '../keyPanel/keyPanel.css';
import type { Join } from '../../core/practice/joins.ts';
import { chordAt, type Timeline } from '../../core/song/timeline.ts';
import { selectTimeline } from '../../state/selectors.ts';
import { ChordName } from '../ChordName.tsx';
import { SheetDialog } from '../keyPanel/SheetDialog.tsx';
import { useParts } from '../parts.ts';
import { useProject } from '../useProject.ts';
import { joinName, joinWords } from './joinWords.ts';
import { NothingPlayableNote } from './NothingPlayableNote.tsx';
import { barsOfJoin, playBars } from './practise.ts';
import { SpeedField } from './SpeedField.tsx';
import { selectHardJoins } from './songToPractise.ts';

/** The chord that ends one section and the one that begins the next. */
function JoinChords({ timeline, bar }: { readonly timeline: Timeline; readonly bar: number }) {
  const startTick = timeline.bars[bar]?.startTick ?? 0;
  const before = chordAt(timeline, startTick - 1);
  const after = chordAt(timeline, startTick);
  if (!before || !after) return null;
  return (
    <span className="practice-join-chords">
      <ChordName chord={before.chord} /> <span aria-hidden="true">|</span>
      <span className="visually-hidden">to</span> <ChordName chord={after.chord} />
    </span>
  );
}

function JoinLine({
  join,
  timeline,
  onPlay,
}: {
  readonly join: Join;
  readonly timeline: Timeline;
  readonly onPlay: () => void;
}) {
  const name = joinName(timeline, join);
  return (
    <li>
      <div>
        <h3>{name}</h3>
        <p>
          {joinWords(join)}
          {join.times > 1 && `; comes ${join.times === 2 ? 'twice' : `${join.times} times`}`}
        </p>
      </div>
      <JoinChords timeline={timeline} bar={join.bar} />
      <button type="button" aria-label={`Play this join: ${name}`} onClick={onPlay}>
        Play this join
      </button>
    </li>
  );
}

/** The places where sections meet, hardest first; each can be played round and round, at a speed of choice. */
export function JoinsSheet({ onClose }: { readonly onClose: () => void }) {
  const parts = useParts();
  const timeline = useProject(selectTimeline);
  const joins = useProject(selectHardJoins);
  const play = (join: Join) => {
    onClose();
    playBars(parts, barsOfJoin(join.bar));
  };
  return (
    <SheetDialog title="Hard joins" onClose={onClose}>
      <p>The last bar of one section and the first of the next, again and again; hardest first.</p>
      <SpeedField />
      {!joins.ok && <NothingPlayableNote problem={joins.error} />}
      {joins.ok && joins.value.length === 0 && <p>The song has one section only: no joins.</p>}
      <ol className="practice-list">
        {joins.ok &&
          joins.value.map((join) => (
            <JoinLine key={join.bar} join={join} timeline={timeline} onPlay={() => play(join)} />
          ))}
      </ol>
    </SheetDialog>
  );
}
