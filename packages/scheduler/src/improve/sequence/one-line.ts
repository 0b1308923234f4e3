import type { CompiledProblem } from "../../problem/compiled-problem.ts";
import { changeSeconds } from "../plain-lines.ts";

/**
 * One plain line as arrays: the weighted tardiness of a sequence is a fold over it. Index n stands for "what the line
 * holds first", so that row n of `change` is the change before the first order.
 */
export interface OneLine {
  readonly n: number;
  readonly freeAt: number;
  /** [(n + 1) × n] s of change and run of `to` after `from`: change + run time of `to` */
  readonly step: Int32Array;
  /** [(n + 1) × n] money of the change */
  readonly changeMoney: Float64Array;
  /** Some change costs money beside its time. */
  readonly changesCost: boolean;
  readonly due: Float64Array;
  /** [order] money per second late */
  readonly rate: Float64Array;
}

/** Arrays of a problem with one line; order j of the arrays is job j of the problem. */
export function oneLineOf(problem: CompiledProblem): OneLine {
  const { jobs, options, lines, changes } = problem;
  const n = jobs.count;
  const step = new Int32Array((n + 1) * n);
  const changeMoney = new Float64Array((n + 1) * n);
  for (let from = 0; from <= n; from++) {
    const held = from === n ? lines.initialSetup[0]! : options.setup[jobs.firstOption[from]!]!;
    for (let to = 0; to < n; to++) {
      const option = jobs.firstOption[to]!;
      const setup = options.setup[option]!;
      const spec =
        held < 0
          ? -1
          : changes.matrix[(lines.changeClass[0]! * changes.setupCount + held) * changes.setupCount + setup]!;
      step[from * n + to] = changeSeconds(problem, 0, held, setup) + options.seconds[option]!;
      changeMoney[from * n + to] = spec < 0 ? 0 : changes.cost[spec]!;
    }
  }
  const changesCost = changeMoney.some((money) => money > 0);
  return {
    n,
    freeAt: lines.freeAt[0]!,
    step,
    changeMoney,
    changesCost,
    due: jobs.due,
    rate: jobs.latePerSecond,
  };
}

/** True where what an order takes or costs depends on the order before it. */
export function changesMatter({ n, step, changesCost }: OneLine): boolean {
  if (changesCost) return true;
  return step.some((seconds, at) => Math.floor(at / n) !== at % n && seconds !== step[n * n + (at % n)]!);
}
