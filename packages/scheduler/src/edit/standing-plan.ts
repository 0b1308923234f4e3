import { reasonOf } from "../explain/unplanned-words.ts";
import { whyUnplanned } from "../explain/why-unplanned.ts";
import { buildPlan } from "../plan/build-plan.ts";
import type { Plan, UnplannedOrder, UnplannedReason } from "../plan/plan.ts";
import type { CompiledProblem } from "../problem/compiled-problem.ts";
import type { Decoder } from "../timing/decoder.ts";
import { copySequences, emptySequences, type Sequences } from "../timing/sequences.ts";

/** A plan as the engine moves it, with what is asked of it again and again. Lots are numbered in it as in the plan. */
export interface StandingPlan {
  readonly problem: CompiledProblem;
  readonly sequences: Sequences;
  /** [lot] s, its start; NEVER for lots that do not run */
  readonly start: Int32Array;
  readonly plan: Plan;
  /** Orders that a person took out. */
  readonly takenOut: ReadonlySet<string>;
  /** By order id. */
  readonly jobOf: ReadonlyMap<string, number>;
  /** By line id. */
  readonly lineOf: ReadonlyMap<string, number>;
}

/** Where a lot stands. */
export interface Position {
  readonly line: number;
  readonly position: number;
}

const TAKEN_OUT: UnplannedReason = reasonOf("taken-out", null, { kind: "taken out" });

/** Orders that a person took out of a plan. */
export function takenOutOf({ unplanned }: Plan): ReadonlySet<string> {
  return new Set(
    unplanned.flatMap(({ orderId, reasons }) =>
      reasons.some(({ code }) => code === TAKEN_OUT.code) ? [orderId] : [],
    ),
  );
}

/** The plan that the decoder, which keeps stretches, timed last. */
export function planTimed(decoder: Decoder, takenOut: ReadonlySet<string>): Plan {
  const unplanned = whyUnplanned(decoder).map((order): UnplannedOrder =>
    takenOut.has(order.orderId) ? { orderId: order.orderId, reasons: [TAKEN_OUT] } : order,
  );
  return buildPlan(decoder.problem, decoder, unplanned);
}

/** A copy of the standing sequences, to be changed. */
export function trialOf({ problem, sequences }: StandingPlan): Sequences {
  const trial = emptySequences(problem);
  copySequences(sequences, trial);
  return trial;
}

/** Where a lot stands in sequences, or null. O(lots). */
export function positionOf(problem: CompiledProblem, sequences: Sequences, lot: number): Position | null {
  for (let line = 0; line < sequences.at.length; line++) {
    const row = sequences.at[line]!;
    for (let position = 0; position < sequences.length[line]!; position++)
      if (problem.options.lot[row[position]!] === lot) return { line, position };
  }
  return null;
}

/** Lots of a job that have pieces, in their order. */
export function lotsInUse({ lots }: CompiledProblem, { pieces }: Sequences, job: number): readonly number[] {
  const used: number[] = [];
  for (let lot = lots.firstLot[job]!; lot < lots.firstLot[job + 1]!; lot++)
    if (pieces[lot]! > 0) used.push(lot);
  return used;
}
