/** Whether chords are played once through, or round and round with a way back to the first. */
export type VoicingCourse = 'path' | 'loop';

/** From each to the next, in a loop also from the last to the first (one alone to itself). */
export function stepsOf<T>(items: readonly T[], course: VoicingCourse): (readonly [T, T])[] {
  const following = course === 'loop' ? [...items.slice(1), ...items.slice(0, 1)] : items.slice(1);
  return following.map((to, i) => [items[i]!, to] as const);
}
