import type { HandName } from '../../core/voicing/voicing.ts';
import type { Pixels } from './systemLayout.ts';

/** What follows the pointer while a stroke of the band is pulled; it stands in the grid, hidden until then. */
const FOLLOWER = '.pattern-pulled';

/** A finger covers what it pulls, which therefore goes so far ahead of it. */
const ABOVE_FINGER: Pixels = 40;

/** Lets the pulled stroke, with its name, follow the pointer, and marks the hand that it would go into, if it is over one. */
export function showPulled(
  grid: HTMLElement | null,
  pointer: {
    readonly clientX: Pixels;
    readonly clientY: Pixels;
    readonly pointerType: string;
  },
  name: string,
  hand: HandName | undefined,
): void {
  const follower = grid?.querySelector<HTMLElement>(FOLLOWER);
  if (!grid || !follower) return;
  const { left, top } = grid.getBoundingClientRect();
  const above = pointer.pointerType === 'touch' ? ABOVE_FINGER : 0;
  grid.dataset['pull'] = hand ?? '';
  follower.dataset['name'] = name;
  follower.style.display = 'block';
  follower.style.translate = `${pointer.clientX - left}px ${pointer.clientY - top - above}px`;
}

/** Ends what `showPulled` shows. */
export function hidePulled(grid: HTMLElement | null): void {
  const follower = grid?.querySelector<HTMLElement>(FOLLOWER);
  if (!grid || !follower) return;
  delete grid.dataset['pull'];
  follower.style.display = 'none';
}
