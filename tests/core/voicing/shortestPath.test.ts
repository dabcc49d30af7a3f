import * as fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { shortestPath } from '../../../src/core/voicing/shortestPath.ts';
import { cheapestWays } from '../../support/voicings.ts';

/** Where a node stands, and what standing there costs. */
type Node = { readonly at: number; readonly toll: number };

const node = () =>
  fc.record({ at: fc.integer({ min: 0, max: 6 }), toll: fc.integer({ min: 0, max: 3 }) });

const layers = () =>
  fc.array(fc.array(node(), { minLength: 1, maxLength: 5 }), { minLength: 1, maxLength: 5 });

/** Steps that cost more one way than the other. */
const stepCost = (from: Node, to: Node) => (to.at > from.at ? 2 : 1) * Math.abs(from.at - to.at);

function totalCost(way: readonly Node[], closed: boolean): number {
  const steps = way.slice(1).map((to, i) => stepCost(way[i]!, to));
  const back = closed ? stepCost(way.at(-1)!, way[0]!) : 0;
  return [...steps, ...way.map((n) => n.toll), back].reduce((sum, cost) => sum + cost, 0);
}

const free = () => 0;

const distance = (a: number, b: number) => Math.abs(a - b);

describe('shortestPath', () => {
  it.each([false, true])('is the first of the cheapest of all ways (closed: %s)', (closed) =>
    fc.assert(
      fc.property(layers(), (nodes) => {
        const found = shortestPath(nodes, stepCost, { closed, nodeCost: (n) => n.toll });
        const { ways, cost } = cheapestWays(nodes, (way) => totalCost(way, closed));
        expect(found?.cost).toBe(cost);
        expect(found?.nodes).toEqual(ways[0]);
      }),
      { numRuns: 300 },
    ),
  );

  it('takes the first candidate where all cost the same', () => {
    const letters = [['a', 'b'], ['c', 'd'], ['e']];
    expect(shortestPath(letters, free)?.nodes.join('')).toBe('ace');
    expect(shortestPath(letters, free, { closed: true })?.nodes.join('')).toBe('ace');
  });

  it('pays the way back only when closed', () => {
    const line = [[0], [3], [5]];
    expect(shortestPath(line, distance)?.cost).toBe(5);
    expect(shortestPath(line, distance, { closed: true })?.cost).toBe(10);
  });

  it('may take a dearer start for a cheaper round', () => {
    // From 0 the way out is cheapest, but it ends at 9, from where only the way back to 8 is short.
    const line = [[0, 8], [1, 9], [9]];
    const climb = shortestPath(line, distance, {
      nodeCost: (n) => (n === 8 ? 3 : 0),
      closed: true,
    });
    expect(climb).toEqual({ nodes: [8, 9, 9], cost: 5 });
  });

  it('has no path through an empty layer, and an empty one through no layers', () => {
    expect(shortestPath([[1], [], [2]], distance)).toBeUndefined();
    expect(shortestPath([], distance, { closed: true })).toEqual({ nodes: [], cost: 0 });
  });

  it('weighs the steps between the same two lists once', () => {
    const a = [1, 2];
    const b = [3, 4];
    let weighed = 0;
    shortestPath([a, b, a, b, a, b], () => {
      weighed++;
      return 0;
    });
    expect(weighed).toBe(8);
  });
});
