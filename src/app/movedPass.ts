import { sameBars, sameMoment } from '../core/song/sameMoment.ts';
import type { Timeline } from '../core/song/timeline.ts';
import type { CoursePass } from './course.ts';
import type { Jump } from './jump.ts';
import type { BarRange, Score } from './score.ts';

/** How the bars that a song's passes name move with an edit of the song. */
export type Moved = {
  /** The very same jump for the very same jump. */
  readonly jump: (jump: Jump) => Jump;
  readonly pass: (pass: CoursePass) => CoursePass;
};

/**
 * What becomes of passes of a song, `before` and `after` its timelines: they play the bars that answer
 * to theirs (`sameBars`, `sameMoment`), the whole song where those are gone.
 */
export function movedBy(before: Timeline, after: Timeline): Moved {
  const jumps = new Map<Jump, Jump>();

  const barOf = (bar: number) => {
    const startTick = before.bars[bar]?.startTick ?? before.lengthTicks;
    const tick = sameMoment(before, after, startTick);
    const found = after.bars.findIndex((other) => other.startTick >= tick);
    return found < 0 ? after.bars.length : found;
  };
  const withRange = <T extends { readonly range?: BarRange }>({ range, ...rest }: T) => {
    const moved = range && sameBars(before, after, range);
    return { ...rest, ...(moved && { range: moved }) };
  };
  const jump = (old: Jump): Jump => {
    const known = jumps.get(old);
    if (known) return known;
    const moved = { ...withRange(old), toBar: barOf(old.toBar) };
    jumps.set(old, moved);
    return moved;
  };

  return {
    jump: (old) => (before === after ? old : jump(old)),
    pass(pass) {
      if (before === after || pass.request.kind !== 'song') return pass;
      return {
        ...pass,
        request: withRange(pass.request),
        ...(pass.after && { after: jump(pass.after) }),
        ...(pass.jump && { jump: { to: jump(pass.jump.to), atBar: barOf(pass.jump.atBar) } }),
      };
    },
  };
}

/**
 * The tick of `after` at which music goes on that is at a tick of `before`, two scores of one pass
 * before and after an edit: `sameMoment` within what is played, its nearest end outside. A count-in
 * stays as far from the beginning.
 */
export function sameScoreTick(before: Score, after: Score, tick: number): number {
  if (tick < before.fromTick) return after.fromTick + (tick - before.fromTick);
  const there = sameMoment(before.timeline, after.timeline, tick);
  return Math.min(Math.max(there, after.fromTick), after.toTick);
}
