import { NEVER } from "../problem/calendar.ts";
import { gramsOf } from "../problem/compile-jobs.ts";
import type { CompiledProblem } from "../problem/compiled-problem.ts";
import { copyHeads, resetHeads, type HeadLedger } from "./head-ledger.ts";

/** Where everything stands while a plan is timed: what each line holds and when each thing is free again. */
export interface PlantLedger {
  /** [line] s */
  readonly lineFree: Int32Array;
  /** [line] set-up or -1 */
  readonly lineSetup: Int32Array;
  /** [line] copy that hangs there or -1 */
  readonly lineCopy: Int32Array;
  /** [copy] line that holds it or -1 */
  readonly copyLine: Int32Array;
  /** [copy] s at which it left its last line */
  readonly copyFree: Int32Array;
  /** [copy] the line it left last or -1 */
  readonly copyLeft: Int32Array;
  /** [copy] cycles since its last service */
  readonly copyCycles: Float64Array;
  readonly teamFree: Int32Array;
  readonly trolleyFree: Int32Array;
  /** [sheet] grams drawn by all runs fixed so far */
  readonly gramsTaken: Float64Array;
  /** [pool] null where it can never be short */
  readonly heads: readonly (HeadLedger | null)[];
}

export function createLedger(problem: CompiledProblem): PlantLedger {
  const lines = problem.lines.count;
  const copies = problem.moulds.copyCount;
  return {
    lineFree: new Int32Array(lines),
    lineSetup: new Int32Array(lines),
    lineCopy: new Int32Array(lines),
    copyLine: new Int32Array(copies),
    copyFree: new Int32Array(copies),
    copyLeft: new Int32Array(copies),
    copyCycles: new Float64Array(copies),
    teamFree: new Int32Array(problem.teams.length),
    trolleyFree: new Int32Array(problem.trolleyCount),
    gramsTaken: new Float64Array(problem.sheets.count),
    heads: problem.pools.map((profile) => (profile === null ? null : { at: [], free: [] })),
  };
}

/** The state at the horizon's start. */
export function resetLedger(problem: CompiledProblem, ledger: PlantLedger): void {
  const { lines, pools } = problem;
  ledger.lineFree.set(lines.freeAt);
  ledger.lineSetup.set(lines.initialSetup);
  ledger.lineCopy.set(lines.initialCopy);
  ledger.copyLine.fill(-1);
  ledger.copyFree.fill(0);
  ledger.copyLeft.fill(-1);
  for (let line = 0; line < lines.count; line++) {
    const copy = lines.initialCopy[line]!;
    if (copy >= 0) ledger.copyLine[copy] = line;
  }
  ledger.copyCycles.set(problem.moulds.cyclesDone);
  ledger.teamFree.fill(0);
  ledger.trolleyFree.fill(0);
  ledger.gramsTaken.fill(0);
  for (let pool = 0; pool < pools.length; pool++) {
    const heads = ledger.heads[pool] ?? null;
    const profile = pools[pool] ?? null;
    if (heads !== null && profile !== null) resetHeads(heads, profile);
  }
}

/** Makes `into` equal to `from`; both of the same problem. */
export function copyLedger(from: PlantLedger, into: PlantLedger): void {
  into.lineFree.set(from.lineFree);
  into.lineSetup.set(from.lineSetup);
  into.lineCopy.set(from.lineCopy);
  into.copyLine.set(from.copyLine);
  into.copyFree.set(from.copyFree);
  into.copyLeft.set(from.copyLeft);
  into.copyCycles.set(from.copyCycles);
  into.teamFree.set(from.teamFree);
  into.trolleyFree.set(from.trolleyFree);
  into.gramsTaken.set(from.gramsTaken);
  from.heads.forEach((heads, pool) => {
    const target = into.heads[pool] ?? null;
    if (heads !== null && target !== null) copyHeads(heads, target);
  });
}

/** Notes that a copy leaves a line. */
export function releaseCopy(ledger: PlantLedger, copy: number, line: number, at: number): void {
  ledger.lineCopy[line] = -1;
  ledger.copyLine[copy] = -1;
  ledger.copyLeft[copy] = line;
  ledger.copyFree[copy] = at;
}

/** Notes that a copy hangs on a line from now on. */
export function mountCopy(ledger: PlantLedger, copy: number, line: number): void {
  ledger.lineCopy[line] = copy;
  ledger.copyLine[copy] = line;
}

interface SheetDraw {
  readonly job: number;
  readonly pieces: number;
}

/** First instant at which the job's sheet covers so many pieces after all runs fixed before. O(arrivals). */
export function sheetInstant(
  problem: CompiledProblem,
  ledger: PlantLedger,
  { job, pieces }: SheetDraw,
): number {
  const sheet = problem.jobs.sheet[job]!;
  if (sheet < 0) return 0;
  const needed = ledger.gramsTaken[sheet]! + gramsOf(pieces, problem.jobs.gramsPerPiece[job]!);
  const grams = problem.sheets.grams[sheet]!;
  for (let i = 0; i < grams.length; i++) if (grams[i]! >= needed) return problem.sheets.at[sheet]![i]!;
  return NEVER;
}

/** Notes that a run draws its sheet. */
export function takeSheet({ jobs }: CompiledProblem, ledger: PlantLedger, { job, pieces }: SheetDraw): void {
  const sheet = jobs.sheet[job]!;
  if (sheet >= 0) ledger.gramsTaken[sheet]! += gramsOf(pieces, jobs.gramsPerPiece[job]!);
}
