import type { ProblemFault, Violation } from "@formweek/scheduler";
import { type AppError, appError } from "../errors.ts";

const MOST_FAULTS = 50;

/** The plant's data, or orders that are held, ask for something that no plan could respect. */
export function problemFaulty(faults: readonly ProblemFault[]): AppError {
  if (faults.every(({ code }) => code.startsWith("pin-"))) return heldOrdersFaulty(faults);
  return appError(
    "problem-faulty",
    {
      title: "The plant's data do not allow any plan.",
      cause: `${faults.length === 1 ? "One entry contradicts" : `${faults.length} entries contradict`} the rest of the data.`,
      remedy: "Correct the entries named below, then start a new run.",
    },
    faults
      .slice(0, MOST_FAULTS)
      .map(({ subject, text, remedy }) => ({ path: subject, problem: text, remedy })),
  );
}

/** Nothing but held orders stands against a plan: the line or the time they are held at is not there any more. */
function heldOrdersFaulty(faults: readonly ProblemFault[]): AppError {
  const more = faults.length > 1 ? ` And ${faults.length - 1} more.` : "";
  return appError(
    "problem-faulty",
    {
      title: "An order is held where it cannot run.",
      cause: `${faults[0]?.text ?? ""}${more}`,
      remedy: "Free it, or hold it on another line or at another start; then start a new run.",
    },
    faults.slice(0, MOST_FAULTS).map(({ subject, text }) => ({
      path: subject,
      problem: text,
      remedy: "Free this order, or hold it on another line or at another start.",
    })),
  );
}

/** The audit refused the plan; it was not shown to anyone. */
export function planRejected(violations: readonly Violation[]): AppError {
  return appError(
    "plan-rejected",
    {
      title: "The plan broke a rule and was thrown away.",
      cause: `The check of the finished plan found ${violations.length} broken ${violations.length === 1 ? "rule" : "rules"}.`,
      remedy:
        "Start a new run with another seed, and report this as a fault of the planner with the lines below.",
    },
    violations.slice(0, MOST_FAULTS).map(({ code, lineId, orderId, text }) => ({
      path: [code, lineId, orderId].filter((part) => part !== null).join(" · "),
      problem: text,
      remedy: "None needed in your data: the planner made this mistake.",
    })),
  );
}

/** The search itself broke down. */
export const solverFailed: AppError = appError("solver-failed", {
  title: "No plan could be made.",
  cause: "The search ended with a fault of its own; the log of the server has the details.",
  remedy: "Start a new run. If it fails again, report it together with the plant's data and the seed.",
});

/** The plant was taken away between the request and the run. */
export const plantGone: AppError = appError("not-found", {
  title: "No plan could be made.",
  cause: "The plant is not there any more.",
  remedy: "Load the plant again, then start a new run.",
});
