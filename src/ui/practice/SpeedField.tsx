import { useParts } from '../parts.ts';
import { PLAYING_SPEED } from '../playingSpeed.ts';
import { useProject, useView } from '../useProject.ts';
import { NumberField } from './NumberField.tsx';

/** The playing speed in per cent of the song's tempo, with the tempo that it makes. */
export function SpeedField() {
  const { view } = useParts();
  const speedPercent = useView((state) => state.speedPercent);
  const bpm = useProject((project) => project.song.tempo.bpm);
  return (
    <div className="row practice-speed">
      <NumberField
        label="Speed, in per cent"
        value={speedPercent}
        step={5}
        lowest={PLAYING_SPEED.lowest}
        highest={PLAYING_SPEED.highest}
        onChange={(percent) => view.set({ speedPercent: percent })}
      />
      <output>
        {Math.round((bpm * speedPercent) / 100)} beats a minute, the song’s {bpm}
      </output>
    </div>
  );
}
