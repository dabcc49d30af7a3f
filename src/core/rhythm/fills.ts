import type { Bpm } from '../time/tempoMap.ts';
import type { Ticks } from '../time/ticks.ts';
import { FILL_FIGURES, FILL_KINDS, type FillFigure, type FillKind } from './fillFigures.ts';
import { divisionsHolding, type FillRoom, fillRoom } from './fillRoom.ts';
import { HAND_LIMITS, type HandLimits } from './handLimits.ts';
import { isLongEnough, type LevelChecks, levelChecks } from './levels.ts';
import {
  type Division,
  type Ending,
  type Hands,
  type Hit,
  type LeftHit,
  lastBarDivisions,
  lastBarHands,
  type Pattern,
  type RightHit,
} from './pattern.ts';

/** An ending bar that leads into what follows; the pattern holds until `from`. */
export type Fill = { readonly kind: FillKind; readonly from: Ticks; readonly ending: Ending };

/**
 * The fills that a pattern's ending bar can have at a tempo, in beats of its meter, the smallest
 * first. Each begins as the pattern's last bar does, keeps its first beat (in a bar of one beat its
 * first third), and keeps to the limits of the hands as `levelChecks` estimates them, up to the next
 * downbeat. Fills that would change nothing, or are one like another, are left out.
 */
export function endingFills(pattern: Pattern, bpm: Bpm, limits: HandLimits = HAND_LIMITS): Fill[] {
  const { ending: _ending, ...main } = pattern;
  const grid = { bars: 1, divisions: lastBarDivisions(pattern), sources: [] };
  const bar: Pattern = { ...main, ...lastBarHands(pattern), ...grid };
  const room = fillRoom(bar, bpm, limits);
  const fills = FILL_KINDS.flatMap((kind) => {
    const figure = FILL_FIGURES[kind](room);
    const ending = figure && filledBar(figure, room, bpm);
    return figure && ending ? [{ kind, from: figure.from, ending }] : [];
  });
  const known = new Set([soundOf(bar)]);
  return fills.filter(({ ending }) => {
    const sound = soundOf(ending);
    return !known.has(sound) && known.add(sound);
  });
}

function soundOf({ left, right }: Hands): string {
  return JSON.stringify(
    [left, right].map((hits) => hits.map(({ at, play, held }) => [at, play, held])),
  );
}

/** The bar with a figure in it, divided so that the figure stands on its steps; undefined where the hands can't do it. */
function filledBar(figure: FillFigure, room: FillRoom, bpm: Bpm): Ending | undefined {
  const { bar, limits } = room;
  const divisions = divisionsHolding(ticksOf(figure, bar), room);
  const checks = levelChecks(5, bpm, { ...bar, divisions }, limits);
  const checked = { room, checks };
  const left = handWith<LeftHit>(bar.left, figure.left, figure.from, ['root'], checked);
  const right = handWith<RightHit>(bar.right, figure.right, figure.from, ['all'], checked);
  if (!left || !right) return undefined;
  const stands = standsOn(divisions, room);
  const isOwn = divisions.every((division, i) => division === bar.divisions[i]);
  return {
    // What a hand that goes on plays beside the steps is left out: triplets take the place of swung eighths.
    left: left.filter(({ at }) => stands(at)),
    right: right.filter(({ at }) => stands(at)),
    ...(isOwn ? {} : { divisions }),
  };
}

/** Where the bar's own hits before a figure, and those of the figure, stand. */
function ticksOf({ from, left, right }: FillFigure, bar: Hands): Ticks[] {
  const own: readonly Hit[] = [...bar.left, ...bar.right].filter(({ at }) => at < from);
  const figured = [left, right].flatMap((hits: readonly Hit[] | 'goes on') =>
    hits === 'goes on' ? [] : hits,
  );
  return [...own, ...figured].map(({ at }) => at);
}

/** What a fill is checked by. */
type Checked = { readonly room: FillRoom; readonly checks: LevelChecks };

/**
 * What a hand plays: its own until the figure begins, without what stands too near before it, then the
 * figure; undefined where the figure itself is too much, up to `downbeat`.
 */
function handWith<H extends Hit>(
  own: readonly H[],
  figure: readonly H[] | 'goes on',
  from: Ticks,
  downbeat: H['play'],
  { room, checks }: Checked,
): readonly H[] | undefined {
  if (figure === 'goes on') return own;
  const fits = (a: Hit, b: Hit) => mayFollow(a, b, room, checks);
  const firstBeat = room.beats[0]!.length;
  const [first] = figure;
  const kept = own
    .filter((hit) => hit.at < from && (hit.at < firstBeat || !first || fits(hit, first)))
    .map((hit) => ({ ...hit, length: Math.min(hit.length, from - hit.at) }));
  const last = figure.at(-1);
  const next = last && { ...last, play: downbeat, at: room.end };
  const played = [...kept.slice(-1), ...figure, ...(next && !last.anticipates ? [next] : [])];
  return played.every((hit, i) => i === 0 || fits(played[i - 1]!, hit))
    ? [...kept, ...figure]
    : undefined;
}

/** Whether a hand can strike `to` after `from`; what shares a key needs the time of a repetition. */
function mayFollow(from: Hit, to: Hit, { limits, end }: FillRoom, checks: LevelChecks): boolean {
  const gapSec = checks.gapSec(from.at, to.at % end);
  const struck: readonly string[] = from.play;
  const again = [...struck, ...to.play].some(isSeveral) || to.play.some((t) => struck.includes(t));
  const repeatSec = again ? limits.repeatGapSec : 0;
  return isLongEnough(gapSec, Math.max(repeatSec, checks.followSec(from, to)));
}

/** Whether a tone is more than one note of the chord, so that others may be among them. */
function isSeveral(tone: string): boolean {
  return ['all', 'upper', 'middle', 'root'].includes(tone);
}

/** Whether a tick is a step of the bar when its beats are divided so. */
function standsOn(divisions: readonly Division[], { beats }: FillRoom): (at: Ticks) => boolean {
  const places = new Set(
    beats.flatMap(({ start, length }, i) =>
      Array.from(
        { length: divisions[i]! },
        (_, step) => start + Math.round((step * length) / divisions[i]!),
      ),
    ),
  );
  return (at) => places.has(at);
}
