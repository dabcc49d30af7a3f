import type { Bpm } from '../../../core/time/tempoMap.ts';
import { useProject, useView } from '../tool/useProject.ts';

/** The tempo at which patterns are heard: the song's, at the speed that is set on this device. */
export function useHeardTempo(): Bpm {
  const bpm = useProject((project) => project.song.tempo.bpm);
  const speed = useView((view) => view.speedPercent);
  return (bpm * speed) / 100;
}
