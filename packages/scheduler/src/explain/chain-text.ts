import type { ChainCause } from "./late-chain.ts";
import type { RootCause } from "./holds.ts";

/** Hours with one decimal, as people say them. */
function hours(seconds: number): string {
  return `${Math.round(seconds / 360) / 10} h`;
}

/** A link in words: ids and hours, no clock times (the engine knows no time zone). */
export function sayLink(cause: ChainCause, seconds: number): string {
  switch (cause.kind) {
    case "conditioning":
      return `Order ${cause.orderId} has to condition for ${hours(seconds)}.`;
    case "run": {
      const stops = [
        cause.closedSeconds > 0 ? `${hours(cause.closedSeconds)} closed` : "",
        cause.operatorSeconds > 0 ? `${hours(cause.operatorSeconds)} without operators` : "",
        cause.warmUpSeconds > 0 ? `${hours(cause.warmUpSeconds)} warming up` : "",
      ].filter((part) => part !== "");
      const rest = stops.length === 0 ? "" : `, ${stops.join(", ")}`;
      return `Line ${cause.lineId} makes order ${cause.orderId}: ${hours(cause.workSeconds)} of running${rest}.`;
    }
    case "change": {
      const team = cause.teamId === null ? "" : ` by ${cause.teamId}`;
      const pause = seconds - cause.workSeconds;
      const closed = pause >= 60 ? `, ${hours(pause)} of pauses in it` : "";
      return `Line ${cause.lineId} is changed to ${cause.toSetupId}${team}: ${hours(cause.workSeconds)} of work${closed}.`;
    }
    case "carrying":
      return `Mould ${cause.mouldId} is carried to line ${cause.lineId}: ${hours(seconds)}.`;
    case "line closed":
      return `Line ${cause.lineId} is closed for ${hours(seconds)}.`;
    case "no operators":
      return `Line ${cause.lineId} waits ${hours(seconds)} for operators.`;
    case "setters off":
      return `The change on line ${cause.lineId} waits ${hours(seconds)} for setters to come on shift.`;
    case "other work first":
      return `Other work is put before it on line ${cause.lineId}: ${hours(seconds)}.`;
  }
}

/** The root in words. */
export function sayRoot(root: RootCause): string {
  switch (root.kind) {
    case "line free":
      return `Line ${root.lineId} is free from then on.`;
    case "earliest start":
      return `Order ${root.orderId} may not start earlier.`;
    case "pinned start":
      return `Order ${root.orderId} is pinned to this start.`;
    case "sheet arrival":
      return `Sheet ${root.sheetId} arrives.`;
    case "mould arrives":
      return `The mould for line ${root.lineId} arrives.`;
    case "mould out of service":
      return `Mould ${root.mouldId} is back in service.`;
  }
}
