import type { CompiledProblem } from "../../problem/compiled-problem.ts";
import { changeSeconds } from "../plain-lines.ts";

/** Plain parallel lines as arrays. Index n stands for "what the line holds first". */
export interface ParallelLines {
  readonly m: number;
  readonly n: number;
  readonly freeAt: Int32Array;
  /** [line × (n + 1) × n] s of the change from one order to the next */
  readonly change: Int32Array;
  /** [line × n] s of the run; -1: not on this line */
  readonly run: Int32Array;
  /** [line × n] s before which neither change nor run starts */
  readonly opens: Int32Array;
  /** [order] s before which the run does not start */
  readonly release: Int32Array;
  /** [line × n] option of the problem */
  readonly option: Int32Array;
  /** Some order has to wait for its time: lines are then folds of maxima and sums. */
  readonly waits: boolean;
}

export function parallelLinesOf(problem: CompiledProblem): ParallelLines {
  const { jobs, options, lines } = problem;
  const m = lines.count;
  const n = jobs.count;
  const change = new Int32Array(m * (n + 1) * n);
  const run = new Int32Array(m * n).fill(-1);
  const opens = new Int32Array(m * n);
  const optionAt = new Int32Array(m * n).fill(-1);
  const setupAt = new Int32Array(m * n).fill(-1);
  for (let option = 0; option < options.count; option++) {
    const cell = options.line[option]! * n + options.job[option]!;
    run[cell] = options.seconds[option]!;
    opens[cell] = options.availableFrom[option]!;
    optionAt[cell] = option;
    setupAt[cell] = options.setup[option]!;
  }
  for (let line = 0; line < m; line++) {
    for (let from = 0; from <= n; from++) {
      const held = from === n ? lines.initialSetup[line]! : setupAt[line * n + from]!;
      if (held < 0) continue;
      for (let to = 0; to < n; to++) {
        const setup = setupAt[line * n + to]!;
        if (setup >= 0) change[(line * (n + 1) + from) * n + to] = changeSeconds(problem, line, held, setup);
      }
    }
  }
  const waits = opens.some((at) => at > 0) || jobs.release.some((at) => at > 0);
  return { m, n, freeAt: lines.freeAt, change, run, opens, release: jobs.release, option: optionAt, waits };
}
