import type { Hands, Hit } from '../../core/rhythm/pattern.ts';
import type { Chosen, Place } from './gridPlace.ts';
import type { System } from './systemLayout.ts';

type Stretch = Pick<System, 'fromTick' | 'toTick'>;

/** Whether a hit sounds in a system. */
function soundsIn({ fromTick, toTick }: Stretch, { at, length }: Pick<Hit, 'at' | 'length'>) {
  return at < toTick && at + length > fromTick;
}

/** What both hands play in a system, hits that last into it or out of it included. */
export function handsIn(system: Stretch, { left, right }: Hands): Hands {
  const sounds = (hit: Hit) => soundsIn(system, hit);
  return { left: left.filter(sounds), right: right.filter(sounds) };
}

/** What is chosen, where some of it is drawn in a system. */
export function chosenIn(system: Stretch, chosen: Chosen | undefined): Chosen | undefined {
  if (chosen === undefined) return undefined;
  const isIn =
    chosen.kind === 'hit'
      ? soundsIn(system, chosen.hit)
      : chosen.stroke.at >= system.fromTick && chosen.stroke.at < system.toTick;
  return isIn ? chosen : undefined;
}

/** A place, where it lies in a system. */
export function placeIn({ steps }: Pick<System, 'steps'>, place: Place): Place | undefined {
  const [first, last] = [steps[0], steps.at(-1)];
  const isIn = first && last && place.column >= first.column && place.column <= last.column;
  return isIn ? place : undefined;
}
