import type { Hit, Step } from '../../../core/rhythm/pattern.ts';
import type { Source, Stroke } from '../../../core/rhythm/sources.ts';
import type { Ticks } from '../../../core/time/ticks.ts';
import type { Row, RowLayout } from './rowLayout.ts';
import { type Pixels, type System, tickAtX, tickX } from './systemLayout.ts';

/** What lies under the pointer: a row of a system, and the tick there (not rounded, within the system). */
export type Spot = {
  readonly system: System;
  readonly row: Row;
  readonly x: Pixels;
  /** From the upper edge of the row. */
  readonly y: Pixels;
  readonly tick: number;
  /** How far to the right of the system's last bar line the pointer is; 0 within it. */
  readonly beyond: Pixels;
};

/** A system's upper left corner, in the coordinates of the pointer. */
export type Corner = { readonly left: Pixels; readonly top: Pixels };

/** How near to a hit's end it is grabbed to be lengthened: a mouse is finer than a finger. */
export const END_REACH = { fine: 9, coarse: 16 } as const;

function clamped(value: number, least: number, most: number): number {
  return Math.min(Math.max(value, least), most);
}

/**
 * The spot under a pointer. `corners` are those of the systems, from the top down. Beside, above and
 * below the systems the nearest place counts, so that a drag may leave the grid; undefined without systems.
 */
export function spotAt(
  systems: readonly System[],
  corners: readonly Corner[],
  layout: RowLayout,
  pointer: { readonly x: Pixels; readonly y: Pixels },
): Spot | undefined {
  const below = corners.findLastIndex(({ top }) => top <= pointer.y);
  const i = Math.max(below, 0);
  const system = systems[i];
  const corner = corners[i];
  if (!system || !corner) return undefined;
  const y = clamped(pointer.y - corner.top, 0, layout.height - 1);
  const placed = layout.rows.findLast(({ top }) => top <= y);
  if (!placed) return undefined;
  const x = clamped(pointer.x - corner.left, system.left, system.right);
  const tick = Math.min(tickAtX(system, x), system.toTick - 1e-6);
  const beyond = Math.max(pointer.x - corner.left - system.right, 0);
  return { system, row: placed.row, x, y: y - placed.top, tick, beyond };
}

/** How far from a stroke of the band a finger may come down: its place is at least 44 pixels high and wide. */
export const STROKE_REACH: Pixels = 22;

/** A stroke of the band under a finger. */
export type NearStroke = { readonly source: Source; readonly stroke: Stroke };

/** Where the strokes of a lane are drawn, on the average: behind the line of their step. */
export const STROKE_MIDDLE: Pixels = 6;

/**
 * The stroke of the band that a finger means: the nearest within its reach of the middle of the
 * stroke, also from beside the lane; undefined where there is none. `corners` are those of the systems.
 */
export function strokeNear(
  systems: readonly System[],
  corners: readonly Corner[],
  layout: RowLayout,
  finger: { readonly x: Pixels; readonly y: Pixels },
): NearStroke | undefined {
  let nearest: (NearStroke & { readonly distance: Pixels }) | undefined;
  for (const [i, system] of systems.entries())
    for (const { row, top, height } of layout.rows) {
      const corner = corners[i];
      const down = corner ? Math.abs(finger.y - corner.top - top - height / 2) : Infinity;
      if (!corner || row.kind !== 'source' || down > STROKE_REACH) continue;
      for (const stroke of row.source.strokes) {
        const isHere = stroke.at >= system.fromTick && stroke.at < system.toTick;
        const x = corner.left + tickX(system, stroke.at) + STROKE_MIDDLE;
        const across = isHere ? Math.abs(finger.x - x) : Infinity;
        const distance = Math.hypot(down, across);
        if (across <= STROKE_REACH && distance < (nearest?.distance ?? Infinity))
          nearest = { source: row.source, stroke, distance };
      }
    }
  return nearest && { source: nearest.source, stroke: nearest.stroke };
}

/** The hit of a hand that sounds at a tick; undefined where it rests. */
export function hitUnder<H extends Hit>(hits: readonly H[], tick: number): H | undefined {
  return hits.find(({ at, length }) => at <= tick && tick < at + length);
}

/** The hit of the round before, of so many ticks, that is tied over the end and still sounds at a tick. */
export function tiedUnder<H extends Hit>(
  hits: readonly H[],
  tick: number,
  roundTicks: Ticks,
): H | undefined {
  return hits.find(({ at, length }) => tick < at + length - roundTicks);
}

/** Whether a hit is held by its right end, where it is drawn out, or by its body, where it is moved. */
export function grippedBy(
  hit: Pick<Hit, 'at' | 'length'>,
  spot: Pick<Spot, 'system' | 'x'>,
  reach: Pixels,
): 'end' | 'body' {
  const end = tickX(spot.system, hit.at + hit.length);
  const width = end - tickX(spot.system, hit.at);
  return end - spot.x <= Math.min(reach, width / 3) ? 'end' : 'body';
}

/** Number of the step whose start is nearest to a tick, the earlier of two. */
export function nearestColumn(steps: readonly Step[], tick: number): number {
  const distances = steps.map(({ at }) => Math.abs(at - tick));
  return distances.indexOf(Math.min(...distances));
}

/** Beyond the last bar line there is little room: every so many pixels draw a hit over the end by one more step. */
export const STEP_BEYOND: Pixels = 14;

/** The tick to which a hit's end is drawn at a spot; beyond the last bar line it lies in the next round. */
export function tickDrawnTo(
  steps: readonly Step[],
  { system, tick, beyond }: Pick<Spot, 'system' | 'tick' | 'beyond'>,
): number {
  const ends = stepEnds(steps);
  const whole = ends.at(-1) ?? 0;
  const over = Math.min(Math.floor(beyond / STEP_BEYOND), ends.length);
  return over > 0 && system.toTick === whole ? whole + ends[over - 1]! : tick;
}

function stepEnds(steps: readonly Step[]): Ticks[] {
  return steps.map(({ at, length }) => at + length);
}

/**
 * Length that a hit gets when its end is drawn to a tick of its round or the next: to the nearest end
 * of a step after its start.
 */
export function lengthDrawnTo(steps: readonly Step[], hit: Pick<Hit, 'at'>, tick: number): Ticks {
  const inside = stepEnds(steps);
  const whole = inside.at(-1) ?? 0;
  const all = [...inside, ...inside.map((end) => end + whole)];
  const ends = all.filter((end) => end > hit.at);
  const distances = ends.map((end) => Math.abs(end - tick));
  const end = ends[distances.indexOf(Math.min(...distances))] ?? hit.at + 1;
  return end - hit.at;
}
