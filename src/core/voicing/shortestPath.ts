/** One node of every layer, and what the path costs in all. */
export type ShortestPath<T> = { readonly nodes: readonly T[]; readonly cost: number };

/** `closed` also pays the way back from the last layer to the first; `nodeCost` is paid at every node. */
export type PathOptions<T> = {
  readonly closed?: boolean;
  readonly nodeCost?: (node: T) => number;
};

/**
 * The path through the layers, one node of each, that costs least in all: `cost` of every step and
 * `nodeCost` of every node. Exact, by dynamic programming; closed, by one run for every first node
 * that could still begin a cheaper round. Of paths that cost the same, the one with the first
 * candidate in the earliest layer where they differ. Costs are finite; negative ones are
 * allowed. No layers give a path without nodes; undefined where a layer is empty. Steps between the
 * same two lists (by identity) are weighed once, however often they come.
 */
export function shortestPath<T>(
  layers: readonly (readonly T[])[],
  cost: (from: T, to: T) => number,
  options: PathOptions<T> = {},
): ShortestPath<T> | undefined {
  const first = layers[0];
  const last = layers.at(-1);
  if (!first || !last) return { nodes: [], cost: 0 };
  if (layers.some((layer) => layer.length === 0)) return undefined;
  const graph = graphOf(layers, cost, options.nodeCost ?? (() => 0));
  const places = options.closed ? closedPath(graph, costTable(last, first, cost)) : openPath(graph);
  return {
    nodes: places.path.map((place, i) => layers[i]![place]!),
    cost: places.cost,
  };
}

/**
 * The layers as numbers: how many nodes each has, what the first layer's nodes cost, and for every
 * step the costs row by row (from × to), the node stepped onto included.
 */
type Graph = {
  readonly sizes: readonly number[];
  readonly starts: Float64Array;
  readonly steps: readonly Float64Array[];
};

type Places = { readonly path: readonly number[]; readonly cost: number };

function costTable<T>(
  from: readonly T[],
  to: readonly T[],
  cost: (from: T, to: T) => number,
): Float64Array {
  const costs = new Float64Array(from.length * to.length);
  let cell = 0;
  for (const a of from) for (const b of to) costs[cell++] = cost(a, b);
  return costs;
}

function graphOf<T>(
  layers: readonly (readonly T[])[],
  cost: (from: T, to: T) => number,
  nodeCost: (node: T) => number,
): Graph {
  const known = new Map<readonly T[], Map<readonly T[], Float64Array>>();
  const nodeCosts = new Map(layers.map((layer) => [layer, Float64Array.from(layer, nodeCost)]));
  const stepTable = (from: readonly T[], to: readonly T[]) => {
    const costs = costTable(from, to, cost);
    const onto = nodeCosts.get(to)!;
    for (let cell = 0; cell < costs.length; cell++) costs[cell]! += onto[cell % to.length]!;
    return costs;
  };
  const steps = layers.slice(1).map((to, i) => {
    const from = layers[i]!;
    const knownFrom = known.get(from) ?? new Map<readonly T[], Float64Array>();
    known.set(from, knownFrom);
    const costs = knownFrom.get(to) ?? stepTable(from, to);
    knownFrom.set(to, costs);
    return costs;
  });
  return { sizes: layers.map((layer) => layer.length), starts: nodeCosts.get(layers[0]!)!, steps };
}

/** Cheapest way from every node to the end of the path, layer by layer; `ends` is what each last node still pays. */
function waysToEnd({ sizes, steps }: Graph, ends: Float64Array): Float64Array[] {
  const ways = sizes.map((size) => new Float64Array(size));
  ways[sizes.length - 1]!.set(ends);
  for (let layer = sizes.length - 2; layer >= 0; layer--) {
    const [here, next, costs] = [ways[layer]!, ways[layer + 1]!, steps[layer]!];
    for (let from = 0, cell = 0; from < here.length; from++) {
      let least = Infinity;
      for (let to = 0; to < next.length; to++, cell++) {
        const total = costs[cell]! + next[to]!;
        if (total < least) least = total;
      }
      here[from] = least;
    }
  }
  return ways;
}

/** The nodes of the cheapest way from a first node on, always the first of equals. */
function followWays({ sizes, steps }: Graph, ways: readonly Float64Array[], first: number) {
  const path = [first];
  steps.forEach((costs, layer) => {
    const row = path[layer]! * sizes[layer + 1]!;
    const totals = ways[layer + 1]!.map((way, to) => costs[row + to]! + way);
    path.push(placeOfLeast(totals));
  });
  return path;
}

function placeOfLeast(costs: Float64Array): number {
  let place = 0;
  for (let i = 1; i < costs.length; i++) if (costs[i]! < costs[place]!) place = i;
  return place;
}

function openPath(graph: Graph): Places {
  const ways = waysToEnd(graph, new Float64Array(graph.sizes.at(-1)!));
  const totals = startingCosts(graph, ways);
  const first = placeOfLeast(totals);
  return { path: followWays(graph, ways, first), cost: totals[first]! };
}

/**
 * The cheapest round. A path that may return to any first node bounds from below what a round
 * through a given first node costs; nodes are tried in order of that bound until none can win.
 */
function closedPath(graph: Graph, wayBack: Float64Array): Places {
  const width = graph.starts.length;
  const bounds = startingCosts(graph, waysToEnd(graph, leastOfRows(wayBack, width)));
  const order = [...bounds.keys()].toSorted((a, b) => bounds[a]! - bounds[b]! || a - b);
  let best: Places = { path: [], cost: Infinity };
  for (const first of order) {
    if (bounds[first]! > best.cost) break;
    const ways = waysToEnd(graph, columnOf(wayBack, width, first));
    const cost = graph.starts[first]! + ways[0]![first]!;
    if (cost < best.cost || (cost === best.cost && first < best.path[0]!))
      best = { path: followWays(graph, ways, first), cost };
  }
  return best;
}

/** What the cheapest way from each first node costs, the node itself included. */
function startingCosts({ starts }: Graph, ways: readonly Float64Array[]): Float64Array {
  return starts.map((start, place) => start + ways[0]![place]!);
}

function columnOf(costs: Float64Array, width: number, column: number): Float64Array {
  return Float64Array.from(
    { length: costs.length / width },
    (_, row) => costs[row * width + column]!,
  );
}

function leastOfRows(costs: Float64Array, width: number): Float64Array {
  return Float64Array.from({ length: costs.length / width }, (_, row) =>
    Math.min(...costs.subarray(row * width, (row + 1) * width)),
  );
}
