import { type RefObject, useRef } from 'react';
import type { PlaybackPosition } from '../../app/playbackPosition.ts';
import { drillPattern, isOnChords, isTrial } from '../../app/score.ts';
import type { PatternId } from '../../core/ids.ts';
import { chosenPattern } from '../../core/rhythm/chosenPattern.ts';
import { type Pattern, patternTicks } from '../../core/rhythm/pattern.ts';
import { useParts } from '../parts.ts';
import { useFrame } from '../useFrame.ts';
import { usePlayback, useProject } from '../useProject.ts';
import { bringIntoSight } from './inSight.ts';
import { straightTick } from './straightTick.ts';
import { type Pixels, type System, systemAt, tickX } from './systemLayout.ts';
import { BETWEEN_SYSTEMS } from './useGridLayout.ts';

type Props = {
  readonly pattern: Pattern;
  readonly systems: readonly System[];
  /** Height of each system. */
  readonly height: Pixels;
  readonly grid: RefObject<HTMLDivElement | null>;
};

/** Where in the pattern's grid a playing position is; undefined in a count-in. */
function patternTick(position: PlaybackPosition, pattern: Pattern): number | undefined {
  if (position.countingIn) return undefined;
  const inPattern = position.tick % patternTicks(pattern);
  return straightTick(inPattern, pattern.meter, pattern.swing);
}

/** Whether what plays is this pattern over one chord. */
function useIsHeard(patternId: PatternId): boolean {
  const playing = usePlayback();
  const request = playing.status === 'playing' ? playing.request : undefined;
  const heard = useProject((project) => {
    if (request?.kind === 'drill') return isOnChords(request) ? drillPattern(project) : undefined;
    if (request?.kind !== 'pattern' || isTrial(request)) return undefined;
    return chosenPattern(project, request.patternId);
  });
  return heard?.id === patternId;
}

/** Who works in the grid or at the desk does not want the page to go on under the hand. */
const WORKED_AT = '.pattern-page .pattern-grid, .desk';

/** A thin red line over the spine while this pattern is heard; the system it is in is brought into sight, unless one is at work there. */
export function Playhead({ pattern, systems, height, grid }: Props) {
  const { playback } = useParts();
  const line = useRef<HTMLDivElement>(null);
  const lastSystem = useRef<number>(undefined);
  const isHeard = useIsHeard(pattern.id);
  useFrame(isHeard, () => {
    const position = isHeard ? playback.position() : undefined;
    const tick = position && patternTick(position, pattern);
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
