import type { CompiledProblem } from "../problem/compiled-problem.ts";
import type { Hosting } from "./hosting.ts";
import type { Work } from "../work/work.ts";

/**
 * Price of coming from one set-up, or from a line's start, to another on some line, with nothing made between; row-major,
 * `[from × set-ups + to]`, the rows of the lines' starts after those of the set-ups. Infinity where no line has both.
 */
export interface ChangeWays {
  readonly setups: number;
  readonly rows: number;
  readonly price: Float64Array;
  /** 1 where some line has both, whatever detours were added since */
  readonly isDirect: Uint8Array;
}

/** One change, or two where it is cheaper to take the mould out first. */
function stepPrice(
  problem: CompiledProblem,
  price: Float64Array,
  ask: readonly [number, number, number],
): number {
  const [base, from, to] = ask;
  if (from === to) return 0;
  const { matrix, setupCount } = problem.changes;
  const direct = matrix[base + from * setupCount + to]!;
  if (direct < 0) return 0;
  const bare = problem.setups.stripped[from]!;
  if (bare === from) return price[direct]!;
  const out = matrix[base + from * setupCount + bare]!;
  const on = bare === to ? -1 : matrix[base + bare * setupCount + to]!;
  return Math.min(price[direct]!, (out < 0 ? 0 : price[out]!) + (on < 0 ? 0 : price[on]!));
}

interface WaysAsk {
  readonly hosting: Hosting;
  readonly price: Float64Array;
}

/** Lines of one class side by side; `price` is [spec], >= 0. O(lines × set-ups²). */
export function* changeWays(problem: CompiledProblem, { hosting, price }: WaysAsk): Work<ChangeWays> {
  const { lines, changes } = problem;
  const setups = problem.setups.count;
  const rows = setups + lines.count;
  const least = new Float64Array(rows * setups).fill(Infinity);
  const isDirect = new Uint8Array(rows * setups);
  const lastClass = new Int32Array(setups * setups).fill(-1);
  const order = Array.from(lines.changeClass, (_, line) => line).sort(
    (a, b) => lines.changeClass[a]! - lines.changeClass[b]! || a - b,
  );
  for (const line of order) {
    yield;
    const changeClass = lines.changeClass[line]!;
    const base = changeClass * changes.setupCount * changes.setupCount;
    const initial = lines.initialSetup[line]!;
    const hosted = hosting[line]!;
    for (const to of hosted) {
      const start = (setups + line) * setups + to;
      isDirect[start] = 1;
      least[start] = initial < 0 ? 0 : stepPrice(problem, price, [base, initial, to]);
    }
    for (const from of hosted) {
      for (const to of hosted) {
        const cell = from * setups + to;
        if (lastClass[cell] === changeClass) continue;
        lastClass[cell] = changeClass;
        isDirect[cell] = 1;
        const value = stepPrice(problem, price, [base, from, to]);
        if (value < least[cell]!) least[cell] = value;
      }
    }
  }
  return { setups, rows, price: least, isDirect };
}

/** Lets every way lead through `via` as well (one step of Floyd and Warshall). O(set-ups²). */
export function addDetour({ setups, rows, price }: ChangeWays, via: number): void {
  const out = price.subarray(via * setups, (via + 1) * setups);
  for (let from = 0; from < rows; from++) {
    const first = price[from * setups + via]!;
    if (first === Infinity || from === via) continue;
    const row = price.subarray(from * setups, (from + 1) * setups);
    for (let to = 0; to < setups; to++) {
      const value = first + out[to]!;
      if (value < row[to]!) row[to] = value;
    }
  }
}

/**
 * Cost of one group straight after another, or first on a line, by set-ups that some line has both: rows are the lines' starts,
 * then the groups; column-major like an assignment's costs.
 */
export function groupDistances(
  ways: ChangeWays,
  groups: readonly { readonly setups: readonly number[] }[],
): Float64Array {
  const { setups, price, isDirect } = ways;
  const starts = ways.rows - setups;
  const rows = starts + groups.length;
  const cost = new Float64Array(rows * groups.length).fill(Infinity);
  const groupsWith = Array.from({ length: setups }, (): number[] => []);
  groups.forEach((group, g) => {
    for (const setup of group.setups) groupsWith[setup]!.push(g);
  });
  const lower = (from: number, row: number): void => {
    for (let to = 0; to < setups; to++) {
      if (isDirect[from * setups + to] === 0) continue;
      for (const group of groupsWith[to]!) {
        const cell = group * rows + row;
        if (starts + group !== row) cost[cell] = Math.min(cost[cell]!, price[from * setups + to]!);
      }
    }
  };
  for (let line = 0; line < starts; line++) lower(setups + line, line);
  groups.forEach((group, g) => {
    for (const setup of group.setups) lower(setup, starts + g);
  });
  return cost;
}
