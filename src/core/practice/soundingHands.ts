/** Which hands the tool sounds; the player plays the others, or both where it sounds both or none. */
export type SoundingHands = 'left' | 'right' | 'both' | 'none';
