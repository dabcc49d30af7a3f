import type { KeptTexts } from './lastWords.ts';

/**
 * That a song is being opened, kept until it stands on the screen: a page that freezes or fails over
 * a song leaves the mark behind for the next one.
 */
export type OpeningMark = {
  /** Whether a song was begun to be opened and never came up. */
  readonly isLeft: () => boolean;
  readonly begin: () => void;
  readonly end: () => void;
};

/** A mark younger than this may be that of another tab, which is just opening. */
export const OPENING_MS = 2000;

/** The mark under a name among the kept texts; where the browser refuses them no song is ever marked. */
export function openingMarkIn(
  texts: KeptTexts | undefined,
  name: string,
  nowMs: () => number,
): OpeningMark {
  const place = `${name} opening`;
  return {
    isLeft: () => {
      try {
        const begun = texts?.getItem(place);
        return typeof begun === 'string' && Math.abs(nowMs() - Number(begun)) > OPENING_MS;
      } catch {
        return false;
      }
    },
    begin: () => {
      try {
        texts?.setItem(place, String(nowMs()));
      } catch {
        // No room: the song opens without a mark.
      }
    },
    end: () => {
      try {
        texts?.removeItem(place);
      } catch {
        // What refuses to be written holds no mark either.
      }
    },
  };
}
