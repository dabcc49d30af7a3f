import type { HandLimits } from '../../../core/rhythm/handLimits.ts';
import { useView } from '../tool/useProject.ts';

/** What the player's hands can do, as set on this device; the usual limits where nothing was. */
export function useHandLimits(): HandLimits {
  return useView((view) => view.handLimits);
}
