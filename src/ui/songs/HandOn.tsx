import { useId, useState } from 'react';
import { exportMidi, exportSong, midiFileName, songFileName } from '../../app/exports.ts';
import type { ScoreProblem } from '../../app/score.ts';
import { formatChordSymbol } from '../../core/harmony/chordSymbol.ts';
import { AS_WRITTEN } from '../../state/arrangement.ts';
import { saveFile } from '../kit/saveFile.ts';
import { Toggle } from '../kit/Toggle.tsx';
import { scoreSentence } from '../parts/tool/messages.ts';
import { useParts } from '../parts/tool/parts.ts';
import { useProject, useView } from '../parts/tool/useProject.ts';
import { ArrangementButton } from '../parts/transport/ArrangementButton.tsx';
import {
  type ChoiceProps,
  FIRST_CHOICES,
  type HandOnChoices,
  midiPassage,
  trackRequest,
} from './handOnChoices.ts';
import { PracticeTrack } from './PracticeTrack.tsx';
import type { Track } from './useTrack.ts';

function SongFile() {
  const { store } = useParts();
  const save = () => {
    const project = store.snapshot();
    saveFile(songFileName(project), exportSong(project));
  };
  return (
    <div className="songs-hand-on">
      <div>
        <h4>Song file</h4>
        <p className="hint">All of this song, for a band mate, a student or another device.</p>
      </div>
      <button type="button" onClick={save}>
        Save song file
      </button>
    </div>
  );
}

/** Song or drill, with or without band and click, the song in which key: the same for both kinds of music file. */
function WhatMusic({ choices, onChoose }: ChoiceProps) {
  const chord = useProject((project) => formatChordSymbol(project.practice.drill.chord));
  const { band, click } = useProject((project) => project.practice);
  const withBand = choices.band ?? band;
  const withClick = choices.click ?? click.on;
  return (
    <fieldset className="bare songs-what">
      <legend className="visually-hidden">What is handed on</legend>
      <div className="songs-choice">
        {(['song', 'drill'] as const).map((kind) => (
          <label key={kind} className="songs-radio">
            <input
              type="radio"
              name="songs-passage"
              checked={choices.kind === kind}
              onChange={() => onChoose({ kind })}
            />
            {kind === 'song' ? 'Whole song' : `Drill on ${chord}`}
          </label>
        ))}
      </div>
      <div className="songs-choice">
        <Toggle name="Band" isOn={withBand} onToggle={() => onChoose({ band: !withBand })} />
        <Toggle name="Click" isOn={withClick} onToggle={() => onChoose({ click: !withClick })} />
        {choices.kind === 'song' && (
          <ArrangementButton
            arrangement={choices.arrangement ?? AS_WRITTEN}
            onChange={(arrangement) => onChoose({ arrangement })}
          />
        )}
      </div>
    </fieldset>
  );
}

function MidiFile({ choices }: Pick<ChoiceProps, 'choices'>) {
  const { store } = useParts();
  const [problem, setProblem] = useState<ScoreProblem>();
  const save = () => {
    const project = store.snapshot();
    const passage = midiPassage(choices, project);
    const { band, click } = trackRequest(choices, project);
    const made = exportMidi(project, { passage, band, click });
    if (made.ok) saveFile(midiFileName(project, passage), made.value);
    setProblem(made.ok ? undefined : made.error);
  };
  return (
    <div className="songs-hand-on">
      <div>
        <h4>MIDI file</h4>
        <p className="hint">Both hands and what is chosen above, each on its own track.</p>
        <p role="status" className="songs-problem">
          {problem && scoreSentence(problem)}
        </p>
      </div>
      <button type="button" onClick={save}>
        Save MIDI file
      </button>
    </div>
  );
}

/** The ways to hand the open song on: as a song file, as a MIDI file, as a track to practise with. */
export function HandOn({ track }: { readonly track: Track }) {
  const [chosen, setChosen] = useState(FIRST_CHOICES);
  const arrangement = useView((state) => state.arrangement);
  const choices = { arrangement, ...chosen };
  const onChoose = (change: Partial<HandOnChoices>) => setChosen({ ...chosen, ...change });
  const heading = useId();
  return (
    <section className="songs-part" aria-labelledby={heading}>
      <h3 id={heading}>Hand on</h3>
      <SongFile />
      <div className="songs-music">
        <WhatMusic choices={choices} onChoose={onChoose} />
        <MidiFile choices={choices} />
        <PracticeTrack choices={choices} onChoose={onChoose} track={track} />
      </div>
    </section>
  );
}
