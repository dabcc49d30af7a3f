import { useRef } from 'react';
import { type Key, type Mode, writableKey } from '../../core/harmony/key.ts';
import { formatPitchClass, samePitchClass } from '../../core/harmony/pitch.ts';
import { BPM_RANGE, secondsAt } from '../../core/time/tempoMap.ts';
import { setKey, setNotes, setTempo } from '../../state/edits/song.ts';
import { selectTempoMap, selectTimeline } from '../../state/selectors.ts';
import { MusicText } from '../ChordName.tsx';
import { useParts } from '../parts.ts';
import { useProject } from '../useProject.ts';
import { barCount, beatWords, clockText, signatureText, tonicChoices } from './songWords.ts';
import { tappedBpm, withTap } from './tapTempo.ts';

function KeyFields() {
  const { store } = useParts();
  const key = useProject((project) => project.song.key);
  const tonics = tonicChoices(key.mode);
  const choose = (next: Key) => store.edit(setKey(writableKey(next)), { label: 'key' });
  return (
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
        <span>
          <MusicText text={signatureText(key)} />
        </span>
        <select
          aria-label="Mode"
          value={key.mode}
          onChange={(event) => choose({ tonic: key.tonic, mode: event.target.value as Mode })}
        >
          <option value="major">major</option>
          <option value="minor">minor</option>
        </select>
      </label>
    </div>
  );
}

function TempoFields() {
  const { store } = useParts();
  const { bpm, beatTicks } = useProject((project) => project.song.tempo);
  const taps = useRef<readonly number[]>([]);
  const beat = beatWords(beatTicks);
  const tap = (atMs: number) => {
    taps.current = withTap(taps.current, atMs / 1000);
    const tapped = tappedBpm(taps.current);
    if (tapped !== undefined)
      store.edit(setTempo(tapped), { label: 'tap tempo', gesture: 'tap tempo' });
  };
  return (
    <div className="songmap-pair">
      <label className="field">
        <span>
          <span className="sign" aria-hidden="true">
            {beat.sign}
          </span>{' '}
          {beat.name} =
        </span>
        <input
          type="number"
          aria-label={`Tempo, ${beat.name} beats a minute`}
          min={BPM_RANGE.lowest}
          max={BPM_RANGE.highest}
          key={bpm}
          defaultValue={Math.round(bpm * 10) / 10}
          onBlur={(event) => {
            const next = event.target.valueAsNumber;
            if (next > 0 && next !== bpm) store.edit(setTempo(next), { label: 'tempo' });
          }}
          onKeyDown={(event) => event.key === 'Enter' && event.currentTarget.blur()}
        />
      </label>
      <button
        type="button"
        className="songmap-tap"
        title="Tap the beat three times or more"
        onPointerDown={(event) => tap(event.timeStamp)}
        onKeyDown={(event) =>
          (event.key === 'Enter' || event.key === ' ') && !event.repeat && tap(event.timeStamp)
        }
      >
        Tap
      </button>
    </div>
  );
}

function Length() {
  const timeline = useProject(selectTimeline);
  const tempoMap = useProject(selectTempoMap);
  const length = clockText(secondsAt(tempoMap, timeline.lengthTicks));
  return (
    <p className="songmap-length">
      <strong>{length}</strong> long, {barCount(timeline.bars.length)}
    </p>
  );
}

function Notes() {
  const { store } = useParts();
  const notes = useProject((project) => project.song.notes);
  return (
    <label className="field">
      <span>Notes</span>
      <textarea
        className="songmap-notes"
        rows={4}
        value={notes}
        onChange={(event) =>
          store.edit(setNotes(event.target.value), { label: 'notes', gesture: 'notes' })
        }
      />
    </label>
  );
}

/** The song as a whole: key, tempo, length, remarks. */
export function SongFacts() {
  return (
    <section className="songmap-side-part" aria-label="The song">
      <h3>The song</h3>
      <KeyFields />
      <TempoFields />
      <Length />
      <Notes />
    </section>
  );
}
