import { type RefObject, useMemo, useRef } from 'react';
import type { PlaybackPosition } from '../../../app/playbackPosition.ts';
import { drillPattern, isOnChords, isTrial, type PlayRequest } from '../../../app/score.ts';
import { chosenPattern } from '../../../core/rhythm/chosenPattern.ts';
import { layBars } from '../../../core/rhythm/laidBars.ts';
import type { Pattern } from '../../../core/rhythm/pattern.ts';
import { selectPatternAt, selectTimeline } from '../../../state/selectors.ts';
import { useFrame } from '../../kit/useFrame.ts';
import { useParts } from '../tool/parts.ts';
import { usePlayback, useProject } from '../tool/useProject.ts';
import { placeInRounds, placeInSong } from './heardPlace.ts';
import { bringIntoSight } from './inSight.ts';
import { type Pixels, type System, systemAt, tickX } from './systemLayout.ts';
import { BETWEEN_SYSTEMS } from './useGridLayout.ts';

type Props = {
  readonly pattern: Pattern;
  readonly systems: readonly System[];
  /** Height of each system. */
  readonly height: Pixels;
  readonly grid: RefObject<HTMLDivElement | null>;
};

type PlaceOf = (position: PlaybackPosition) => number | undefined;

/** Tells where in this pattern what plays is, while it is played round and round. */
function usePlaceInRounds(pattern: Pattern, request: PlayRequest | undefined): PlaceOf | undefined {
  const heard = useProject((project) => {
    if (request?.kind === 'drill') return isOnChords(request) ? drillPattern(project) : undefined;
    if (request?.kind !== 'pattern' || isTrial(request)) return undefined;
    return chosenPattern(project, request.patternId);
  });
  return heard?.id === pattern.id ? (position) => placeInRounds(position, pattern) : undefined;
}

/** Tells where in this pattern what plays is, while bars of the song are drilled. */
function usePlaceInSong(pattern: Pattern, request: PlayRequest | undefined): PlaceOf | undefined {
  const isInSong = request?.kind === 'drill' && !isOnChords(request);
  const timeline = useProject(selectTimeline);
  const patternAt = useProject(selectPatternAt);
  const laid = useMemo(
    () => (isInSong ? layBars(timeline, patternAt) : undefined),
    [isInSong, timeline, patternAt],
  );
  if (!laid?.ok) return undefined;
  return (position) => placeInSong(position, pattern, laid.value);
}

/** Who works in the grid or at the desk does not want the page to go on under the hand. */
const WORKED_AT = '.pattern-page .pattern-grid, .desk';

/** A thin red line over the spine while this pattern is heard; the system it is in is brought into sight, unless one is at work there. */
export function Playhead({ pattern, systems, height, grid }: Props) {
  const { playback } = useParts();
  const line = useRef<HTMLDivElement>(null);
  const lastSystem = useRef<number>(undefined);
  const playing = usePlayback();
  const request = playing.status === 'playing' ? playing.request : undefined;
  const inRounds = usePlaceInRounds(pattern, request);
  const inSong = usePlaceInSong(pattern, request);
  const placeOf = inRounds ?? inSong;
  useFrame(placeOf !== undefined, () => {
    const position = placeOf && playback.position();
    const tick = position && placeOf(position);
    const system = tick === undefined ? undefined : systemAt(systems, tick);
    if (!line.current) return;
    line.current.hidden = !system;
    if (!system || tick === undefined) return;
    if (lastSystem.current !== system.firstBar) {
      lastSystem.current = system.firstBar;
      const sheet = grid.current?.querySelector<HTMLElement>(`[data-system="${system.firstBar}"]`);
      if (sheet && !document.activeElement?.closest(WORKED_AT)) bringIntoSight(sheet);
    }
    const top = systems.indexOf(system) * (height + BETWEEN_SYSTEMS);
    line.current.style.translate = `${tickX(system, tick)}px ${top}px`;
  });
  return <div ref={line} className="pattern-playhead" style={{ height }} hidden />;
}
