import type { Work } from "../work/work.ts";

/** Who may come before whom, and what it costs. Column-major: `cost[column × rows + row]`; Infinity where it may not be. */
export interface AssignmentProblem {
  readonly rows: number;
  readonly columns: number;
  readonly cost: Float64Array;
  /** [column] price of leaving it without a row; Infinity where that may not be */
  readonly skip: Float64Array;
}

/** Duals of an assignment: `row + column <= cost` and `column <= skip` everywhere, `row <= 0`; their sum is the least cost. */
export interface AssignmentDuals {
  readonly row: Float64Array;
  readonly column: Float64Array;
}

interface Matching {
  readonly duals: AssignmentDuals;
  /** [row] column or -1 */
  readonly columnOf: Int32Array;
  /** [column] row, -1 while open, SKIPPED */
  readonly rowOf: Int32Array;
}

const SKIPPED = -2;

/** Every column takes its cheapest row while that row is free. */
function startMatching({ rows, columns, cost, skip }: AssignmentProblem): Matching {
  const column = new Float64Array(columns);
  const columnOf = new Int32Array(rows).fill(-1);
  const rowOf = new Int32Array(columns).fill(-1);
  for (let j = 0; j < columns; j++) {
    let least = skip[j]!;
    let at = SKIPPED;
    for (let i = 0; i < rows; i++) {
      const value = cost[j * rows + i]!;
      if (value < least || (value === least && at >= 0 && columnOf[at]! >= 0 && columnOf[i]! < 0)) {
        least = value;
        at = i;
      }
    }
    column[j] = least;
    if (at === SKIPPED) rowOf[j] = SKIPPED;
    else if (columnOf[at]! < 0) {
      columnOf[at] = j;
      rowOf[j] = at;
    }
  }
  return { duals: { row: new Float64Array(rows), column }, columnOf, rowOf };
}

/** Arrays of one search for a cheapest way to give a column its row, kept from search to search. */
class PathSearch {
  private readonly distance: Float64Array;
  private readonly from: Int32Array;
  private readonly isDone: Uint8Array;
  private readonly doneRows: Int32Array;
  private readonly problem: AssignmentProblem;
  private readonly matching: Matching;

  constructor(problem: AssignmentProblem, matching: Matching) {
    this.problem = problem;
    this.matching = matching;
    this.distance = new Float64Array(problem.rows);
    this.from = new Int32Array(problem.rows);
    this.isDone = new Uint8Array(problem.rows);
    this.doneRows = new Int32Array(problem.rows);
  }

  /** Gives column `start` a row or leaves one column of the way without, at the least cost. */
  augment(start: number): void {
    const { problem, matching, distance, isDone, doneRows } = this;
    const { columnOf, duals } = matching;
    distance.fill(Infinity);
    isDone.fill(0);
    let done = 0;
    let column = start;
    let reached = 0;
    let bestSkip = Infinity;
    let skipped = -1;
    for (;;) {
      const skipAt = reached + problem.skip[column]! - duals.column[column]!;
      if (skipAt < bestSkip) {
        bestSkip = skipAt;
        skipped = column;
      }
      const row = this.nearest(column, reached);
      if (row < 0 || distance[row]! >= bestSkip) {
        // neither a row nor a skip: then the column may stand nowhere, which its infinite dual says
        this.raise(start, done, bestSkip);
        this.turn(skipped, start, SKIPPED);
        return;
      }
      reached = distance[row]!;
      if (columnOf[row]! < 0) {
        this.raise(start, done, reached);
        this.assignRow(row, start);
        return;
      }
      isDone[row] = 1;
      doneRows[done++] = row;
      column = columnOf[row]!;
    }
  }

  /** Relaxes the ways that leave through `column`; the nearest row not yet done, or -1. */
  private nearest(column: number, reached: number): number {
    const { distance, from, isDone } = this;
    const { rows, cost } = this.problem;
    const { row: rowDual, column: columnDual } = this.matching.duals;
    const base = reached - columnDual[column]!;
    let nearest = -1;
    let least = Infinity;
    for (let i = 0; i < rows; i++) {
      if (isDone[i] === 1) continue;
      const way = base + cost[column * rows + i]! - rowDual[i]!;
      if (way < distance[i]!) {
        distance[i] = way;
        from[i] = column;
      }
      if (distance[i]! < least) {
        least = distance[i]!;
        nearest = i;
      }
    }
    return nearest;
  }

  private raise(start: number, done: number, reached: number): void {
    const { distance, doneRows } = this;
    const { columnOf, duals } = this.matching;
    duals.column[start]! += reached;
    for (let k = 0; k < done; k++) {
      const row = doneRows[k]!;
      const rise = reached - distance[row]!;
      duals.row[row]! -= rise;
      duals.column[columnOf[row]!]! += rise;
    }
  }

  /** Hands `row` to the column that reached it, whose old row goes on likewise, back to `start`. */
  private assignRow(row: number, start: number): void {
    const column = this.from[row]!;
    this.turn(column, start, row);
  }

  private turn(column: number, start: number, row: number): void {
    const { columnOf, rowOf } = this.matching;
    let taker = column;
    let given = row;
    for (;;) {
      const before = rowOf[taker]!;
      rowOf[taker] = given;
      if (given >= 0) columnOf[given] = taker;
      if (taker === start) return;
      given = before;
      taker = this.from[before]!;
    }
  }
}

/**
 * Least-cost assignment of every column to a row of its own, or to none at its price, by shortest augmenting paths (after
 * R. Jonker, A. Volgenant, "A shortest augmenting path algorithm for dense and sparse linear assignment problems",
 * Computing 38, 1987; from memory). Every column must have a finite row or skip. O(columns² × rows) at worst.
 */
export function* assign(problem: AssignmentProblem): Work<AssignmentDuals> {
  const matching = startMatching(problem);
  yield;
  const search = new PathSearch(problem, matching);
  for (let j = 0; j < problem.columns; j++) {
    if (matching.rowOf[j] !== -1) continue;
    yield;
    search.augment(j);
  }
  return matching.duals;
}
