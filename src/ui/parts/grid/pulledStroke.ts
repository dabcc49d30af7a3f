import type { HandName } from '../../../core/voicing/voicing.ts';
import type { Pixels, System } from './systemLayout.ts';

/** What follows the pointer while a stroke of the band is pulled; it stands in the grid, hidden until then. */
const FOLLOWER = '.pattern-pulled';

/** A finger covers what it pulls, which therefore goes so far ahead of it. */
const ABOVE_FINGER: Pixels = 40;

/**
 * Lets the pulled stroke, with its name, follow the pointer up and down at the x of its own step, where
 * it would stand in a hand; marks the hand that it would go into in its system, if the pointer is over one.
 */
export function showPulled(
  grid: HTMLElement | null,
  pointer: { readonly clientY: Pixels; readonly pointerType: string },
  pulled: {
    readonly name: string;
    readonly x: Pixels;
    readonly system: Pick<System, 'firstBar'>;
    readonly hand: HandName | undefined;
  },
): void {
  const follower = grid?.querySelector<HTMLElement>(FOLLOWER);
  if (!grid || !follower) return;
  const above = pointer.pointerType === 'touch' ? ABOVE_FINGER : 0;
  const y = pointer.clientY - grid.getBoundingClientRect().top - above;
  const { firstBar } = pulled.system;
  const system = grid.querySelector<HTMLElement>(`[data-system="${firstBar}"]`);
  if (system) system.dataset['pull'] = pulled.hand ?? '';
  follower.dataset['name'] = pulled.name;
  follower.style.display = 'block';
  follower.style.translate = `${pulled.x}px ${y}px`;
}

/** Ends what `showPulled` shows. */
export function hidePulled(grid: HTMLElement | null): void {
  const follower = grid?.querySelector<HTMLElement>(FOLLOWER);
  if (!grid || !follower) return;
  for (const system of grid.querySelectorAll<HTMLElement>('[data-pull]'))
    delete system.dataset['pull'];
  follower.style.display = 'none';
}
