/** How slow and fast a song can be played, in per cent of its tempo. */
export const PLAYING_SPEED = { lowest: 30, highest: 150 } as const;

/** Playing speed a step slower or faster, brought within `PLAYING_SPEED`. */
export function speedChanged(speedPercent: number, by: number): { readonly speedPercent: number } {
  const { lowest, highest } = PLAYING_SPEED;
  return { speedPercent: Math.min(highest, Math.max(lowest, speedPercent + by)) };
}
