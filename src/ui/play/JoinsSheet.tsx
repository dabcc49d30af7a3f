import '../parts/plan/sheets.css';
import type { Join } from '../../core/practice/joins.ts';
import { climbTo } from '../../core/practice/planTopics.ts';
import { chordAt, type Timeline } from '../../core/song/timeline.ts';
import { selectTimeline } from '../../state/selectors.ts';
import { SheetDialog } from '../kit/SheetDialog.tsx';
import { joinName, joinWords } from '../parts/plan/joinWords.ts';
import { NothingPlayableNote } from '../parts/plan/NothingPlayableNote.tsx';
import { tempoWords } from '../parts/plan/planWords.ts';
import { drillPassage } from '../parts/plan/practise.ts';
import { selectHardJoins } from '../parts/plan/songToPractise.ts';
import { ChordName } from '../parts/song/ChordName.tsx';
import { useParts } from '../parts/tool/parts.ts';
import { useProject } from '../parts/tool/useProject.ts';
import { useTakeHistory } from '../parts/tool/useTakeHistory.ts';

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
  tempos,
  onDrill,
}: {
  readonly join: Join;
  readonly timeline: Timeline;
  readonly tempos: ReturnType<typeof climbTo>;
  readonly onDrill: () => void;
}) {
  const name = joinName(timeline, join);
  return (
    <li>
      <div>
        <h3>{name}</h3>
        <p>
          {joinWords(join)}
          {join.times > 1 && `; comes ${join.times === 2 ? 'twice' : `${join.times} times`}`};{' '}
          {tempoWords(tempos.startBpm, tempos.goalBpm)}
        </p>
      </div>
      <JoinChords timeline={timeline} bar={join.bar} />
      <button type="button" aria-label={`Drill this join: ${name}`} onClick={onDrill}>
        Drill this join
      </button>
    </li>
  );
}

/** The places where sections meet, hardest first; each opens as a drill that climbs to the song's tempo. */
export function JoinsSheet({ onClose }: { readonly onClose: () => void }) {
  const parts = useParts();
  const timeline = useProject(selectTimeline);
  const joins = useProject(selectHardJoins);
  const songBpm = useProject((project) => project.song.tempo.bpm);
  const history = useTakeHistory();
  const lines = (joins.ok ? joins.value : []).map((join) => {
    const passage = { kind: 'join', from: join.from, to: join.to } as const;
    return { join, passage, tempos: climbTo(songBpm, passage, history) };
  });
  return (
    <SheetDialog title="Hard joins" onClose={onClose}>
      <p>The last bar of one section and the first of the next, again and again; hardest first.</p>
      {!joins.ok && <NothingPlayableNote problem={joins.error} />}
      {joins.ok && lines.length === 0 && <p>The song has one section only: no joins.</p>}
      <ol className="practice-list">
        {lines.map(({ join, passage, tempos }) => (
          <JoinLine
            key={join.bar}
            join={join}
            timeline={timeline}
            tempos={tempos}
            onDrill={() => {
              onClose();
              drillPassage(parts, passage, tempos);
            }}
          />
        ))}
      </ol>
    </SheetDialog>
  );
}
