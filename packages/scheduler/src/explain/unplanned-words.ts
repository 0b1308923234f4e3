import type { UnplannedReason } from "../plan/plan.ts";
import type { UnplannedCause } from "../plan/unplanned-cause.ts";
import type { OptionRefusal } from "../problem/problem-data.ts";

function hours(seconds: number): string {
  return `${Math.round(seconds / 360) / 10} h`;
}

/** Causes that a fit check did not word already. */
type OwnCause = Exclude<UnplannedCause, { readonly kind: "does not fit" }>;

/** A reason with its cause, worded. */
export function reasonOf(
  code: UnplannedReason["code"],
  lineId: string | null,
  cause: OwnCause,
): UnplannedReason {
  return { code, lineId, text: causeText(cause), cause };
}

/** The word of a fit check or a rate against one option. */
export function misfitReason({ lineId, mouldId, code, text, compared }: OptionRefusal): UnplannedReason {
  const reason: UnplannedReason = { code: "no-line-fits", lineId, text };
  if (compared === undefined) return reason;
  return { ...reason, cause: { kind: "does not fit", mouldId, check: code, compared } };
}

function causeText(cause: OwnCause): string {
  switch (cause.kind) {
    case "no line":
      return "No line with any of its moulds may make it.";
    case "no mould copy":
      return `There is no copy of mould ${cause.mouldId}.`;
    case "line open too short":
      return `The run takes ${hours(cause.runSeconds)}; from its earliest start to the end of the horizon the line is open for ${hours(cause.leftSeconds)}.`;
    case "operators too short":
      return `The run takes ${hours(cause.runSeconds)}; operators for the line are there for ${hours(cause.leftSeconds)}.`;
    case "setters too short":
      return `The change takes ${hours(cause.workSeconds)} of a setter team's work; no team has that much time left.`;
    case "longer than horizon":
      return `The run takes ${hours(cause.runSeconds)}; the whole horizon has ${hours(cause.horizonSeconds)}.`;
    case "ends after horizon":
      return `The run of ${hours(cause.runSeconds)} with its warm-ups would end after the horizon.`;
    case "starts after horizon":
      return "Its earliest start lies after the horizon.";
    case "no time left":
      return `The run takes ${hours(cause.runSeconds)}; after the orders planned here ${hours(cause.leftSeconds)} are left, changes not counted.`;
    case "starts too late":
      return tooLateText(cause);
    case "pinned too early":
      return `It is pinned to a start ${hours(cause.bySeconds)} before it can begin here.`;
    case "pinned to closed time":
      return "It is pinned to a start at which the line is closed or has no operators.";
    case "pinned start taken":
      return "The line, its mould or a setter team is taken by other orders at the pinned start.";
    case "pinned to other line":
      return "It is pinned to a line that cannot make it.";
    case "sheet never arrives":
      return `It needs ${cause.kg} kg of sheet ${cause.sheetId}; that much never arrives within the horizon.`;
    case "sheet used up":
      return `The orders planned before it leave too little of sheet ${cause.sheetId}.`;
    case "taken out":
      return "It was taken out of the plan by hand.";
  }
}

function tooLateText({
  bySeconds,
  where,
}: Extract<UnplannedCause, { readonly kind: "starts too late" }>): string {
  const by = bySeconds < 3600 ? `${Math.ceil(bySeconds / 60)} min` : hours(bySeconds);
  switch (where) {
    case "pinned":
      return `It is pinned to a start ${by} after its latest start.`;
    case "alone":
      return `With no other order planned it would start ${by} after its latest start.`;
    case "behind others":
      return `Behind the orders planned here it would start ${by} after its latest start.`;
  }
}
