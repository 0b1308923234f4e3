import { type AppError, appError } from "./errors.ts";

/** No such plant, or none that the actor may see. */
export function plantNotFound(plantId: string): AppError {
  return appError("not-found", {
    title: "There is no such plant.",
    cause: `No plant "${plantId}" is known here.`,
    remedy: "Choose a plant from the list of plants, or load it from a file.",
  });
}

/** No such run in the plant. */
export function runNotFound(runId: string): AppError {
  return appError("not-found", {
    title: "There is no such planning run.",
    cause: `No run "${runId}" is known in this plant.`,
    remedy: "Start a new run.",
  });
}

/** No such plan in the plant, or no plan at all (`planId` null). */
export function planNotFound(planId: string | null): AppError {
  return appError("not-found", {
    title: planId === null ? "There is no plan yet." : "There is no such plan.",
    cause: planId === null ? "This plant was never planned." : `No plan "${planId}" is known in this plant.`,
    remedy: planId === null ? "Start a planning run." : "Choose a plan from the list of plans.",
  });
}

/** No such dry run, or one that was forgotten. */
export function importNotFound(importId: string): AppError {
  return appError("not-found", {
    title: "There is no such import.",
    cause: `No import "${importId}" waits in this plant; imports are forgotten a day after their check.`,
    remedy: "Check the file again.",
  });
}
