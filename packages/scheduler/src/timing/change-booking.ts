import type { CompiledProblem } from "../problem/compiled-problem.ts";
import { logChange, type ChangeLog } from "./change-log.ts";
import type { ChangeTimes } from "./change-timing.ts";
import { strippingSpec } from "./mould-choice.ts";
import type { PlanTally } from "./plan-tally.ts";
import { releaseCopy, type PlantLedger } from "./plant-ledger.ts";

/** What a booked change is written into. */
export interface ChangeBooks {
  readonly problem: CompiledProblem;
  readonly ledger: PlantLedger;
  readonly tally: PlanTally;
  readonly log: ChangeLog;
}

interface BookedChange {
  readonly line: number;
  /** set-up after it */
  readonly to: number;
  readonly spec: number;
  /** copy or -1 */
  readonly copyOut: number;
  readonly copyIn: number;
  readonly stripping: boolean;
}

/** Takes team and trolley for a change and counts what it costs; moulds and the line are the caller's. */
export function bookChange(
  { problem, ledger, tally, log }: ChangeBooks,
  change: BookedChange,
  times: ChangeTimes,
): void {
  const { changes, lines } = problem;
  const { line, to, spec, copyOut, copyIn, stripping } = change;
  const needsTrolley = times.team >= 0 && changes.usesTrolley[spec] === 1;
  const trolley = needsTrolley ? lines.trolley[line]! : -1;
  if (times.team >= 0) ledger.teamFree[times.team] = times.tailStart;
  if (trolley >= 0) ledger.trolleyFree[trolley] = times.tailStart;
  const from = ledger.lineSetup[line]!;
  logChange(log, { line, from, to, spec, trolley, copyOut, copyIn, stripping }, times);
  tally.countChange(spec, line, { from: times.start, to: times.end });
}

/** Books the change that takes the mould out of an idle line. */
export function bookStripping(books: ChangeBooks, line: number, times: ChangeTimes): void {
  const { problem, ledger } = books;
  const copy = ledger.lineCopy[line]!;
  const to = problem.setups.stripped[ledger.lineSetup[line]!]!;
  const spec = strippingSpec(problem, ledger, line);
  bookChange(books, { line, to, spec, copyOut: copy, copyIn: -1, stripping: true }, times);
  releaseCopy(ledger, copy, line, times.mountStart);
  ledger.lineSetup[line] = to;
  ledger.lineFree[line] = times.end;
}
