import type { ParallelLines } from "./parallel-lines.ts";

/** What orders add to a line whose times are plain sums, laid out by order so that all that one insertion reads lies together. */
export interface OrderArcs {
  /** [((order × m + line) × (n + 1) + other) × 2] s of change and run after `other` (n: first); + 1: s of the change to `other` (n: 0) */
  readonly seconds: Int16Array | Int32Array;
  /** [order] lines that the order may run on */
  readonly choiceCount: Int32Array;
  /** [(order × m + i) × 3] i-th line by least seconds; + 1: least of change and run there; + 2: least change to another order */
  readonly choices: Int32Array;
}

interface Choice {
  readonly line: number;
  readonly leastInto: number;
  readonly leastOut: number;
}

function choiceOf(
  lines: ParallelLines,
  seconds: OrderArcs["seconds"],
  at: readonly [number, number],
): Choice {
  const [order, line] = at;
  const { m, n, run } = lines;
  const base = 2 * (order * m + line) * (n + 1);
  let leastInto = seconds[base + 2 * n]!;
  let leastOut = Infinity;
  for (let other = 0; other < n; other++) {
    if (other === order || run[line * n + other]! < 0) continue;
    leastInto = Math.min(leastInto, seconds[base + 2 * other]!);
    leastOut = Math.min(leastOut, seconds[base + 2 * other + 1]!);
  }
  return { line, leastInto, leastOut: leastOut === Infinity ? 0 : leastOut };
}

function secondsOf({ m, n, change, run }: ParallelLines): OrderArcs["seconds"] {
  let longest = 0;
  for (const time of change) longest = Math.max(longest, time);
  let longestRun = 0;
  for (const time of run) longestRun = Math.max(longestRun, time);
  const size = 2 * n * m * (n + 1);
  // half the width where times fit: the arcs of large problems then stay in the processor's cache
  const seconds = longest + longestRun < 32_768 ? new Int16Array(size) : new Int32Array(size);
  for (let line = 0; line < m; line++) {
    for (let order = 0; order < n; order++) {
      const own = run[line * n + order]!;
      if (own < 0) continue;
      const base = 2 * (order * m + line) * (n + 1);
      for (let other = 0; other <= n; other++) {
        seconds[base + 2 * other] = own + change[(line * (n + 1) + other) * n + order]!;
        if (other < n) seconds[base + 2 * other + 1] = change[(line * (n + 1) + order) * n + other]!;
      }
    }
  }
  return seconds;
}

/** O(orders² × lines). */
export function orderArcsOf(lines: ParallelLines): OrderArcs {
  const { m, n, run } = lines;
  const seconds = secondsOf(lines);
  const choiceCount = new Int32Array(n);
  const choices = new Int32Array(3 * n * m);
  for (let order = 0; order < n; order++) {
    const sorted: Choice[] = [];
    for (let line = 0; line < m; line++)
      if (run[line * n + order]! >= 0) sorted.push(choiceOf(lines, seconds, [order, line]));
    sorted.sort((a, b) => a.leastInto + a.leastOut - b.leastInto - b.leastOut || a.line - b.line);
    choiceCount[order] = sorted.length;
    sorted.forEach(({ line, leastInto, leastOut }, i) => {
      choices.set([line, leastInto, leastOut], 3 * (order * m + i));
    });
  }
  return { seconds, choiceCount, choices };
}
