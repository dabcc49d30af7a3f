import { useRef, useState } from 'react';
import { sectionTicks } from '../../core/song/form.ts';
import type { Section } from '../../core/song/song.ts';
import { BPM_RANGE } from '../../core/time/tempoMap.ts';
import { setTempo } from '../../state/edits/song.ts';
import { useParts } from '../parts.ts';
import { useProject } from '../useProject.ts';
import { beatWords } from './songWords.ts';
import { stretchBpm, tappedBpm, withTap } from './tapTempo.ts';

/** A button that acts the moment it goes down, by any means, with the time of the event in seconds. */
function PressButton({
  title,
  isOn,
  onPress,
  children,
}: {
  readonly title: string;
  readonly isOn?: boolean;
  readonly onPress: (atSec: number) => void;
  readonly children: string;
}) {
  return (
    <button
      type="button"
      title={title}
      aria-pressed={isOn}
      onPointerDown={({ timeStamp }) => onPress(timeStamp / 1000)}
      onKeyDown={({ key, repeat, timeStamp }) => {
        if ((key === 'Enter' || key === ' ') && !repeat) onPress(timeStamp / 1000);
      }}
    >
      {children}
    </button>
  );
}

function TapButton() {
  const { store } = useParts();
  const taps = useRef<readonly number[]>([]);
  const tap = (atSec: number) => {
    taps.current = withTap(taps.current, atSec);
    const tapped = tappedBpm(taps.current);
    if (tapped !== undefined)
      store.edit(setTempo(tapped), { label: 'tap tempo', gesture: 'tap tempo' });
  };
  return (
    <PressButton title="Tap the beat three times or more" onPress={tap}>
      Tap
    </PressButton>
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
