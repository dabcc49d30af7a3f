/**
 * Swing: of each pair of eighths (or sixteenths) the first lasts `ratio` times the second.
 * 1 is straight, 2 the triplet feel, 3 the dotted one.
 */
export type Swing = { readonly level: 'eighth' | 'sixteenth'; readonly ratio: number };

export const STRAIGHT: Swing = { level: 'eighth', ratio: 1 };
