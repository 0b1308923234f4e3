import { type AppError, appError } from "./errors.ts";

/** No such plant, or none that the actor may see. */
export function plantNotFound(plantId: string): AppError {
  return appError("not-found", {
    title: "There is no such plant.",
    cause: `No plant "${plantId}" is known here.`,
    remedy: "Choose a plant from the list of plants, or load it from a file.",
  });
}

/** No such order in the plant's book. */
export function orderNotFound(orderId: string): AppError {
  return appError("not-found", {
    title: "There is no such order.",
    cause: `No order "${orderId}" is in the book of this plant.`,
    remedy: "Choose an order of the book, or import it first.",
  });
}

/** The order is not held. */
export function pinNotFound(orderId: string): AppError {
  return appError("not-found", {
    title: "The order is free already.",
    cause: `Order "${orderId}" is not held on a line or at a start.`,
    remedy: "Nothing to do: the next planning run puts it where it fits best.",
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
