import { membersOf, PortfolioCourse } from "./portfolio/course.ts";
import { openGroup } from "./portfolio/member-group.ts";
import type { ProblemData } from "./problem/problem-data.ts";
import type { SolveResult } from "./result.ts";
import type { SolveEnv, SolveParams } from "./solve-env.ts";

/**
 * Plans a problem in this thread: faults are named, else the best plan found within the budget is audited and handed out. A
 * plan that the audit refuses never leaves; its violations do. Same problem, seed, members and step budget (no time budget):
 * the same plan, the one that several threads come to as well.
 */
export function solve(problem: ProblemData, params: SolveParams, env: SolveEnv): SolveResult {
  const startedMs = env.monotonicMs();
  const opened = openGroup({ problem, params, members: membersOf(params) }, env);
  if (opened.status !== "open") return opened;
  const { group } = opened;
  const course = new PortfolioCourse(params);
  const elapsed = (): number => env.monotonicMs() - startedMs;
  let move = course.first(elapsed());
  while (move.kind === "round") {
    const standings = group.runRound(move.round, move.adoptions);
    move = course.next(standings, elapsed());
  }
  return group.finish(move.winner);
}
