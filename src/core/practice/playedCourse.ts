import { groupBy } from '../rhythm/groupBy.ts';
import type { Seconds } from '../time/ticks.ts';

/** How far the player is behind the music (ahead is negative), by its time; changes slowly. */
export type LagAt = (expectedSec: Seconds) => Seconds;

/** Times of one row of hits, both lists ascending. */
export type TimeRow = {
  readonly expected: readonly Seconds[];
  readonly played: readonly Seconds[];
};

/** Lags are weighed in steps of so much and may change at nodes so far apart. */
const GRID = { stepSec: 0.01, nodeSec: 0.5 } as const;

/** What is played so long after all that is expected, or later, says nothing of the course. */
const HEARD_AFTER_SEC: Seconds = 4;

/** At every node so many steps to either side of the likeliest lag until then are weighed. */
const REACH = 40;

/** A player is no more than so many steps early or late to begin with. */
const FIRST_REACH = 12;

/** From node to node the lag changes by at most so many steps: 6 %, twice the drift that is to be followed. */
const STEEPEST = 3;

/** What a step of change costs, in units of log likelihood, so that the course follows only what many hits say. */
const STEP_COST = 0.5;

/** Hits lie around their places with such a spread; or else anywhere, which is so likely beside the best place. */
const HIT_SPREAD_SEC: Seconds = 0.03;
const ANYWHERE = 0.02;

/**
 * The course of a player who drifts from the music: the likeliest slowly changing lag, given that
 * most played hits lie near an expected one. Found on a grid of lags by dynamic programming
 * (Viterbi 1967). With nothing expected or nothing played, no lag anywhere.
 */
export function playedCourse(rows: readonly TimeRow[]): LagAt {
  const heard = rows.filter((row) => row.expected.length > 0 && row.played.length > 0);
  if (heard.length === 0) return () => 0;
  const startSec = Math.min(...heard.map((row) => row.expected[0]!));
  const endSec = Math.max(...heard.map((row) => row.expected.at(-1)!)) + HEARD_AFTER_SEC;
  const nodes = heard.map((row) =>
    groupBy(
      row.played.filter((sec) => sec <= endSec),
      (sec) => Math.max(0, Math.floor((sec - startSec) / GRID.nodeSec)),
    ),
  );
  const last = Math.max(0, ...nodes.flatMap((node) => [...node.keys()]));
  const supportAt = (node: number, step: number) =>
    heard.reduce((sum, { expected }, row) => {
      const played = nodes[row]!.get(node) ?? [];
      return played.reduce((total, sec) => total + support(expected, sec, step), sum);
    }, 0);
  return smoothed(likeliestSteps(last + 1, supportAt), startSec);
}

/** The log likelihood that a lag of so many steps gives to one played hit. */
function support(expected: readonly Seconds[], playedSec: Seconds, step: number): number {
  const distance = distanceToNearest(expected, playedSec - step * GRID.stepSec) / HIT_SPREAD_SEC;
  return Math.log(ANYWHERE + Math.exp((-distance * distance) / 2));
}

function distanceToNearest(times: readonly Seconds[], sec: Seconds): Seconds {
  let low = 0;
  let high = times.length;
  while (low < high) {
    const middle = (low + high) >> 1;
    if (times[middle]! < sec) low = middle + 1;
    else high = middle;
  }
  const [before, after] = [times[low - 1], times[low]];
  return Math.min(
    before === undefined ? Infinity : sec - before,
    after === undefined ? Infinity : after - sec,
  );
}

/** How likely each lag of a node is (the first has `lowest` steps), and from which step of the node before it comes. */
type Node = { readonly lowest: number; readonly scores: number[]; readonly origins: number[] };

function scoreOf(node: Node, step: number): number {
  return node.scores[step - node.lowest] ?? Number.NEGATIVE_INFINITY;
}

function likeliest(node: Node): number {
  return node.lowest + node.scores.indexOf(Math.max(...node.scores));
}

/** The lag at every node, in steps, along the likeliest path. */
function likeliestSteps(
  count: number,
  supportAt: (node: number, step: number) => number,
): number[] {
  const firstSteps = stepsAround(0, FIRST_REACH);
  const nodes: Node[] = [
    {
      lowest: -FIRST_REACH,
      scores: firstSteps.map((step) => supportAt(0, step)),
      origins: firstSteps,
    },
  ];
  for (let i = 1; i < count; i++) {
    const before = nodes[i - 1]!;
    const steps = stepsAround(likeliest(before), REACH);
    const origins = steps.map((step) => bestOrigin(before, step));
    const scores = steps.map(
      (step, place) =>
        supportAt(i, step) +
        scoreOf(before, origins[place]!) -
        STEP_COST * Math.abs(step - origins[place]!),
    );
    nodes.push({ lowest: steps[0]!, scores, origins });
  }
  let step = likeliest(nodes.at(-1)!);
  return nodes
    .toReversed()
    .map((node) => {
      const here = step;
      step = node.origins[here - node.lowest]!;
      return here;
    })
    .toReversed();
}

function stepsAround(middle: number, reach: number): number[] {
  return Array.from({ length: 2 * reach + 1 }, (_, i) => middle - reach + i);
}

/** The step of the node before from which a step is most likely reached. */
function bestOrigin(before: Node, step: number): number {
  const cost = (from: number) => scoreOf(before, from) - STEP_COST * Math.abs(step - from);
  return stepsAround(step, STEEPEST).reduce(
    (best, from) => (cost(from) > cost(best) ? from : best),
    step,
  );
}

/** The lags between the nodes' middles, each averaged with its neighbours to lose the grid's steps. */
function smoothed(steps: readonly number[], startSec: Seconds): LagAt {
  const last = steps.length - 1;
  const at = (node: number) => steps[Math.min(Math.max(node, 0), last)]! * GRID.stepSec;
  const level = steps.map((_, node) => (at(node - 1) + at(node) + at(node + 1)) / 3);
  return (sec) => {
    const place = Math.min(Math.max((sec - startSec) / GRID.nodeSec - 0.5, 0), last);
    const node = Math.floor(place);
    const [before, after] = [level[node]!, level[Math.min(node + 1, last)]!];
    return before + (place - node) * (after - before);
  };
}
