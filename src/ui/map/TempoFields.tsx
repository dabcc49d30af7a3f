import { useState } from 'react';
import { sectionTicks } from '../../core/song/form.ts';
import type { Section } from '../../core/song/song.ts';
import { BPM_RANGE } from '../../core/time/tempoMap.ts';
import { setTempo } from '../../state/edits/song.ts';
import { beatWords } from '../parts/song/songWords.ts';
import { useParts } from '../parts/tool/parts.ts';
import { useProject } from '../parts/tool/useProject.ts';
import { PressButton, TapTempo } from '../parts/transport/TapTempo.tsx';
import { stretchBpm } from '../parts/transport/tapTempo.ts';

function TapButton() {
  const { store } = useParts();
  return (
    <TapTempo
      onTempo={(bpm) => store.edit(setTempo(bpm), { label: 'tap tempo', gesture: 'tap tempo' })}
    />
  );
}

/** A stop watch: pressed when the section begins and when it ends on a recording, it sets the tempo. */
function SectionTimer({ section }: { readonly section: Section }) {
  const { store } = useParts();
  const { beatTicks } = useProject((project) => project.song.tempo);
  const [startSec, setStart] = useState<number>();
  const press = (atSec: number) => {
    if (startSec === undefined) return setStart(atSec);
    const bpm = stretchBpm(sectionTicks(section), beatTicks, atSec - startSec);
    if (bpm !== undefined) store.edit(setTempo(bpm), { label: 'tempo by stop watch' });
    return setStart(undefined);
  };
  return (
    <PressButton
      title="Press when the section begins on a recording, and again when it ends"
      isOn={startSec !== undefined}
      onPress={press}
    >
      {startSec === undefined ? `Time one ${section.name}` : `Press at the end of ${section.name}`}
    </PressButton>
  );
}

/** The song's tempo in felt beats: typed, tapped, or from the length of a section. */
export function TempoFields({ section }: { readonly section: Section }) {
  const { store } = useParts();
  const { bpm, beatTicks } = useProject((project) => project.song.tempo);
  const beat = beatWords(beatTicks);
  return (
    <>
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
            step="any"
            key={bpm}
            defaultValue={Math.round(bpm * 10) / 10}
            onBlur={(event) => {
              const next = event.target.valueAsNumber;
              if (next > 0 && next !== Math.round(bpm * 10) / 10)
                store.edit(setTempo(next), { label: 'tempo' });
            }}
            onKeyDown={(event) => event.key === 'Enter' && event.currentTarget.blur()}
          />
        </label>
        <TapButton />
      </div>
      <SectionTimer key={section.id} section={section} />
    </>
  );
}
