import { useMemo } from 'react';
import { type TrackRequest, trackSec } from '../../app/exports.ts';
import { unreachable } from '../../core/result.ts';
import { BPM_RANGE } from '../../core/time/tempoMap.ts';
import { NumberField } from '../kit/NumberField.tsx';
import { Toggle } from '../kit/Toggle.tsx';
import { clockText } from '../parts/song/songWords.ts';
import { useProject } from '../parts/tool/useProject.ts';
import { switched } from '../parts/transport/toolHands.ts';
import { type ChoiceProps, chosenBpm, DRILL_MINUTES, trackRequest } from './handOnChoices.ts';
import { trackSentence } from './songsMessages.ts';
import type { Track, TrackState } from './useTrack.ts';

/** How the track is played: who sounds, how fast, how it begins, and how long a drill goes on. */
function TrackChoices({ choices, onChoose }: ChoiceProps) {
  const project = useProject((open) => open);
  const { hands, countInBars } = trackRequest(choices, project);
  const { kind } = choices;
  return (
    <div className="songs-track">
      <div className="songs-choice" role="group" aria-label="Hands that sound">
        <span>Hands</span>
        {(['left', 'right'] as const).map((hand) => (
          <Toggle
            key={hand}
            name={hand === 'left' ? 'Left' : 'Right'}
            isOn={hands === hand || hands === 'both'}
            onToggle={() => onChoose({ hands: switched(hands, hand) })}
          />
        ))}
      </div>
      <NumberField
        label="Tempo"
        value={Math.round(chosenBpm(choices, project))}
        lowest={BPM_RANGE.lowest}
        highest={BPM_RANGE.highest}
        onChange={(bpm) => onChoose({ tempo: { projectId: project.id, kind, bpm } })}
      />
      <label className="songs-choice">
        <span>Count-in</span>
        <select
          value={countInBars}
          onChange={(event) => {
            const bars = ([0, 1, 2] as const).find((each) => each === Number(event.target.value));
            if (bars !== undefined) onChoose({ countInBars: bars });
          }}
        >
          <option value={0}>none</option>
          <option value={1}>one bar</option>
          <option value={2}>two bars</option>
        </select>
      </label>
      {kind === 'drill' && (
        <label className="songs-choice">
          <span>Goes on for</span>
          <select
            value={choices.minutes}
            onChange={(event) => {
              const minutes = DRILL_MINUTES.find((each) => each === Number(event.target.value));
              if (minutes) onChoose({ minutes });
            }}
          >
            {DRILL_MINUTES.map((minutes) => (
              <option key={minutes} value={minutes}>
                {minutes === 1 ? '1 minute' : `${minutes} minutes`}
              </option>
            ))}
          </select>
        </label>
      )}
    </div>
  );
}

function trackWords(state: TrackState): string {
  switch (state.kind) {
    case 'none':
    case 'making':
      return '';
    case 'failed':
      return trackSentence(state.problem);
    case 'saved':
      return `Saved as “${state.fileName}”.`;
    default:
      return unreachable(state);
  }
}

/** The button that makes the track; while one is made it says how far that is, keeps the focus and starts no second one. */
function MakeTrack({ track, request }: { readonly track: Track; readonly request: TrackRequest }) {
  const { state, make } = track;
  const isSilent = request.hands === 'none' && !request.band && !request.click;
  const isMaking = state.kind === 'making';
  return (
    <button
      type="button"
      disabled={isSilent}
      aria-disabled={isMaking}
      onClick={() => void make(request)}
    >
      {isMaking ? `Making … ${state.percent ?? 0} %` : 'Make practice track'}
    </button>
  );
}

/** Under the choices: how far the track is and the way to give it up, or what became of it. */
function TrackNews({ track }: { readonly track: Track }) {
  const { state, giveUp } = track;
  return (
    <div className="songs-news">
      {state.kind === 'making' && (
        <>
          <progress aria-label="Practice track" max={100} value={state.percent} />
          <button type="button" onClick={giveUp}>
            Give up
          </button>
        </>
      )}
      <p role="status" className={state.kind === 'failed' ? 'songs-problem' : 'hint'}>
        {trackWords(state)}
      </p>
    </div>
  );
}

/** The practice track: what it is like, and the button that makes it. */
export function PracticeTrack({
  choices,
  onChoose,
  track,
}: ChoiceProps & { readonly track: Track }) {
  const project = useProject((open) => open);
  const request = useMemo(() => trackRequest(choices, project), [choices, project]);
  const lengthSec = useMemo(() => trackSec(project, request), [project, request]);
  return (
    <div className="songs-block">
      <div className="songs-hand-on">
        <div>
          <h4>Practice track</h4>
          <p className="hint">
            A sound file (WAV)
            {lengthSec === undefined
              ? '.'
              : `, ${clockText(lengthSec)} long with count-in and the last notes dying away.`}
          </p>
        </div>
        <MakeTrack track={track} request={request} />
      </div>
      <TrackChoices choices={choices} onChoose={onChoose} />
      <TrackNews track={track} />
    </div>
  );
}
