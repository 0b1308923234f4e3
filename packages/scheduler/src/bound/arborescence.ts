import type { Work } from "../work/work.ts";

/** Arcs into each node, column-major: `cost[node × tails + tail]`. The first `roots` tails are roots; tail roots + k is node k. */
export interface ArcCosts {
  readonly nodes: number;
  readonly roots: number;
  /** >= 0; Infinity where there is no arc */
  readonly cost: Float64Array;
  /** [node] cost of reaching it from nowhere */
  readonly outside: Float64Array;
}

/** Nodes shrunk into one another as cycles close. */
class Shrinking {
  /** [node] the node that it was shrunk into, itself at first */
  private readonly into: Int32Array;

  constructor(nodes: number) {
    this.into = Int32Array.from({ length: nodes }, (_, node) => node);
  }

  find(node: number): number {
    let top = node;
    while (this.into[top] !== top) top = this.into[top]!;
    for (let at = node; at !== top;) {
      const next = this.into[at]!;
      this.into[at] = top;
      at = next;
    }
    return top;
  }

  join(node: number, top: number): void {
    this.into[this.find(node)] = top;
  }
}

/**
 * Least cost of arcs by which every node is reached from a root or from outside (a spanning arborescence). Cycles are shrunk
 * as they close (after J. Edmonds, "Optimum branchings", 1967, and R. E. Tarjan, "Finding optimum branchings", 1977; from
 * memory). Every node must be reachable. O(nodes × tails).
 */
export function* arborescenceCost({
  nodes,
  roots,
  cost: given,
  outside: givenOutside,
}: ArcCosts): Work<number> {
  const tails = roots + nodes;
  const cost = Float64Array.from(given);
  const outside = Float64Array.from(givenOutside);
  const shrinking = new Shrinking(nodes);
  const isReached = new Uint8Array(nodes);
  const isOnPath = new Uint8Array(nodes);
  let sum = 0;
  const path: number[] = [];
  const taken: number[] = [];
  /** Cheapest arc into `top` from elsewhere; its cost is charged, its tail's node given, -1 for a root. */
  const enter = (top: number): number => {
    let least = outside[top]!;
    let from = -1;
    for (let tail = 0; tail < tails; tail++) {
      const value = cost[top * tails + tail]!;
      if (value >= least) continue;
      const node = tail < roots ? -1 : shrinking.find(tail - roots);
      if (node === top) continue;
      least = value;
      from = node;
    }
    sum += least;
    taken.push(least);
    return from;
  };
  /** Makes the path from `first` on one node, whose arcs cost what they cost more than those taken. */
  const shrink = (first: number): void => {
    const start = path.indexOf(first);
    for (let k = start; k < path.length; k++) {
      const node = path[k]!;
      const paid = taken[k]!;
      outside[node]! -= paid;
      for (let tail = 0; tail < tails; tail++) cost[node * tails + tail]! -= paid;
      if (k === start) continue;
      outside[first] = Math.min(outside[first]!, outside[node]!);
      for (let tail = 0; tail < tails; tail++) {
        const value = cost[node * tails + tail]!;
        if (value < cost[first * tails + tail]!) cost[first * tails + tail] = value;
      }
      shrinking.join(node, first);
      isOnPath[node] = 0;
    }
    path.length = start + 1;
    taken.length = start;
  };
  for (let node = 0; node < nodes; node++) {
    let top = shrinking.find(node);
    if (isReached[top] === 1) continue;
    yield;
    path.push(top);
    isOnPath[top] = 1;
    for (;;) {
      const from = enter(top);
      if (from < 0 || isReached[from] === 1) break;
      if (isOnPath[from] === 1) {
        shrink(from);
        top = from;
      } else {
        path.push(from);
        isOnPath[from] = 1;
        top = from;
      }
    }
    for (const reached of path) {
      isReached[reached] = 1;
      isOnPath[reached] = 0;
    }
    path.length = 0;
    taken.length = 0;
  }
  return sum;
}
