import { NEVER } from "../problem/calendar.ts";
import type { CompiledProblem } from "../problem/compiled-problem.ts";
import type { OrdersAlone } from "./orders-alone.ts";

/** Which set-ups may stand on which lines: [line] those in which some order could run there, sorted. */
export type Hosting = readonly Int32Array[];

export function hostingOf(problem: CompiledProblem, alone: OrdersAlone): Hosting {
  const { lines, options } = problem;
  const sets = Array.from({ length: lines.count }, () => new Set<number>());
  for (let option = 0; option < options.count; option++) {
    if (alone.earliestStart[option]! < NEVER) sets[options.line[option]!]!.add(options.setup[option]!);
  }
  return sets.map((set) => Int32Array.from(set).sort());
}
