import type { CompiledProblem } from "../problem/compiled-problem.ts";
import { arborescenceCost } from "./arborescence.ts";
import { assign, type AssignmentDuals } from "./assignment.ts";
import { addDetour, changeWays, groupDistances, type ChangeWays } from "./change-ways.ts";
import type { Hosting } from "./hosting.ts";
import type { SetupGroup } from "./setup-groups.ts";
import type { Work } from "../work/work.ts";

interface ChangeAsk {
  readonly groups: readonly SetupGroup[];
  readonly hosting: Hosting;
  /** [spec] what one change costs, in any unit, >= 0 */
  readonly price: Float64Array;
}

/** Costs between groups with the duals of their assignment, good for plans that come by a set-up more than once. */
interface Assigned {
  readonly cost: Float64Array;
  readonly duals: AssignmentDuals;
}

/** Set-ups that no group has to itself alone: a line may come by them, but need not. */
function passedThrough(problem: CompiledProblem, { groups, hosting }: ChangeAsk): Set<number> {
  const own = new Set(groups.flatMap(({ setups }) => (setups.length === 1 ? setups : [])));
  return new Set(hosting.flatMap((setups) => [...setups].filter((setup) => !own.has(setup))));
}

/**
 * Bounds what changes cost, in the unit of `price`. Each line is a path through set-ups, so each group has one predecessor,
 * none of which is taken twice (an assignment), and each is reached from some line's start (an arborescence). The second is
 * worked out on what the first leaves of the costs, so both add up (M. Fischetti, P. Toth, "An additive bounding procedure for
 * the asymmetric travelling salesman problem", Mathematical Programming 53, 1992; from memory).
 */
class ChangeBound {
  private readonly lines: number;
  private readonly groups: readonly SetupGroup[];
  private readonly ways: ChangeWays;
  /** [set-up] 1 where the ways lead through it at will */
  private readonly isDetour: Uint8Array;
  readonly isFree: boolean;

  constructor(problem: CompiledProblem, ask: ChangeAsk, ways: ChangeWays) {
    this.lines = problem.lines.count;
    this.groups = ask.groups;
    this.isFree = ask.groups.length === 0 || ask.price.every((each) => each === 0);
    this.ways = ways;
    this.isDetour = new Uint8Array(problem.setups.count);
  }

  /** What the changes of any plan cost at least; `skip` [group] is the price of leaving all its orders out, Infinity where that may not be. */
  *least(skip: Float64Array): Work<number> {
    if (this.isFree) return 0;
    const { lines, groups } = this;
    const rows = lines + groups.length;
    const { cost, duals } = yield* this.assigned(skip);
    const { row, column } = duals;
    const outside = new Float64Array(groups.length);
    let sum = row.reduce((total, each) => total + each, 0);
    for (let group = 0; group < groups.length; group++) {
      sum += column[group]!;
      outside[group] = Math.max(0, skip[group]! - column[group]!);
      for (let i = 0; i < rows; i++) {
        const cell = group * rows + i;
        cost[cell] = Math.max(0, cost[cell]! - column[group]! - row[i]!);
      }
    }
    return sum + (yield* arborescenceCost({ nodes: groups.length, roots: lines, cost, outside }));
  }

  detour(setup: number): void {
    this.isDetour[setup] = 1;
    addDetour(this.ways, setup);
  }

  /**
   * A line may come by a set-up again and again. Where coming and going costs nothing less than nothing by the duals, that only
   * adds; else a detour through it is cheaper than the direct way, and the costs must know it.
   */
  private *assigned(skip: Float64Array): Work<Assigned> {
    const { lines, groups } = this;
    for (;;) {
      yield;
      const cost = groupDistances(this.ways, groups);
      const matrix = { rows: lines + groups.length, columns: groups.length, cost, skip };
      const duals = yield* assign(matrix);
      const cheaper = groups.filter(({ setups }, group) => {
        const both = duals.column[group]! + duals.row[lines + group]!;
        return both < 0 && setups.length === 1 && this.isDetour[setups[0]!] === 0;
      });
      if (cheaper.length === 0) return { cost, duals };
      for (const { setups } of cheaper) {
        yield;
        this.detour(setups[0]!);
      }
    }
  }
}

/** The bound on changes at a price, with the detours by set-ups that a line may pass through. */
export function* changeBound(problem: CompiledProblem, ask: ChangeAsk): Work<ChangeBound> {
  const bound = new ChangeBound(problem, ask, yield* changeWays(problem, ask));
  if (bound.isFree) return bound;
  for (const setup of passedThrough(problem, ask)) {
    yield;
    bound.detour(setup);
  }
  return bound;
}
