import { NEVER } from "../problem/calendar.ts";
import type { CompiledProblem } from "../problem/compiled-problem.ts";
import type { PlantLedger } from "./plant-ledger.ts";
import type { Sequences } from "./sequences.ts";

/** How a lot takes its turn where lines share moulds and teams, as `Sequences.turn` has it. */
export const Turn = {
  /** when its step can begin first */
  asItComes: 0,
  /** after another line took the mould that hangs on its line, or when nothing else is left to do */
  givesWay: 1,
  /** when its step can begin first, but a mould that hangs on its line is taken out by itself before */
  strippedFirst: 2,
} as const;

/** By `Turn`, as plans word it; null for the usual one. */
export const TURN_NAMES = [null, "gives way", "stripped first"] as const;

/** What a decode knows of its lines' next steps. */
export interface Turns {
  readonly problem: CompiledProblem;
  readonly ledger: PlantLedger;
  readonly sequences: Sequences;
  /** [line] position of its next run */
  readonly next: Int32Array;
}

/** Key of a line that gives way: after all others, but for those with nothing left to do. */
export const GIVING_WAY = NEVER - 1;

/** Option that runs next on a line, or -1. */
export function nextOption({ sequences, next }: Turns, line: number): number {
  const position = next[line]!;
  return position < sequences.length[line]! ? sequences.at[line]![position]! : -1;
}

/** True when a line whose next run is of the option leaves the mould that hangs there to whoever asks for it. */
export function leavesItsMould({ problem, sequences }: Turns, option: number): boolean {
  return sequences.turn[problem.options.lot[option]!] !== Turn.asItComes;
}

/** Instant before which the next step of a line is not to be looked at, `passed` being the last one looked at. */
export function keyOfNext(turns: Turns, line: number, passed: number): number {
  const option = nextOption(turns, line);
  if (option < 0) return NEVER;
  if (turns.sequences.turn[turns.problem.options.lot[option]!] === Turn.givesWay) return GIVING_WAY;
  const free = Math.min(GIVING_WAY - 1, turns.ledger.lineFree[line]!);
  return passed < GIVING_WAY && passed > free ? passed : free;
}
