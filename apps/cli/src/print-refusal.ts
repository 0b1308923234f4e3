import type { SolveRefusal } from "@formweek/application";

/** Why there is no plan. */
export function refusalText(refusal: SolveRefusal): readonly string[] {
  switch (refusal.status) {
    case "cancelled":
      return ["Stopped before there was a first plan."];
    case "faulty-problem":
      return refusal.faults.map(({ subject, text, remedy }) => `${subject}: ${text} ${remedy}`);
    case "rejected":
      return [
        "The audit refused the plan; this is a fault of the planner, not of your data.",
        ...refusal.violations.map(({ code, text }) => `${code}: ${text}`),
      ];
  }
}
