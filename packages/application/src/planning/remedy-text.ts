import type { ProblemEdit } from "@formweek/scheduler";
import type { PlantNames } from "./plant-names.ts";

/** An edit as a planner would say it; `clock` writes an instant (seconds since the epoch) in the plant's time. */
export function editText(edit: ProblemEdit, names: PlantNames, clock: (at: number) => string): string {
  switch (edit.kind) {
    case "extra shift":
      return `work ${names.line(edit.lineId)} from ${clock(edit.from)} to ${clock(edit.to)}, operators included`;
    case "extra team":
      return `one more setter team from ${clock(edit.from)} to ${clock(edit.to)}`;
    case "extra operators":
      return `${edit.hundredths / 100} more operators in ${edit.poolId} from ${clock(edit.from)} to ${clock(edit.to)}`;
    case "mould copy":
      return `a second set of ${names.mould(edit.mouldId)}`;
    case "another line":
      return `approve ${edit.orderId} on ${names.line(edit.option.lineId)}`;
    case "lots":
      return `make ${edit.orderId} in ${edit.most === 2 ? "two" : `up to ${edit.most}`} lots of ${edit.leastPieces} pieces or more`;
    case "earlier start":
      return `let ${edit.orderId} start from ${clock(edit.at)}`;
    case "later due":
      return `deliver ${edit.orderId} by ${clock(edit.at)}`;
    case "earlier sheet":
      return `get ${names.sheet(edit.sheetId)} ${Math.round(edit.seconds / 3600)} h earlier`;
    case "line down":
      return `${names.line(edit.lineId)} stands from ${clock(edit.from)} to ${clock(edit.to)}`;
    case "order cancelled":
      return `without ${edit.orderId}`;
    case "rush order":
      return `with ${edit.job.orderId}, ${edit.job.pieces} pieces, besides`;
  }
}
