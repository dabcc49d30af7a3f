import { ok } from '../core/result.ts';
import type { HandName } from '../core/voicing/voicing.ts';
import { type HitInput, hitTime, listenTo, type Stop } from './hitInput.ts';

/** A computer key for each hand, by its place on the keyboard (`KeyboardEvent.code`), whatever is printed on it. */
export type TwoKeys = Readonly<Record<HandName, string>>;

/** Where the index fingers rest; both keys have a bump to feel. */
export const HOME_KEYS: TwoKeys = { left: 'KeyF', right: 'KeyJ' };

/**
 * Two computer keys, pressed anywhere on `target` (the window). Repeats of a key held down are no
 * hits, nor are presses with Control, Alt or Command, or while a text is typed. The keys then do
 * nothing else on the page.
 */
export function twoKeys(target: EventTarget, keys: TwoKeys = HOME_KEYS): HitInput {
  return async (hearing) => {
    const stop = listenTo(target, 'keydown', (event: KeyboardEvent) => {
      const hand = handOfKey(event, keys);
      if (!hand) return;
      event.preventDefault();
      if (!event.repeat) hearing.onHit({ atSec: hitTime(event.timeStamp, hearing), hand });
    });
    return ok(stop);
  };
}

function handOfKey(event: KeyboardEvent, keys: TwoKeys): HandName | undefined {
  if (event.ctrlKey || event.altKey || event.metaKey || isTyping(event.target)) return undefined;
  if (event.code === keys.left) return 'left';
  return event.code === keys.right ? 'right' : undefined;
}

function isTyping(target: EventTarget | null): boolean {
  if (typeof HTMLElement === 'undefined' || !(target instanceof HTMLElement)) return false;
  return target.isContentEditable || /^(INPUT|TEXTAREA|SELECT)$/.test(target.tagName);
}

/** Two pads to touch or click; several fingers on one pad each make a hit. */
export function twoPads(pads: Readonly<Record<HandName, EventTarget>>): HitInput {
  return async (hearing) => {
    const listenToPad = (hand: HandName): Stop =>
      listenTo(pads[hand], 'pointerdown', (event: PointerEvent) => {
        event.preventDefault();
        hearing.onHit({ atSec: hitTime(event.timeStamp, hearing), hand });
      });
    const stops = [listenToPad('left'), listenToPad('right')];
    return ok(() => {
      for (const stop of stops) stop();
    });
  };
}
