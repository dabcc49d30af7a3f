import type { Hands, Hit } from '../../../core/rhythm/pattern.ts';
import type { Ticks } from '../../../core/time/ticks.ts';
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

/** A hit as it was struck one round of `roundTicks` ago. */
function roundBefore({ at, length }: Pick<Hit, 'at' | 'length'>, roundTicks: Ticks) {
  return { at: at - roundTicks, length };
}

/** What is tied over the end of a round into the next. */
export type Tied = { readonly tiedLeft: Hands['left']; readonly tiedRight: Hands['right'] };

export const NOTHING_TIED: Tied = { tiedLeft: [], tiedRight: [] };

/** What both hands struck in the round before, of `roundTicks`, that still sounds in a system. */
export function tiedInto(system: Stretch, { left, right }: Hands, roundTicks: Ticks): Tied {
  const sounds = (hit: Hit) => soundsIn(system, roundBefore(hit, roundTicks));
  return { tiedLeft: left.filter(sounds), tiedRight: right.filter(sounds) };
}

/** What is chosen, where some of it is drawn in a system, be it the end of a tie out of the round before. */
export function chosenIn(
  system: Stretch,
  chosen: Chosen | undefined,
  roundTicks: Ticks,
): Chosen | undefined {
  if (chosen === undefined) return undefined;
  const isIn =
    chosen.kind === 'hit'
      ? soundsIn(system, chosen.hit) || soundsIn(system, roundBefore(chosen.hit, roundTicks))
      : chosen.stroke.at >= system.fromTick && chosen.stroke.at < system.toTick;
  return isIn ? chosen : undefined;
}

/** A place, where it lies in a system. */
export function placeIn({ steps }: Pick<System, 'steps'>, place: Place): Place | undefined {
  const [first, last] = [steps[0], steps.at(-1)];
  const isIn = first && last && place.column >= first.column && place.column <= last.column;
  return isIn ? place : undefined;
}
