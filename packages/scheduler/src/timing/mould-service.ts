import { cyclesOf } from "../problem/compile-jobs.ts";
import type { CompiledProblem } from "../problem/compiled-problem.ts";
import type { PlantLedger } from "./plant-ledger.ts";

/** A lot of so many pieces that is to be made with a copy. */
export interface LotOfCopy {
  readonly copy: number;
  readonly option: number;
  readonly pieces: number;
}

/** Seconds that the copy is served before it makes the lot; 0 for no service. */
export function serviceBefore(problem: CompiledProblem, ledger: PlantLedger, lot: LotOfCopy): number {
  if (lot.copy < 0) return 0;
  const after = problem.moulds.serviceAfter[lot.copy]!;
  if (after === Infinity) return 0;
  const done = ledger.copyCycles[lot.copy]!;
  const cycles = cyclesOf(lot.pieces, problem.options.piecesPerCycle[lot.option]!);
  return done > 0 && done + cycles > after ? problem.moulds.serviceSeconds[lot.copy]! : 0;
}

/** Counts the cycles of a lot that is made, after a service anew. */
export function countCycles(
  problem: CompiledProblem,
  ledger: PlantLedger,
  { copy, option, pieces }: LotOfCopy,
  isServed: boolean,
): void {
  if (copy < 0) return;
  const before = isServed ? 0 : ledger.copyCycles[copy]!;
  ledger.copyCycles[copy] = before + cyclesOf(pieces, problem.options.piecesPerCycle[option]!);
}
