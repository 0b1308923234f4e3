import type { ChainCause, RootCause } from "@formweek/scheduler";
import type { PlantNames } from "./plant-names.ts";

/** "45 min" below two hours, else hours with one decimal. */
function span(seconds: number): string {
  return seconds < 7200 ? `${Math.round(seconds / 60)} min` : `${Math.round(seconds / 360) / 10} h`;
}

function runText(cause: Extract<ChainCause, { kind: "run" }>, names: PlantNames): string {
  const stops = [
    cause.closedSeconds > 0 ? `${span(cause.closedSeconds)} closed` : "",
    cause.operatorSeconds > 0 ? `${span(cause.operatorSeconds)} without operators` : "",
    cause.warmUpSeconds > 0 ? `${span(cause.warmUpSeconds)} warming up` : "",
  ].filter((part) => part !== "");
  return `${names.line(cause.lineId)} makes ${cause.orderId}: ${[`${span(cause.workSeconds)} running`, ...stops].join(", ")}`;
}

/** One link of the chain in words; `seconds` is its length. */
export function linkText(cause: ChainCause, seconds: number, names: PlantNames): string {
  switch (cause.kind) {
    case "conditioning":
      return `${cause.orderId} conditions for ${span(seconds)}`;
    case "run":
      return runText(cause, names);
    case "change": {
      const team = cause.teamId === null ? "" : ` by ${names.team(cause.teamId)}`;
      const pause = seconds - cause.workSeconds;
      const pauses = pause >= 60 ? `, ${span(pause)} pauses` : "";
      return `${names.line(cause.lineId)} is changed to ${names.setup(cause.toSetupId)}${team}: ${span(cause.workSeconds)} of work${pauses}`;
    }
    case "mould service":
      return `${names.mould(cause.mouldId)} is served on ${names.line(cause.lineId)} before ${cause.orderId}: ${span(seconds)}`;
    case "carrying":
      return `${names.mould(cause.mouldId)} is carried to ${names.line(cause.lineId)}: ${span(seconds)}`;
    case "line closed":
      return `${names.line(cause.lineId)} is closed for ${span(seconds)}`;
    case "no operators":
      return `${names.line(cause.lineId)} waits ${span(seconds)} for operators`;
    case "setters off":
      return `${names.line(cause.lineId)} waits ${span(seconds)} for setters to come on shift`;
    case "other work first":
      return `other work is put before it on ${names.line(cause.lineId)}: ${span(seconds)}`;
  }
}

/** Where the chain begins, in words. */
export function rootText(root: RootCause, names: PlantNames): string {
  switch (root.kind) {
    case "line free":
      return `${names.line(root.lineId)} is free from then on`;
    case "earliest start":
      return `${root.orderId} may not start earlier`;
    case "pinned start":
      return `${root.orderId} is pinned to this start`;
    case "sheet arrival":
      return `${names.sheet(root.sheetId)} arrives`;
    case "mould arrives":
      return `the mould for ${names.line(root.lineId)} arrives`;
    case "mould out of service":
      return `${names.mould(root.mouldId)} is back in service`;
  }
}
