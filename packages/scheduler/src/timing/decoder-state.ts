import type { CompiledProblem } from "../problem/compiled-problem.ts";
import type { CostSums } from "./cost-sums.ts";
import { copyLedger, createLedger, type PlantLedger } from "./plant-ledger.ts";

/** A decode between two steps: enough to go on from there. */
export interface DecoderState {
  readonly ledger: PlantLedger;
  /** [line] position of its next run */
  readonly next: Int32Array;
  /** [line] s before which its next step cannot begin; NEVER when it has none */
  readonly key: Int32Array;
  /** what is known of lots and orders so far */
  readonly columns: readonly Int32Array[];
  readonly sums: CostSums;
  /** changes in the log */
  logged: number;
}

/** A state of its own, equal to the given one. */
export function copyState(problem: CompiledProblem, from: DecoderState): DecoderState {
  const ledger = createLedger(problem);
  copyLedger(from.ledger, ledger);
  return {
    ledger,
    next: from.next.slice(),
    key: from.key.slice(),
    columns: from.columns.map((column) => column.slice()),
    sums: { ...from.sums },
    logged: from.logged,
  };
}

/** Makes `into` equal to `from`. */
export function takeState(from: DecoderState, into: DecoderState): void {
  copyLedger(from.ledger, into.ledger);
  into.next.set(from.next);
  into.key.set(from.key);
  from.columns.forEach((column, i) => {
    into.columns[i]!.set(column);
  });
  Object.assign(into.sums, from.sums);
  into.logged = from.logged;
}

/** When a decode ends early. */
export interface Stops {
  readonly lateScale: number;
  /** money, lateness taken `lateScale` times */
  readonly limit: number;
  /** [lot] s; null where none is given */
  readonly latestEnd: Float64Array | null;
  readonly mostSteps: number;
}
