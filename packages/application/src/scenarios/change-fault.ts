import { localTextAt } from "@formweek/capacity-model";
import type { FieldFault } from "../errors.ts";
import type { FaultCause } from "../fault-cause.ts";

/** A fault at a field of a change. */
export function changeFault(path: string, cause: FaultCause, problem: string, remedy: string): FieldFault {
  return { path, problem, remedy, cause };
}

/** An instant by the plant's clock. */
export function shownAt(timeZone: string, at: number): string {
  return localTextAt(timeZone, at).slice(0, 16).replace("T", " ");
}
