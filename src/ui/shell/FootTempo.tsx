import type { DrillPlace } from '../../app/drillCourse.ts';
import type { Bpm } from '../../core/time/tempoMap.ts';
import { Icon } from '../kit/Icon.tsx';
import { useParts } from '../parts/tool/parts.ts';
import { usePlayback, useProject, useView } from '../parts/tool/useProject.ts';
import { changeTempo } from '../parts/transport/changeTempo.ts';
import { useDrill } from '../parts/transport/useDrill.ts';

/** What the playing tempo is measured by: the song's, or that of a pattern that is tried. */
function speedWords(speedPercent: number, songBpm: Bpm, ownBpm: Bpm | undefined): string {
  if (speedPercent !== 100) return `${speedPercent} % of ${Math.round(ownBpm ?? songBpm)}`;
  return ownBpm === undefined ? 'song tempo' : 'its own tempo';
}

/** What a drill's tempo is: its rung's, or the goal's in turn with it, or so many beats faster or slower. */
function rungWords(place: DrillPlace | undefined): string {
  const { nudgeBpm = 0, isAtGoal } = place ?? {};
  if (nudgeBpm === 0) return isAtGoal ? 'the goal' : 'this rung';
  return `${isAtGoal ? 'goal' : 'rung'} ${nudgeBpm > 0 ? '+' : '−'} ${Math.abs(nudgeBpm)}`;
}

function Tempo({
  bpm,
  words,
  canChange,
}: {
  readonly bpm: Bpm;
  readonly words: string;
  readonly canChange: boolean;
}) {
  const parts = useParts();
  return (
    <fieldset className="foot-group bare" disabled={!canChange}>
      <legend className="visually-hidden">Tempo</legend>
      <button type="button" aria-label="Slower" onClick={() => changeTempo(parts, -1)}>
        <Icon name="minus" />
      </button>
      <output className="foot-tempo" aria-label="Tempo in beats a minute">
        <strong>{Math.round(bpm)}</strong>
        <small>{words}</small>
      </output>
      <button type="button" aria-label="Faster" onClick={() => changeTempo(parts, 1)}>
        <Icon name="plus" />
      </button>
    </fieldset>
  );
}

/** The tempo of a drill's rung, which can be nudged while it plays. */
function DrillTempo() {
  const { bpm, place } = useDrill();
  return <Tempo bpm={bpm} words={rungWords(place)} canChange={place !== undefined} />;
}

/** The tempo of the song, or of the pattern that is heard, at the speed that is set. */
function SongTempo() {
  const speed = useView((state) => state.speedPercent);
  const songBpm = useProject((project) => project.song.tempo.bpm);
  const playing = usePlayback();
  const request = playing.status === 'playing' ? playing.request : undefined;
  const ownBpm = request?.kind === 'pattern' ? request.bpm : undefined;
  const bpm = playing.status === 'playing' ? playing.bpm : (songBpm * speed) / 100;
  return <Tempo bpm={bpm} words={speedWords(speed, songBpm, ownBpm)} canChange />;
}

/** The tempo of what plays, or of what this page would play. */
export function FootTempo() {
  const playing = usePlayback();
  const isOnDrill = useView((state) => state.page === 'drill');
  const isDrill = playing.status === 'stopped' ? isOnDrill : playing.request.kind === 'drill';
  return isDrill ? <DrillTempo /> : <SongTempo />;
}
